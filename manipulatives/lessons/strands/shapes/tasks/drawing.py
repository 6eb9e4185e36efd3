"""Tasks in which a shape is drawn that has certain sides, vertices, right angles, or a name."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any, NamedTuple

from manipulatives.lessons.strands.shapes.mistakes import drawing as may
from manipulatives.lessons.strands.shapes.paper import counted, found, to_draw_on, with_article
from manipulatives.lessons.strands.shapes.pools.polygons import Drawn, facts_of, some_drawn
from manipulatives.lessons.tasks.foreseen import mistake
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.predicates import Predicate, holds
from manipulatives.lessons.tasks.rule import Rule
from manipulatives.lessons.tasks.task import Mistake, Step, Task
from manipulatives.maths.number.words import number_in_words
from manipulatives.maths.shapes.data import Shape
from manipulatives.maths.shapes.papers import Grid
from manipulatives.words.shape_strokes import strokes

BY_SIDES = {3: "triangle", 5: "pentagon", 6: "hexagon", 7: "heptagon", 8: "octagon"}
RIGHT = {"square": 4, "rectangle": 4}
PAPERS: tuple[Grid, ...] = ("square", "triangle")
LOOKS = (
    "triangle", "square", "rectangle", "trapezoid", "quadrilateral", "pentagon", "hexagon",
    "heptagon", "octagon",
)  # fmt: skip
CLOSED: Predicate = ["and", ["=", "closed", True], ["=", "fault", None], ["=", "curved_sides", 0]]
FOUR = 4


class Wanted(NamedTuple):
    """What is to be drawn.

    Attributes:
        ask: "sides", "vertices", "name" or "right angles".
        value: how many, or which name.
        grid: the paper.

    Example:
        >>> Wanted("sides", 5, "square").value
        5
    """

    ask: str
    value: int | str
    grid: Grid


def to_draw(options: Mapping[str, Any]) -> tuple[Wanted, ...]:
    """Return what can be asked to be drawn.

    Example:
        >>> to_draw({"ask": "right angles"})
        (Wanted(ask='right angles', value=1, grid='square'), ...
    """
    return _to_draw(options["ask"])


@cache
def _to_draw(ask: str) -> tuple[Wanted, ...]:
    asks: dict[str, tuple[int | str, ...]] = {
        "sides": tuple(range(3, 9)),
        "vertices": tuple(range(3, 9)),
        "name": ("triangle", "square", "rectangle", "pentagon", "hexagon", "octagon"),
        "right angles": (1, 4),
    }
    return tuple(
        wanted
        for name, values in asks.items()
        if ask in ("any", name)
        for value in values
        for grid in PAPERS
        for wanted in [Wanted(name, value, grid)]
        if _examples(wanted)
    )


@cache
def _examples(wanted: Wanted) -> tuple[Drawn, ...]:
    """Return the shapes that are drawn as the worked answer."""
    goal = goal_of(wanted)
    return tuple(
        one
        for kind in LOOKS
        for one in some_drawn(kind)
        if one.grid == wanted.grid and holds(goal, facts_of(one))
    )


def kind_of_drawing(wanted: Wanted) -> str:
    """Return what is asked of a drawing.

    Example:
        >>> kind_of_drawing(Wanted("sides", 5, "square"))
        'sides'
    """
    return wanted.ask


def difficulty_of_drawing(wanted: Wanted) -> tuple[int, int]:
    """Return how hard it is to draw: few sides on square dots are the easiest.

    Example:
        >>> difficulty_of_drawing(Wanted("sides", 3, "square"))
        (3, 0)
    """
    return len(_examples(wanted)[0].points), PAPERS.index(wanted.grid)


def goal_of(wanted: Wanted) -> Predicate:
    """Return the predicate that a shape is as wanted, in whatever place, size and turn.

    Example:
        >>> goal_of(Wanted("name", "square", "square"))
        ['and', ['=', 'square', True]]
    """
    if wanted.ask == "sides":
        return [*CLOSED, ["=", "sides", wanted.value]]
    if wanted.ask == "vertices":
        return [*CLOSED, ["=", "vertices", wanted.value]]
    if wanted.ask == "right angles":
        sides = 3 if wanted.value == 1 else FOUR
        return [*CLOSED, ["=", "sides", sides], ["=", "right_angles", wanted.value]]
    if wanted.value in RIGHT:
        # A square is a rectangle, so that it is right for both.
        return ["and", ["=", wanted.value, True]]
    return [*CLOSED, ["=", "sides", _sides(wanted)]]


def _sides(wanted: Wanted) -> int:
    if wanted.ask == "right angles":
        return 3 if wanted.value == 1 else FOUR
    if isinstance(wanted.value, int):
        return wanted.value
    return next((sides for sides, name in BY_SIDES.items() if name == wanted.value), FOUR)


def draw(request: Request) -> Task:
    """Make a task in which a shape is drawn."""
    wanted: Wanted = request.item
    one = request.chance.choose(_examples(wanted))
    begun = request.options["begin"] == "one side"
    stages = strokes(one.shape(), one.grid)
    start = stages[1].shape if begun else None
    what, words = _in_words(wanted)
    prompt = f"{'Finish' if begun else 'Draw'} {what}."
    return Task(
        skill=request.skill,
        kind=wanted.ask,
        prompt=prompt,
        say=f"{prompt} Close it at the point where it begins.",
        manipulative="PolygonDrawer",
        start=to_draw_on(start, one.grid, request.vocabulary),
        ask={"by": "manipulative"},
        goal=goal_of(wanted),
        answer=what,
        spoken=words,
        steps=(
            *(
                Step(
                    say=stage.say,
                    show={"shape": _plain(stage.shape)},
                    numbers={
                        "act": "draw",
                        "side": stage.drawn.side,
                        "step": None if stage.drawn.step is None else [*stage.drawn.step],
                    },
                )
                for stage in stages[2 if begun else 0 :]
            ),
            _told(wanted, one),
        ),
        mistakes=tuple(_mistakes(wanted, request.vocabulary)),
    )


def _plain(shape: Shape) -> dict[str, Any]:
    return {"points": [list(point) for point in shape["points"]], "closed": shape["closed"]}


def _in_words(wanted: Wanted) -> tuple[str, str]:
    if wanted.ask == "name":
        return (with_article(str(wanted.value)),) * 2
    if wanted.ask == "right angles":
        of = "a triangle" if wanted.value == 1 else "a shape with 4 sides"
        many = int(wanted.value)
        angles = counted(many, "right angle", "right angles")
        said = f"{number_in_words(many)} {angles.partition(' ')[2]}"
        if wanted.value == 1:
            return f"{of} with {angles}", f"{of} with {said}"
        return f"{of} and {angles}", f"a shape with four sides and {said}"
    many = int(wanted.value)
    words = number_in_words(many)
    return f"a shape with {many} {wanted.ask}", f"a shape with {words} {wanted.ask}"


def _told(wanted: Wanted, one: Drawn) -> Step:
    facts = facts_of(one)
    if wanted.ask == "right angles" or wanted.value in RIGHT:
        many = int(facts["right_angles"] or 0)
        say = f"It has {counted(many, 'right angle', 'right angles')}."
        numbers = found("right angles", many)
        if wanted.value == "square":
            equal = int(facts["equal_sides"] or 0)
            say += f" {counted(equal, 'side is', 'sides are')} equally long."
            numbers["equal sides"] = equal
        show = {"show": ["right_angles", "equal_sides"]}
        return Step(say=say, show=show, numbers=numbers)
    sides = int(facts["sides"] or 0)
    say = f"It has {sides} sides and {facts['vertices']} vertices."
    numbers = {**found("sides", sides), "vertices": facts["vertices"]}
    show = {"show": ["sides", "vertices"]}
    return Step(say=say, chant=f"{sides}", show=show, numbers=numbers)


def _mistakes(wanted: Wanted, vocabulary: str) -> list[Mistake]:
    sides = _sides(wanted)
    possible: list[tuple[Rule[Any], Predicate]] = [
        (may.NOT_CLOSED, ["and", ["=", "closed", False], [">=", "points", 3]]),
        (
            may.SIDES_CROSS,
            ["and", ["=", "closed", True], ["in", "fault", ["crossing", "touching", "overlap"]]],
        ),
        (may.DREW_MID_SIDE, [*CLOSED, ["=", "points", sides], ["<", "sides", sides]]),
    ]
    if wanted.value in RIGHT or wanted.ask == "right angles":
        possible.append((may.CORNERS_NOT_RIGHT, _corners_not_right(wanted, sides)))
    if wanted.value == "square":
        possible.append(
            (may.SIDES_NOT_EQUAL, ["and", ["=", "rectangle", True], ["!=", "square", True]])
        )
    possible += [
        (may.DREW_ONE_MORE, [*CLOSED, ["=", "sides", sides + 1]]),
        (may.DREW_ONE_FEWER, [*CLOSED, ["=", "sides", sides - 1]]),
    ]
    return [
        mistake([rule], when, vocabulary, numbers={"act": "draw", "sides": sides, **rule.does})
        for rule, when in possible
        # Nothing has fewer sides than a triangle.
        if not (rule is may.DREW_ONE_FEWER and sides == 3)  # noqa: PLR2004 - see above
    ]


def _corners_not_right(wanted: Wanted, sides: int) -> Predicate:
    if wanted.value in RIGHT:
        return [*CLOSED, ["=", "sides", sides], ["=", "rectangle", False]]
    return [*CLOSED, ["=", "sides", sides], ["!=", "right_angles", wanted.value]]


GENERATORS = {
    "shapes.draw_shape": TaskGenerator(to_draw, draw, kind_of_drawing, difficulty_of_drawing),
}
