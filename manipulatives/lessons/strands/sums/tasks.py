"""What tasks of addition and subtraction share: prompts, answers, last steps and mistakes."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from manipulatives.lessons.problem import LessonProblem, quoted
from manipulatives.lessons.strands.sums.acts import worked_out
from manipulatives.lessons.strands.sums.line import Hop, at
from manipulatives.lessons.tasks.foreseen import done_with, foreseen
from manipulatives.lessons.tasks.generator import Request
from manipulatives.lessons.tasks.rule import Rule
from manipulatives.lessons.tasks.task import LONGEST, Mistake, Numbers, Step, Task
from manipulatives.maths.columns.written_sum import ADD, MINUS, read_sum
from manipulatives.maths.number.words import number_in_words


class Found(NamedTuple):
    """What can be foreseen to go wrong in a task.

    Attributes:
        wrong: rules, each with the wrong answer that it leads to, or None.
        numbers: returns the procedure by which a rule leads to an answer, as data.
    """

    wrong: Iterable[tuple[Rule[Any], int | None]]
    numbers: Callable[[Rule[Any], int], Numbers]


def found_by(rules: Iterable[Rule[Any]], given: Sequence[int], act: str, **fields: Any) -> Found:
    """Return what rules make of the numbers of a task.

    Args:
        rules: those that can apply.
        given: the numbers that each of them is called with.
        act: what is done to them, such as "add".
        fields: the numbers once more, by name.

    Example:
        >>> from manipulatives.lessons.strands.rules import RULES
        >>> found = found_by([RULES["start_counted_on"]], (8, 5), "add", terms=[8, 5])
        >>> [(rule, wrong)] = found.wrong
        >>> found.numbers(rule, wrong)
        {'act': 'add', 'terms': [8, 5], 'start_counted': True, 'wrong': 12}
    """
    return Found([(rule, rule.wrong(*given)) for rule in rules], done_with(act, **fields))


def prompt_of(operation: str, numbers: Sequence[int]) -> str:
    """Return a sum as it is asked.

    Example:
        >>> prompt_of("+", (58, 37)), prompt_of("-", (63, 29))
        ('58 + 37', '63 - 29')
    """
    return f" {operation} ".join(map(str, numbers))


def equation(operation: str, numbers: Sequence[int]) -> str:
    """Return a sum with what comes out of it, as a sentence.

    Example:
        >>> equation("+", (58, 37))
        '58 + 37 = 95.'
    """
    first, *others = numbers
    if operation == ADD:
        return f"{' + '.join(map(str, numbers))} = {sum(numbers)}."
    return f"{f' {MINUS} '.join(map(str, numbers))} = {first - sum(others)}."


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
        found: what can be foreseen to go wrong.
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
        >>> [made] = wrong_numbers(found_by([ADDED], (7, 15, 8), "answer", shown=[7, 15]), "us", 8)
        >>> made.answer
        '22'
    """
    return foreseen(
        _as_many_as_fit(found, right), vocabulary, right=right, when=when, numbers=found.numbers
    )


def _as_many_as_fit(found: Found, right: int) -> Iterator[tuple[Rule[Any], int]]:
    """Yield rules that lead to a wrong answer, of each answer no more than one text can name."""
    letters: dict[int, int] = {}
    for rule, wrong in found.wrong:
        if wrong is None or wrong < 0 or wrong == right:
            continue
        letters[wrong] = letters.get(wrong, len("May have .")) + len(", or ") + len(rule.may_have)
        if letters[wrong] <= LONGEST:
            yield rule, wrong


def hop_steps(hops: Iterable[Hop], last: Step) -> tuple[Step, ...]:
    """Return hops on a number line as steps, with a last one that gives the answer.

    Example:
        >>> from manipulatives.lessons.strands.sums.line import counting_on
        >>> steps = hop_steps(counting_on(8, 0, ""), answer_step("+", (8, 0), 8, "us"))
        >>> [step.say for step in steps]
        ['Start at 8.', 'Count on 0: stay there.', '8 + 0 = 8.']
    """
    shown = [Step(hop.say, hop.chant, at(list(hop.been)), numbers=hop.numbers) for hop in hops]
    return (*shown, last)


def answer_step(operation: str, numbers: Sequence[int], answer: int, vocabulary: str) -> Step:
    """Return the last step: the whole sum is said, the answer written down and said in words.

    Args:
        operation: "+" or "-".
        numbers: the numbers of the sum.
        answer: the right answer, which may be one of them.
        vocabulary: "us" or "uk".

    Example:
        >>> step = answer_step("+", (8, 5), 5, "us")
        >>> step.say, step.chant
        ('8 + 5 = 13.', 'five')
    """
    return Step(
        say=equation(operation, numbers),
        chant=number_in_words(answer, vocabulary),
        answer=f"{answer}",
        numbers=worked_out(operation, numbers, answer=answer),
    )


def sum_reader(
    operation: str, fits: Callable[[tuple[int, ...]], bool], such_as: str
) -> Callable[[str, Mapping[str, Any]], tuple[int, ...]]:
    """Return what reads the numbers of a sum that somebody typed.

    Args:
        operation: "+" or "-".
        fits: whether the skill asks about such numbers.
        such_as: a sum that it asks about.

    Example:
        >>> sum_reader("+", lambda numbers: len(numbers) == 2, "58 + 37")("47 + 38", {})
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
