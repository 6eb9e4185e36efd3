"""Tasks about equal shares: judging shares, and cutting a rectangle or circle into some.

Shares are equal when they are equally large; they need not look alike (Common Core 2.G.A.3).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from typing import Any, NamedTuple

from manipulatives.lessons.strands.shapes.mistakes import drawing as may
from manipulatives.lessons.strands.shapes.paper import (
    YES_OR_NO,
    count_of,
    numbers_to,
    to_look_at,
    yes_no,
)
from manipulatives.lessons.strands.shapes.pools.curves import curves
from manipulatives.lessons.strands.shapes.pools.polygons import Drawn
from manipulatives.lessons.tasks.foreseen import done_with, mistake
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.predicates import Predicate
from manipulatives.lessons.tasks.rule import Rule
from manipulatives.lessons.tasks.task import Mistake, Step, Task
from manipulatives.maths.shapes.data import Cut
from manipulatives.maths.shapes.shares import Shares, shares_of, ways_to_share
from manipulatives.words.shape_remarks import PARTS

SHARES = (2, 3, 4)
WIDTHS = (2, 4, 6, 8)
HEIGHTS = (2, 3, 4, 6)
Cuts = tuple[tuple[tuple[int, int], ...], ...]


class Shared(NamedTuple):
    """A shape with cuts, or one that is to be cut.

    Attributes:
        one: the shape.
        shares: into how many it is cut.
        cuts: the cuts; for a shape that is to be cut, those of the worked answer.
        judge: whether it is asked if they make equal shares.

    Example:
        >>> Shared(curves("circle")[0], 2, (((0, 1), (12, 1)),), judge=True).shares
        2
    """

    one: Drawn
    shares: int
    cuts: Cuts
    judge: bool


# Cuts of a circle that do not make equal shares: beside the centre, or at unequal turns.
# fmt: off
_CIRCLE: dict[int, tuple[Cuts, ...]] = {
    2: ((((2, 1), (10, 1)),), (((8, 1), (16, 1)),), (((21, 1), (11, 1)),)),
    3: (
        (((2, 1), (10, 1)), ((22, 1), (14, 1))), (((8, 1), (16, 1)), ((4, 1), (20, 1))),
        (((0, 1), (0, 0), (6, 1)), ((0, 0), (15, 1))),
    ),
    4: (
        (((0, 1), (12, 1)), ((4, 1), (16, 1))), (((6, 1), (18, 1)), ((2, 1), (14, 1))),
        (((0, 1), (12, 1)), ((1, 1), (11, 1)), ((23, 1), (13, 1))),
    ),
}
# fmt: on


@cache
def _rectangles() -> tuple[Drawn, ...]:
    found = []
    for wide in WIDTHS:
        for high in HEIGHTS:
            left, top = 4 - wide // 2, 4 - high // 2
            right, low = left + wide, top + high
            points = ((left, top), (right, top), (right, low), (left, low))
            found.append(Drawn("rectangle", "square", points))
    return tuple(found)


def to_share(options: Mapping[str, Any]) -> tuple[Shared, ...]:
    """Return the shapes that are judged or cut.

    Example:
        >>> {one.shares for one in to_share({"ask": "cut", "shares": "any"})} == {2, 3, 4}
        True
    """
    wanted = SHARES if options["shares"] == "any" else (options["shares"],)
    judge = options["ask"] == "judge"
    return tuple(one for shares in wanted for one in (_judged if judge else _cut)(shares))


@cache
def _cut(shares: int) -> tuple[Shared, ...]:
    shapes = (*_rectangles(), *curves("circle"))
    return tuple(
        Shared(one, shares, ways[0], judge=False) for one in shapes if (ways := _equal(one, shares))
    )


@cache
def _judged(shares: int) -> tuple[Shared, ...]:
    """Return as many shapes with equal as with unequal shares."""
    found: list[Shared] = []
    for one in (*_rectangles(), *curves("circle")):
        equal, unequal = _equal(one, shares), _unequal(one, shares)
        many = min(len(equal), len(unequal))
        # Of each as many, the last ones first: among these are the unlike ones.
        for ways in (equal[::-1][:many], unequal[:many]):
            found += [Shared(one, shares, cuts, judge=True) for cuts in ways]
    return tuple(found)


def _equal(one: Drawn, shares: int) -> list[Cuts]:
    ways = ways_to_share(one.shape(), one.grid, shares)
    return [tuple(tuple((a, b) for a, b in cut) for cut in cuts) for cuts in ways]


def _unequal(one: Drawn, shares: int) -> list[Cuts]:
    if one.curve:
        return list(_CIRCLE[shares])
    (left, top), (right, low) = one.points[0], one.points[2]
    wide = right - left

    def across(start: int, end: int) -> tuple[tuple[int, int], ...]:
        return ((left + start, top), (left + end, low))

    if shares == 2:  # noqa: PLR2004 - halves
        upright = [(across(at, at),) for at in range(1, wide) if 2 * at != wide]
        slanted = [(across(at, 0),) for at in range(1, wide)]
        return [*upright, *slanted]
    if shares == 3:  # noqa: PLR2004 - thirds
        return [
            (across(one_cut, one_cut), across(other, other))
            for one_cut in range(1, wide)
            for other in range(one_cut + 1, wide)
            if (one_cut, other, wide) != (one_cut, 2 * one_cut, 3 * one_cut)
        ]
    level = ((left, top + 1), (right, top + 1))
    high = low - top
    crosses: list[Cuts] = [
        (across(at, at), level)
        for at in range(1, wide)
        if high > 2 or 2 * at != wide  # noqa: PLR2004 - half
    ]
    return crosses


def kind_of_share(item: Shared) -> str:
    """Return into how many shares a shape is cut.

    Example:
        >>> kind_of_share(to_share({"ask": "cut", "shares": 4})[0])
        'cut into 4'
    """
    return f"{'judge' if item.judge else 'cut into'} {item.shares}"


def difficulty_of_share(item: Shared) -> tuple[int, int]:
    """Return how hard sharing is: halves, fourths, thirds; a circle is harder to cut in three.

    Example:
        >>> difficulty_of_share(to_share({"ask": "cut", "shares": 2})[0])
        (0, 0)
    """
    return (2, 4, 3).index(item.shares), int(bool(item.one.curve))


@cache
def _found(item: Shared) -> Shares:
    shape = {**item.one.shape(), "cuts": _lists(item.cuts)}
    found = shares_of(shape, item.one.grid)  # type: ignore[arg-type]  # a shape with its cuts
    if found is None:
        raise ValueError(f"{item.one} cannot be cut.")
    return found


def _lists(cuts: Sequence[Sequence[tuple[int, int]]]) -> list[Cut]:
    return [[list(point) for point in cut] for cut in cuts]


def share(request: Request) -> Task:
    """Make a task about equal shares."""
    item: Shared = request.item
    return _judge(request, item) if item.judge else _cut_it(request, item)


def _judge(request: Request, item: Shared) -> Task:
    found, parts = _found(item), PARTS[request.vocabulary][item.shares]
    right = found.equal
    start = to_look_at(item.one, request.vocabulary)
    start["shape"]["cuts"] = _lists(item.cuts)
    prompt, wrong = f"Is it cut into {parts}?", yes_no(not right)
    mistakes: list[Mistake] = []
    if not (right and found.alike):
        rule = may.UNLIKE_AS_UNEQUAL if right else may.UNEQUAL_AS_EQUAL
        when: Predicate = ["=", "answer", wrong]
        numbers = done_with("share", shares=item.shares)(rule, wrong)
        mistakes.append(mistake([rule], when, request.vocabulary, answer=wrong, numbers=numbers))
    verdict = f"Equal shares: {parts}." if right else f"Not equal: these are no {parts}."
    return Task(
        skill=request.skill,
        kind=kind_of_share(item),
        prompt=prompt,
        say=f"{prompt} Are all shares equally large?",
        manipulative="PolygonDrawer",
        start=start,
        ask={"by": "choice", "choices": list(YES_OR_NO)},
        goal=["=", "answer", yes_no(right)],
        answer=yes_no(right),
        spoken=yes_no(right),
        steps=(
            Step(
                say=f"There are {item.shares} shares.",
                chant=numbers_to(item.shares),
                numbers=count_of("shares", item.shares),
            ),
            _compared(item, found),
            Step(
                verdict,
                yes_no(right),
                {"show": ["shares"]},
                yes_no(right),
                {"act": "share", "shares": item.shares, "equal": right},
            ),
        ),
        mistakes=tuple(mistakes),
    )


def _compared(item: Shared, found: Shares) -> Step:
    if found.alike or item.one.curve:
        match = "match" if found.alike else "do not match"
        numbers = {"act": "match", "match": found.alike}
        return Step(say=f"Laid on each other, they {match}.", numbers=numbers)
    # The smallest triangles of square dots are half squares.
    *most, last = [str(area) for area in found.areas]
    return Step(
        say=f"Count half squares: {', '.join(most)} and {last}.",
        numbers={"act": "compare", "areas": [*found.areas]},
    )


def _cut_it(request: Request, item: Shared) -> Task:
    shares = item.shares
    parts = PARTS[request.vocabulary][shares]
    shape = dict(item.one.shape())
    start = {**to_look_at(item.one, request.vocabulary), "tool": "cut"}
    start = {name: value for name, value in start.items() if name not in ("movable", "buttons")}
    steps = [
        Step(
            say=f"Cut {number}, from edge to edge.",
            chant=f"{number}",
            show={"shape": {**shape, "cuts": _lists(item.cuts[:number])}},
            numbers={"act": "cut", "number": number},
        )
        for number in range(1, len(item.cuts) + 1)
    ]
    shows = {"show": ["shares"]}
    say = f"{shares} equal shares: {parts}."
    numbers = {"act": "share", "shares": shares, "equal": True}
    steps.append(Step(say=say, chant=parts, show=shows, numbers=numbers))
    prompt = f"Cut it into {shares} equal shares."
    return Task(
        skill=request.skill,
        kind=kind_of_share(item),
        prompt=prompt,
        say=f"{prompt} We call them {parts}.",
        manipulative="PolygonDrawer",
        start=start,
        ask={"by": "manipulative"},
        goal=["and", ["=", "shares", shares], ["=", "equal_shares", True]],
        answer=parts,
        spoken=parts,
        steps=tuple(steps),
        mistakes=tuple(_wrong_cuts(shares, request.vocabulary)),
    )


def _wrong_cuts(shares: int, vocabulary: str) -> list[Mistake]:
    unequal: Predicate = ["and", ["=", "shares", shares], ["=", "equal_shares", False]]
    possible: list[tuple[Rule[Any], Predicate]] = [
        (may.UNEQUAL_AS_EQUAL, unequal),
        (may.ONE_CUT_TOO_MANY, ["=", "shares", shares + 1]),
    ]
    if shares > 2:  # noqa: PLR2004 - one share is the shape as it was
        possible.append((may.ONE_SHARE_TOO_FEW, ["=", "shares", shares - 1]))
    return [
        mistake([rule], when, vocabulary, numbers={"act": "cut", "shares": shares, **rule.does})
        for rule, when in possible
    ]


GENERATORS = {
    "shapes.equal_shares": TaskGenerator(to_share, share, kind_of_share, difficulty_of_share),
}
