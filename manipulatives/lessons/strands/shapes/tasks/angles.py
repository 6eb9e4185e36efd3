"""Tasks about right angles: how many a shape has, turned ones among them."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any

from manipulatives.lessons.strands.shapes.mistakes.angles import RIGHT_ANGLES
from manipulatives.lessons.strands.shapes.paper import (
    count_of,
    counted,
    found,
    numbers_to,
    to_look_at,
)
from manipulatives.lessons.strands.shapes.pools.polygons import (
    EACH,
    Drawn,
    facts_of,
    some_drawn,
    spread,
)
from manipulatives.lessons.tasks.foreseen import done_with, foreseen
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.task import Step, Task
from manipulatives.lessons.tasks.typed import typed_number
from manipulatives.maths.number.words import number_in_words
from manipulatives.maths.shapes.papers import Point

CORNERS = (
    "triangle", "square", "rectangle", "rhombus", "trapezoid", "quadrilateral", "pentagon",
    "hexagon",
)  # fmt: skip
MOST_RIGHT = 4


def with_right_angles(_: Mapping[str, Any]) -> tuple[Drawn, ...]:
    """Return the shapes whose right angles are counted, about as many with each number of them.

    Example:
        >>> sorted({facts_of(one)["right_angles"] for one in with_right_angles({})})
        [0, 1, 2, 3, 4]
    """
    return _with_right_angles()


@cache
def _with_right_angles() -> tuple[Drawn, ...]:
    by_number: dict[object, list[Drawn]] = {}
    for kind in CORNERS:
        for one in some_drawn(kind):
            by_number.setdefault(facts_of(one)["right_angles"], []).append(one)
    return tuple(
        one for number in range(MOST_RIGHT + 1) for one in spread(by_number.get(number, []), EACH)
    )


def kind_of_angles(one: Drawn) -> int:
    """Return how many right angles a shape has.

    Example:
        >>> from manipulatives.lessons.strands.shapes.pools.polygons import drawn
        >>> kind_of_angles(drawn("square")[0])
        4
    """
    return int(facts_of(one)["right_angles"] or 0)


def difficulty_of_angles(one: Drawn) -> tuple[int, int]:
    """Return how hard right angles are to see: turned ones are harder.

    Example:
        >>> from manipulatives.lessons.strands.shapes.pools.polygons import drawn
        >>> difficulty_of_angles(drawn("square")[0])
        (0, 4)
    """
    return kind_of_angles(one) - upright_angles(one), len(one.points)


@cache
def upright_angles(one: Drawn) -> int:
    """Return how many right angles have a level and an upright side.

    Example:
        >>> from manipulatives.lessons.strands.shapes.pools.polygons import drawn
        >>> upright_angles(drawn("square")[0]), upright_angles(drawn("square")[-1])
        (4, 0)
    """
    if one.grid != "square":
        # On triangle dots one step down is half a step to the right.
        straight = tuple((2 * across + down, down) for across, down in one.points)
        one = one._replace(points=straight, grid="square")
    return sum(_is_upright(*three) for three in _corners(one))


def _corners(one: Drawn) -> list[tuple[Point, Point, Point]]:
    points = one.points
    around = zip(points[-1:] + points[:-1], points, points[1:] + points[:1], strict=True)
    return [(before, here, after) for before, here, after in around]


def _is_upright(before: Point, here: Point, after: Point) -> bool:
    ways = [(one[0] - here[0], one[1] - here[1]) for one in (before, after)]
    level = [down == 0 for _, down in ways]
    upright = [across == 0 for across, _ in ways]
    return (level[0] and upright[1]) or (upright[0] and level[1])


def count_right_angles(request: Request) -> Task:
    """Make a task that asks how many right angles a shape has."""
    one: Drawn = request.item
    facts = {**facts_of(one), "upright": upright_angles(one)}
    many, corners = kind_of_angles(one), len(one.points)
    prompt = "How many right angles does this shape have?"
    words = f"{number_in_words(many)} right {'angle' if many == 1 else 'angles'}"
    return Task(
        skill=request.skill,
        kind=f"{many} right",
        prompt=prompt,
        say=f"{prompt} Try each corner with the corner of a sheet.",
        manipulative="PolygonDrawer",
        start=to_look_at(one, request.vocabulary),
        **typed_number(many, request.vocabulary, spoken=words),
        steps=(
            Step(
                say=f"Try all {corners} corners, one by one.",
                chant=numbers_to(corners),
                show={"count": "vertices"},
                numbers=count_of("corners", corners),
            ),
            Step(
                say=f"A sheet's corner fits {many} of {corners} corners.",
                chant=words,
                show={"count": "", "show": ["right_angles"]},
                numbers={"act": "fit", "fits": many, "of": corners},
            ),
            Step(
                say=f"It has {counted(many, 'right angle', 'right angles')}.",
                chant=words,
                answer=f"{many}",
                numbers=found("right angles", many),
            ),
        ),
        mistakes=foreseen(
            [(rule, rule.wrong(facts)) for rule in RIGHT_ANGLES],
            request.vocabulary,
            right=many,
            numbers=done_with("count", what="right angles"),
        ),
    )


GENERATORS = {
    "shapes.right_angles": TaskGenerator(
        with_right_angles, count_right_angles, kind_of_angles, difficulty_of_angles
    ),
}
