"""Several problems as one."""

from __future__ import annotations

from manipulatives.lessons.problem import LessonProblem


class SeveralProblems(LessonProblem):
    """Several problems as one, with a sentence on a line for each."""

    def __init__(self, problems: list[LessonProblem]) -> None:
        first = problems[0]
        super().__init__(first.what, remedy=first.remedy, place=first.place, file=first.file)
        self.problems = problems

    def __str__(self) -> str:
        """Return every sentence."""
        return "\n".join(map(str, self.problems))


def one_problem(problems: list[LessonProblem]) -> LessonProblem:
    """Return a single problem as it is, and several as one with all their sentences."""
    return problems[0] if len(problems) == 1 else SeveralProblems(problems)
