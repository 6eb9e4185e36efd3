"""Tasks about mirror lines: a vertical one, as in England's Year 2, or all of them."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any

from manipulatives.lessons.strands.shapes.mistakes.angles import MIRROR_LINES
from manipulatives.lessons.strands.shapes.mistakes.drawing import (
    FOLD_NOT_SEEN,
    FOLDS_ANOTHER_WAY,
    TURN_FOR_FOLD,
)
from manipulatives.lessons.strands.shapes.paper import YES_OR_NO, found, to_look_at, yes_no
from manipulatives.lessons.strands.shapes.pools.polygons import (
    EACH,
    Drawn,
    facts_of,
    some_drawn,
    spread,
)
from manipulatives.lessons.tasks.foreseen import done_with, foreseen, mistake
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.rule import Rule
from manipulatives.lessons.tasks.task import Step, Task
from manipulatives.lessons.tasks.typed import typed_number
from manipulatives.maths.number.words import number_in_words

FOLDED = (
    "triangle", "square", "rectangle", "rhombus", "parallelogram", "trapezoid", "kite", "pentagon",
    "hexagon", "octagon", "notched hexagon", "star",
)  # fmt: skip


@cache
def has_vertical_line(one: Drawn) -> bool:
    """Return whether a shape can be folded on a vertical line: left and right change places.

    Example:
        >>> from manipulatives.lessons.strands.shapes.pools.polygons import drawn
        >>> has_vertical_line(drawn("square")[0])
        True
    """
    # On triangle dots one step down is half a step to the right.
    doubled = one.grid == "triangle"
    points = [(2 * across + down if doubled else across, down) for across, down in one.points]
    across = [point[0] for point in points]
    turned = {(min(across) + max(across) - right, down) for right, down in points}
    # The corners of these shapes stand for them: no two of the shapes have the same corners.
    return turned == set(points)


def to_fold(options: Mapping[str, Any]) -> tuple[Drawn, ...]:
    """Return the shapes that are folded, about as many of each answer.

    Example:
        >>> {kind_of_fold(one) for one in to_fold({"ask": "vertical"})} == {"yes", "no"}
        True
    """
    return _to_fold(options["ask"])


@cache
def _to_fold(ask: str) -> tuple[Drawn, ...]:
    kinds: dict[object, list[Drawn]] = {}
    for kind in FOLDED:
        for one in some_drawn(kind):
            key = kind_of_fold(one) if ask == "vertical" else facts_of(one)["mirror_lines"]
            kinds.setdefault(key, []).append(one)
    most = 3 * EACH if ask == "vertical" else EACH
    return tuple(one for alike in kinds.values() for one in spread(alike, most))


def kind_of_fold(one: Drawn) -> str:
    """Return whether a shape has a vertical mirror line.

    Example:
        >>> from manipulatives.lessons.strands.shapes.pools.polygons import drawn
        >>> kind_of_fold(drawn("parallelogram")[0])
        'no'
    """
    return yes_no(has_vertical_line(one))


def lines_of(one: Drawn) -> int:
    """Return how many mirror lines a shape has.

    Example:
        >>> from manipulatives.lessons.strands.shapes.pools.polygons import drawn
        >>> lines_of(drawn("square")[0])
        4
    """
    return int(facts_of(one)["mirror_lines"] or 0)


def fold(request: Request) -> Task:
    """Make a task about the mirror lines of a shape."""
    return _vertical(request) if request.options["ask"] == "vertical" else _how_many(request)


def _vertical(request: Request) -> Task:
    one: Drawn = request.item
    right = has_vertical_line(one)
    match = "The two parts match." if right else "The two parts do not match."
    # Hide other mirror lines: they would contradict the answer.
    drawn = {"show": ["mirror_lines"]} if right else {}
    prompt, wrong = "Is there a vertical mirror line?", yes_no(not right)
    return Task(
        skill=request.skill,
        kind=yes_no(right),
        prompt=prompt,
        say=f"{prompt} It goes straight up and down.",
        manipulative="PolygonDrawer",
        start=to_look_at(one, request.vocabulary),
        ask={"by": "choice", "choices": list(YES_OR_NO)},
        goal=["=", "answer", yes_no(right)],
        answer=yes_no(right),
        spoken=yes_no(right),
        steps=(
            Step(say="Fold it on a vertical line in the middle."),
            Step(
                say=match,
                chant=yes_no(right),
                show=drawn,
                answer=yes_no(right),
                numbers={"act": "match", "match": right},
            ),
        ),
        mistakes=(
            mistake(
                [_why(one, right=right)],
                ["=", "answer", wrong],
                request.vocabulary,
                answer=wrong,
                numbers=done_with("fold", line="vertical")(_why(one, right=right), wrong),
            ),
        ),
    )


def _why(one: Drawn, *, right: bool) -> Rule[Any]:
    if not right and lines_of(one):
        return FOLDS_ANOTHER_WAY
    return TURN_FOR_FOLD if facts_of(one)["parallelogram"] and not right else FOLD_NOT_SEEN


def _how_many(request: Request) -> Task:
    one: Drawn = request.item
    facts = {**facts_of(one), "vertical_line": has_vertical_line(one)}
    many = lines_of(one)
    words = f"{number_in_words(many)} mirror {'line' if many == 1 else 'lines'}"
    prompt = "How many mirror lines does this shape have?"
    return Task(
        skill=request.skill,
        kind=f"{many} lines",
        prompt=prompt,
        say=f"{prompt} Fold it so that the two parts match.",
        manipulative="PolygonDrawer",
        start=to_look_at(one, request.vocabulary),
        **typed_number(many, request.vocabulary, spoken=words),
        steps=(
            Step(say="Fold it every way, and see whether the parts match."),
            Step(
                say=f"Mirror lines: {many}.",
                chant=words,
                show={"show": ["mirror_lines"]},
                answer=f"{many}",
                numbers=found("mirror lines", many),
            ),
        ),
        mistakes=foreseen(
            [(rule, rule.wrong(facts)) for rule in MIRROR_LINES],
            request.vocabulary,
            right=many,
            numbers=done_with("count", what="mirror lines"),
        ),
    )


GENERATORS = {
    "shapes.mirror_lines": TaskGenerator(to_fold, fold, kind_of_fold, lines_of),
}
