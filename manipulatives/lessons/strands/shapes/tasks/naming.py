"""Tasks about names of shapes: what one is called, and whether it is a certain one."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any, NamedTuple

from manipulatives.lessons.strands.shapes.mistakes.counting import NAMING
from manipulatives.lessons.strands.shapes.mistakes.drawing import LOOKS_LIKE_IT, OTHER_SIZE_OR_TURN
from manipulatives.lessons.strands.shapes.paper import (
    YES_OR_NO,
    count_of,
    counted,
    found,
    numbers_to,
    to_look_at,
    with_article,
    yes_no,
)
from manipulatives.lessons.strands.shapes.pools.curves import CURVES, curves
from manipulatives.lessons.strands.shapes.pools.polygons import (
    EACH,
    Drawn,
    facts_of,
    names_of,
    some_drawn,
    spread,
    with_gap,
)
from manipulatives.lessons.tasks.foreseen import done_with, foreseen, mistake
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.task import Step, Task

FIRST = ("triangle", "square", "rectangle", "circle", "hexagon")
MORE = (*FIRST, "rhombus", "trapezoid", "pentagon", "octagon")
ASKED = {"first": FIRST, "more": MORE}
MOST_CHOICES = 4
FOUR = 4
# What is not such a shape though it looks a little like one. A trapezoid is never asked for, since
# books differ about what else is one.
UNLIKE = {
    "triangle": ("quarter circle", "trapezoid", "gap"),
    "square": ("rectangle", "rhombus", "gap"),
    "rectangle": ("parallelogram", "trapezoid", "gap"),
    "circle": ("half circle", "octagon", "quarter circle"),
    "hexagon": ("pentagon", "octagon", "gap"),
    "rhombus": ("parallelogram", "kite", "rectangle"),
    "pentagon": ("hexagon", "quadrilateral", "gap"),
    "octagon": ("heptagon", "hexagon", "circle"),
}
# Such a shape, too, though it has a name of its own.
ALSO = {"rectangle": ("square",), "rhombus": ("square",)}


class Whether(NamedTuple):
    """A question whether a shape is one of a certain name.

    Attributes:
        name: the name.
        one: the shape.

    Example:
        >>> from manipulatives.lessons.strands.shapes.pools.polygons import drawn
        >>> Whether("rectangle", drawn("square")[0]).name
        'rectangle'
    """

    name: str
    one: Drawn


def to_name(options: Mapping[str, Any]) -> tuple[Drawn, ...] | tuple[Whether, ...]:
    """Return the shapes that are named, or asked whether they are so called.

    Example:
        >>> {one.kind for one in to_name({"ask": "name", "shapes": "first"})} == set(FIRST)
        True
    """
    if options["ask"] == "name":
        return _named(options["shapes"])
    return _whether(options["shapes"])


@cache
def _named(shapes: str) -> tuple[Drawn, ...]:
    return tuple(one for kind in ASKED[shapes] for one in _some(kind))


@cache
def _whether(shapes: str) -> tuple[Whether, ...]:
    return tuple(
        Whether(name, one)
        for name in ASKED[shapes]
        if name in UNLIKE
        for kinds in ((name, *ALSO.get(name, ())), UNLIKE[name])
        for kind in kinds
        for one in spread(_gaps(name) if kind == "gap" else _some(kind), EACH // len(kinds))
    )


def _some(kind: str) -> tuple[Drawn, ...]:
    return spread(curves(kind), EACH) if kind in CURVES else some_drawn(kind)


def _gaps(kind: str) -> tuple[Drawn, ...]:
    return tuple(gap for one in some_drawn(kind) if (gap := with_gap(one)) is not None)


def kind_of_name(item: Drawn | Whether) -> str:
    """Return which name a task about a name is about.

    Example:
        >>> kind_of_name(_named("first")[0])
        'triangle'
    """
    return item.name if isinstance(item, Whether) else item.kind


def name_shape(request: Request) -> Task:
    """Make a task that asks what a shape is called, or whether it is so called."""
    item: Drawn | Whether = request.item
    return _is_it(request, item) if isinstance(item, Whether) else _what(request, item)


def _what(request: Request, one: Drawn) -> Task:
    facts, vocabulary = facts_of(one), request.vocabulary
    names = names_of(one, vocabulary)
    answer = names[0]
    possible = [(rule, rule.wrong(facts)) for rule in NAMING]
    mistakes = foreseen(
        [(rule, wrong) for rule, wrong in possible if wrong not in names],
        vocabulary,
        right=answer,
        numbers=done_with("name"),
    )
    wrong = [str(one.answer) for one in mistakes]
    others = [_in(vocabulary, name) for name in MORE]
    fill = [name for name in others if name not in (*names, *wrong)]
    # Two of the foreseen names at least leave room for one that has nothing to do with it.
    few = request.chance.sample(wrong, min(MOST_CHOICES - 2, len(wrong)))
    choices = [answer, *few, *request.chance.shuffled(fill)][:MOST_CHOICES]
    return Task(
        skill=request.skill,
        kind=one.kind,
        prompt="What is this shape called?",
        say="What is this shape called? Look at its sides and corners.",
        manipulative="PolygonDrawer",
        start=to_look_at(one, vocabulary),
        ask={"by": "choice", "choices": request.chance.shuffled(choices)},
        # Whatever it is called is right: a square is a rectangle.
        goal=["in", "answer", list(names)],
        answer=answer,
        spoken=answer,
        steps=(*_looked_at(one, answer), _told(answer)),
        mistakes=mistakes,
    )


def _in(vocabulary: str, name: str) -> str:
    return "trapezium" if name == "trapezoid" and vocabulary == "uk" else name


def _told(answer: str) -> Step:
    return Step(
        say=f"It is {with_article(answer)}.",
        chant=answer,
        show={"count": "", "show": ["name"]},
        answer=answer,
        numbers={"act": "name", "name": answer, "is": True},
    )


def _looked_at(one: Drawn, name: str) -> list[Step]:
    """Return what decides about a name: curved sides, straight sides, right angles, equal sides."""
    facts = facts_of(one)
    if one.curve:
        return [sides_of_curve(one)]
    sides = int(facts["sides"] or 0)
    steps = [
        Step(
            say=f"Count the sides: there are {sides}.",
            chant=numbers_to(sides),
            show={"count": "sides"},
            numbers=count_of("sides", sides),
        )
    ]
    if not one.closed:
        show = {"count": ""}
        steps.append(Step(say="The shape is open.", show=show, numbers={"act": "open"}))
    elif sides == FOUR:
        right, equal, pairs = (
            int(facts[name] or 0) for name in ("right_angles", "equal_sides", "parallel")
        )
        say = f"It has {counted(right, 'right angle', 'right angles')}."
        shown: dict[str, Any] = {"count": "", "show": ["right_angles"]}
        steps.append(Step(say=say, show=shown, numbers=found("right angles", right)))
        if name in ("square", "rhombus"):
            many = counted(equal, "side is", "sides are")
            say = f"{many} equally long." if equal else "No sides are equally long."
            shown = {"show": ["right_angles", "equal_sides"]}
            steps.append(Step(say=say, show=shown, numbers=found("equal sides", equal)))
        elif name in ("trapezoid", "trapezium"):
            say = f"It has {counted(pairs, 'pair', 'pairs')} of parallel sides."
            shown = {"show": ["parallel"]}
            steps.append(Step(say=say, show=shown, numbers=found("parallel pairs", pairs)))
    return steps


def sides_of_curve(one: Drawn) -> Step:
    """Return the step that counts straight and curved sides.

    Example:
        >>> sides_of_curve(curves("half circle")[0]).say
        'Straight sides: 1. Curved sides: 1.'
    """
    facts = facts_of(one)
    straight, curved = facts["sides"], facts["curved_sides"]
    say = f"Straight sides: {straight}. Curved sides: {curved}."
    numbers = {"act": "sides", "straight": straight, "curved": curved}
    return Step(say=say, chant=f"{straight}", show={"show": ["sides"]}, numbers=numbers)


def _is_it(request: Request, item: Whether) -> Task:
    (name, one), vocabulary = item, request.vocabulary
    names = names_of(one, vocabulary)
    right = name in names
    rule = OTHER_SIZE_OR_TURN if right else LOOKS_LIKE_IT
    wrong = yes_no(not right)
    verdict = f"It is {'' if right else 'not '}{with_article(name)}."
    shown = ["name"] if names else []
    end = Step(
        say=verdict,
        chant=yes_no(right),
        show={"count": "", "show": shown},
        answer=yes_no(right),
        numbers={"act": "name", "name": name, "is": right},
    )
    return Task(
        skill=request.skill,
        kind=name,
        prompt=f"Is this {with_article(name)}?",
        say=f"Is this {with_article(name)}? Look at its sides and corners.",
        manipulative="PolygonDrawer",
        start=to_look_at(one, vocabulary),
        ask={"by": "choice", "choices": list(YES_OR_NO)},
        goal=["=", "answer", yes_no(right)],
        answer=yes_no(right),
        spoken=yes_no(right),
        steps=(*_looked_at(one, name), end),
        mistakes=(
            mistake(
                [rule],
                ["=", "answer", wrong],
                vocabulary,
                answer=wrong,
                numbers=done_with("judge", name=name)(rule, wrong),
            ),
        ),
    )


GENERATORS = {
    "shapes.name_shapes": TaskGenerator(to_name, name_shape, kind_of_name),
}
