"""What tasks of addition and subtraction share: how they are asked, answered and judged."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Any

from manipulatives.lessons.problem import LessonProblem, quoted
from manipulatives.lessons.strands.sums.line import Hop, at
from manipulatives.lessons.tasks.foreseen import foreseen
from manipulatives.lessons.tasks.generator import Request
from manipulatives.lessons.tasks.rule import Rule
from manipulatives.lessons.tasks.task import LONGEST, Mistake, Step, Task
from manipulatives.maths.columns.written_sum import ADD, MINUS, read_sum
from manipulatives.maths.number.words import number_in_words

Found = Iterable[tuple[Rule[Any], int | None]]
"""Rules, each with the wrong answer that it leads to."""


def asked_in_signs(operation: str, numbers: Sequence[int]) -> str:
    """Return a sum as it is asked.

    Example:
        >>> asked_in_signs("+", (58, 37)), asked_in_signs("-", (63, 29))
        ('58 + 37', '63 - 29')
    """
    return f" {operation} ".join(map(str, numbers))


def equation(operation: str, numbers: Sequence[int], answer: int) -> str:
    """Return a sum with its answer as a sentence.

    Example:
        >>> equation("+", (58, 37), 95)
        '58 + 37 = 95.'
    """
    sign = "+" if operation == ADD else MINUS
    return f"{f' {sign} '.join(map(str, numbers))} = {answer}."


def typed_task(
    request: Request,
    *,
    kind: str,
    prompt: str,
    answer: int,
    manipulative: str,
    start: Mapping[str, Any],
    steps: tuple[Step, ...],
    found: Found,
    say: str = "",
) -> Task:
    """Return a task whose answer is a number that is typed.

    Args:
        request: what the task is about.
        kind: of which kind it is within its skill.
        prompt: what is asked.
        answer: the right answer.
        manipulative: what helps.
        start: its traits when the task begins.
        steps: the worked answer.
        found: the rules of foreseeable mistakes, each with its wrong answer.
        say: what the teacher says, unless it is the prompt.
    """
    return Task(
        skill=request.skill,
        kind=kind,
        prompt=prompt,
        say=say or prompt,
        manipulative=manipulative,
        start=dict(start),
        ask={"by": "keypad", "form": "number"},
        goal=["=", "answer", f"{answer}"],
        answer=f"{answer}",
        spoken=number_in_words(answer, request.vocabulary),
        steps=steps,
        mistakes=wrong_numbers(found, request.vocabulary, answer),
    )


def wrong_numbers(
    found: Found,
    vocabulary: str,
    right: int,
    when: Callable[[int], list[Any]] | None = None,
) -> tuple[Mistake, ...]:
    """Return the mistakes of a number that comes out; none of a number below 0.

    Example:
        >>> from manipulatives.lessons.strands.stories.mistakes import ADDED
        >>> [made] = wrong_numbers([(ADDED, 22), (ADDED, -1)], "us", 8)
        >>> made.answer
        '22'
    """
    return foreseen(_told(found, right), vocabulary, right=right, when=when)


def _told(found: Found, right: int) -> Iterator[tuple[Rule[Any], int]]:
    """Yield the rules that lead to a wrong answer, as many of each as can be told at once."""
    letters: dict[int, int] = {}
    for rule, wrong in found:
        if wrong is None or wrong < 0 or wrong == right:
            continue
        letters[wrong] = letters.get(wrong, len("May have .")) + len(", or ") + len(rule.may_have)
        if letters[wrong] <= LONGEST:
            yield rule, wrong


def hop_steps(hops: Iterable[Hop], last: Step) -> tuple[Step, ...]:
    """Return hops on a number line as steps, with a last one that gives the answer.

    Example:
        >>> hops = [Hop("Start at 8.", "8", (8,))]
        >>> [step.say for step in hop_steps(hops, Step("8 + 0 = 8.", answer="8"))]
        ['Start at 8.', '8 + 0 = 8.']
    """
    shown = [Step(say=hop.say, chant=hop.chant, show=at(list(hop.been))) for hop in hops]
    return (*shown, last)


def answered(say: str, answer: int, vocabulary: str, show: dict[str, Any] | None = None) -> Step:
    """Return the last step: the answer is written down and said in words.

    Example:
        >>> answered("8 + 5 = 13.", 13, "us").chant
        'thirteen'
    """
    words = number_in_words(answer, vocabulary)
    return Step(say=say, chant=words, show=show or {}, answer=f"{answer}")


def reader(
    operation: str, fits: Callable[[tuple[int, ...]], bool], such_as: str
) -> Callable[[str, Mapping[str, Any]], tuple[int, ...]]:
    """Return what reads the numbers of a sum that somebody typed.

    Args:
        operation: "+" or "-".
        fits: whether the skill asks about such numbers.
        such_as: a sum that it asks about.

    Example:
        >>> reader("+", lambda numbers: len(numbers) == 2, "58 + 37")("47 + 38", {})
        (47, 38)
    """

    def read(text: str, _: Mapping[str, Any]) -> tuple[int, ...]:
        try:
            sign, numbers = read_sum(text)
        except ValueError as problem:
            raise LessonProblem(
                f"{quoted(text)} is no sum", remedy=f'write it like "{such_as}"'
            ) from problem
        if sign != operation or not fits(tuple(numbers)):
            raise LessonProblem(
                f"{quoted(text)} is not what is asked here", remedy=f'give one like "{such_as}"'
            )
        return tuple(numbers)

    return read
