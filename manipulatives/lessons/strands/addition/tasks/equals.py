"""Tasks of statements with an equal sign that are true or false."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import Any

from manipulatives.lessons.strands.addition.mistakes.equals import (
    FALSE,
    TRUE,
    is_true,
    statement_mistakes,
)
from manipulatives.lessons.strands.sums.acts import worked_out
from manipulatives.lessons.strands.sums.blocks import mats
from manipulatives.lessons.strands.sums.tasks import equation
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.pools import Joined
from manipulatives.lessons.tasks.task import Step, Task
from manipulatives.maths.columns.written_sum import ADD, MINUS, SUBTRACT
from manipulatives.maths.number.mats import compared
from manipulatives.maths.number.place_value import fewest

Statement = tuple[str, int, int, int, int]
"""Its form, as `mistakes.equals.is_true` has it, and its numbers."""

FORMS = ("sum first", "sum last", "both sides", "turned sum", "turned difference")


def written(statement: Statement) -> str:
    """Return a statement as it is written.

    Example:
        >>> written(("both sides", 8, 4, 7, 5)), written(("turned difference", 8, 5, 5, 8))
        ('8 + 4 = 7 + 5', '8 - 5 = 5 - 8')
    """
    form, a, b, c, d = statement
    return {
        "sum first": f"{a} + {b} = {c}",
        "sum last": f"{c} = {a} + {b}",
        "both sides": f"{a} + {b} = {c} + {d}",
        "turned sum": f"{a} + {b} = {b} + {a}",
        "turned difference": f"{a} - {b} = {b} - {a}",
    }[form]


def _steps(statement: Statement, answer: str) -> tuple[Step, ...]:
    form, a, b, c, d = statement
    first, second = a + b, c + d
    if form == "turned difference":
        return _turned_difference(a, b)
    left = _side(ADD, (a, b), _shown(first, 0))
    if form == "turned sum":
        right = _side(ADD, (b, a), _shown(first, first))
        second = first
    elif form == "both sides":
        right = _side(ADD, (c, d), _shown(first, second))
    else:
        numbers = {"act": "digit", "digit": c}
        right = Step(f"The other side is {c}.", f"{c}", _shown(first, c), numbers=numbers)
    sign = compared(first, second)
    end = {"=": "as much as", ">": "more than", "<": "less than"}[sign]
    say = f"{first} is {end} {second}. It is {answer}."
    judged = {"act": "compare", "numbers": [first, second], "sign": sign, "answer": answer}
    return left, right, Step(say, answer, answer=answer, numbers=judged)


def _turned_difference(a: int, b: int) -> tuple[Step, ...]:
    return (
        _side(SUBTRACT, (a, b), _shown(a - b, 0)),
        Step(
            f"{b} is smaller than {a}.",
            f"{b}, then {a}",
            numbers={"act": "compare", "numbers": [b, a], "sign": compared(b, a)},
        ),
        Step(
            "A subtraction cannot be turned round. It is false.",
            FALSE,
            answer=FALSE,
            numbers={"act": "judge", "answer": FALSE},
        ),
    )


def _side(operation: str, numbers: tuple[int, int], show: dict[str, Any]) -> Step:
    """Return the step in which one side of the equal sign is worked out."""
    one, other = numbers
    result = one + other if operation == ADD else one - other
    done = worked_out(operation, numbers)
    return Step(equation(operation, numbers), f"{result}", show, numbers=done)


def _shown(first: int, second: int) -> dict[str, Any]:
    return {"mat": mats(fewest(first), fewest(second))}


def _task(request: Request) -> Task:
    statement: Statement = request.item
    answer = TRUE if is_true(*statement) else FALSE
    text = written(statement)
    return Task(
        skill=request.skill,
        kind=_kind(statement),
        prompt=f"True or false? {text}",
        say=f"Is this true? {text.replace('-', MINUS)}. Work out both sides.",
        manipulative="PlaceValueBlocks",
        start={"mat": mats({}, {}), "places": 2, "result": False, "digits": False},
        ask={"by": "choice", "choices": [TRUE, FALSE]},
        goal=["=", "answer", answer],
        answer=answer,
        spoken=answer,
        steps=_steps(statement, answer),
        mistakes=statement_mistakes(statement, answer, request.vocabulary),
    )


@cache
def _statements(form: str, to: int) -> tuple[Statement, ...]:
    """Return the statements of a form, half of them true and half false."""
    made: list[Statement] = []
    for a in range(1, to):
        for b in range(1, to - a + 1):
            made += _pair_of(form, a, b)
    return tuple(dict.fromkeys(made))


def _pair_of(form: str, a: int, b: int) -> list[Statement]:
    """Return a true statement and a false one about a sum, as far as there are both."""
    near = a + b + (1 if a % 2 else -1)
    match form:
        case "sum first" | "sum last":
            return [(form, a, b, a + b, 0), (form, a, b, near, 0)]
        case "both sides" if b > 1:
            # A false one has the first sum behind the equal sign, or is one more.
            false = (form, a, b, a + b, b) if (a + b) % 2 else (form, a, b, a + 1, b)
            return [(form, a, b, a + 1, b - 1), false]
        case "turned" if a > b:
            return [("turned sum", a, b, b, a), ("turned difference", a, b, b, a)]
        case _:
            return []


@cache
def _pool(form: str, to: int) -> Sequence[Statement]:
    forms = ("sum first", "sum last", "both sides", "turned") if form == "any" else (form,)
    return Joined([_statements(one, to) for one in forms])


def _kind(statement: Statement) -> str:
    return statement[0]


def _difficulty(statement: Statement) -> tuple[int, int]:
    form, a, b, _, _ = statement
    return FORMS.index(form), a + b


TRUE_OR_FALSE = TaskGenerator(
    items=lambda options: _pool(options["form"], options["to"]),
    task=_task,
    kind=_kind,
    difficulty=_difficulty,
)
