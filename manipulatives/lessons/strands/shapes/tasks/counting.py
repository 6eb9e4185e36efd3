"""Tasks about how many sides or vertices a shape has."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any

from manipulatives.lessons.strands.shapes.mistakes.counting import COUNTING
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
    all_drawn,
    drawn,
    facts_of,
    spread,
    with_points_on_sides,
)
from manipulatives.lessons.tasks.foreseen import done_with, foreseen
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.task import Step, Task
from manipulatives.lessons.tasks.typed import typed_number
from manipulatives.maths.number.words import number_in_words

PLAIN = ("triangle", "quadrilateral", "trapezoid", "pentagon", "hexagon", "heptagon", "octagon")
NOTCHED = ("notched pentagon", "notched hexagon", "notched octagon", "star")
Options = Mapping[str, Any]


def to_count(options: Options) -> tuple[Drawn, ...]:
    """Return the shapes whose sides or vertices are counted.

    Example:
        >>> {kind_of_count(one) for one in to_count({"shapes": "any"})} == {
        ...     "plain", "notched", "points on sides"
        ... }
        True
    """
    return _to_count(options["shapes"])


@cache
def _to_count(shapes: str) -> tuple[Drawn, ...]:
    if shapes == "plain":
        return all_drawn(PLAIN)
    if shapes == "notched":
        return all_drawn(NOTCHED)
    if shapes == "points on sides":
        several = [with_points_on_sides(one) for kind in PLAIN for one in drawn(kind)]
        return spread([one for one in several if one], 3 * EACH)
    return tuple(
        one
        for kind in ("plain", "notched", "points on sides")
        for one in spread(_to_count(kind), 2 * EACH)
    )


def kind_of_count(one: Drawn) -> str:
    """Return what is special about a shape that is counted.

    Example:
        >>> kind_of_count(drawn("star")[0])
        'notched'
    """
    if len(one.points) > int(facts_of(one)["sides"] or 0):
        return "points on sides"
    return "notched" if one.kind in NOTCHED else "plain"


def difficulty_of_count(one: Drawn) -> tuple[int, int]:
    """Return how hard it is to count around a shape.

    Example:
        >>> difficulty_of_count(drawn("triangle")[0]) < difficulty_of_count(drawn("hexagon")[0])
        True
    """
    return ("plain", "notched", "points on sides").index(kind_of_count(one)), len(one.points)


def count_sides(request: Request) -> Task:
    """Make a task that asks how many sides a shape has."""
    return _count(request, "side", "sides")


def count_vertices(request: Request) -> Task:
    """Make a task that asks how many vertices a shape has."""
    return _count(request, "vertex", "vertices")


def _count(request: Request, one_part: str, parts: str) -> Task:
    one: Drawn = request.item
    facts = facts_of(one)
    many, tips = int(facts["sides"] or 0), int(facts["tips"] or 0)
    steps = []
    if len(one.points) > many:
        sides = "A point on a side leaves it one side."
        vertices = "A point on a straight side is no vertex."
        say = sides if parts == "sides" else vertices
        steps.append(Step(say=say, numbers={"act": "mid side"}))
    steps.append(
        Step(
            say=f"Begin at one {one_part}. Go all the way around.",
            chant=numbers_to(many),
            show={"count": parts},
            numbers=count_of(parts, many),
        )
    )
    if tips < many and parts == "vertices":
        say = f"Points and notches: {tips} + {many - tips} = {many}."
        terms = [tips, many - tips]
        steps.append(Step(say=say, numbers={"act": "add", "terms": terms, "total": many}))
    words = f"{number_in_words(many)} {parts}"
    show = {"count": "", "show": [parts]}
    say = f"It has {counted(many, one_part, parts)}."
    steps.append(Step(say, words, show, f"{many}", found(parts, many)))
    prompt = f"How many {parts} does this shape have?"
    return Task(
        skill=request.skill,
        kind=kind_of_count(one),
        prompt=prompt,
        say=f"{prompt} Mark where you begin.",
        manipulative="PolygonDrawer",
        start=to_look_at(one, request.vocabulary),
        **typed_number(many, request.vocabulary, spoken=words),
        steps=tuple(steps),
        mistakes=foreseen(
            [(rule, rule.wrong(facts)) for rule in COUNTING],
            request.vocabulary,
            right=many,
            numbers=done_with("count", what=parts),
        ),
    )


GENERATORS = {
    "shapes.count_sides": TaskGenerator(to_count, count_sides, kind_of_count, difficulty_of_count),
    "shapes.count_vertices": TaskGenerator(
        to_count, count_vertices, kind_of_count, difficulty_of_count
    ),
}
