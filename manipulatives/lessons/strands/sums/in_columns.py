"""Tasks of written sums, worked out in columns in the class's own method."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from manipulatives.lessons.strands.sums.columns.methods import FORM_OF, worked_sum
from manipulatives.lessons.strands.sums.tasks import Found, prompt_of, wrong_numbers
from manipulatives.lessons.tasks.generator import Request
from manipulatives.lessons.tasks.task import Step, Task
from manipulatives.maths.columns.difficulty import borrows, carries
from manipulatives.maths.columns.written_sum import ADD, LINE, NAMES, new_sum
from manipulatives.maths.number.words import number_in_words


def written_task(request: Request, operation: str, found: Found) -> Task:
    """Return the task of a sum that is written on the column board.

    Args:
        request: its item are the numbers.
        operation: "+" or "-".
        found: what can be foreseen to go wrong.
    """
    numbers, method, vocabulary = request.item, request.method, request.vocabulary
    adding = operation == ADD
    answer = sum(numbers) if adding else numbers[0] - numbers[1]
    worked = worked_sum(operation, numbers, method, vocabulary=vocabulary)
    form = FORM_OF[method]
    return Task(
        skill=request.skill,
        kind=adding_kind(numbers) if adding else taking_kind(numbers),
        prompt=prompt_of(operation, numbers),
        say=_say(numbers, adding=adding, line=form == LINE),
        manipulative="ColumnBoard",
        start={
            "sum": {**new_sum(operation, numbers, form)},
            "mode": "try",
            "method": method,
            "steps": worked.steps,
        },
        ask={"by": "manipulative"},
        goal=_number_is(answer),
        answer=f"{answer}",
        spoken=number_in_words(answer, vocabulary),
        steps=tuple(
            Step(step["say"], step["class"], {"mode": "show", "step": count}, numbers=numbers)
            for count, (step, numbers) in enumerate(
                zip(worked.steps, worked.numbers, strict=True), start=1
            )
        ),
        mistakes=wrong_numbers(found, vocabulary, answer, _number_is),
    )


def adding_kind(numbers: Sequence[int]) -> str:
    """Return where an addition is regrouped.

    Example:
        >>> adding_kind((58, 37)), adding_kind((52, 37))
        ('regroup ones', 'regroup nowhere')
    """
    places = [name for name, amount in zip(NAMES, carries(numbers), strict=False) if amount]
    return f"regroup {', '.join(places) or 'nowhere'}"


def taking_kind(numbers: Sequence[int]) -> str:
    """Return where a subtraction is regrouped, and whether through a zero.

    Example:
        >>> taking_kind((63, 29)), taking_kind((402, 178))
        ('regroup ones', 'regroup ones, tens through zero')
    """
    upper, lower = numbers
    taken, zeros = borrows(upper, lower)
    places = [name for name, took in zip(NAMES, taken, strict=False) if took]
    through = " through zero" if zeros else ""
    return f"regroup {', '.join(places) or 'nowhere'}{through}"


def adding_difficulty(numbers: Sequence[int]) -> tuple[int, int]:
    """Say how hard an addition is: by how often it is regrouped, then by its size.

    Example:
        >>> adding_difficulty((98, 1)) < adding_difficulty((19, 2))
        True
    """
    return sum(amount > 0 for amount in carries(numbers)), sum(numbers)


def taking_difficulty(numbers: Sequence[int]) -> tuple[int, int, int]:
    """Say how hard a subtraction is: by zeros, by how often it is regrouped, then by its size.

    Example:
        >>> taking_difficulty((911, 199)) < taking_difficulty((402, 178))
        True
    """
    upper, lower = numbers
    taken, zeros = borrows(upper, lower)
    return zeros, sum(taken), upper


def _number_is(number: int) -> list[Any]:
    return ["=", "number", number]


def _say(numbers: Sequence[int], *, adding: bool, line: bool) -> str:
    begin = "Jump along the line." if line else "Begin with the ones."
    if adding:
        *some, last = map(str, numbers)
        return f"Add {', '.join(some)} and {last}. {begin}"
    upper, lower = numbers
    return f"Take {lower} away from {upper}. {begin}"
