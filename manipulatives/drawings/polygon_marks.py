"""What is marked on a shape: right angles, equal sides, parallel sides, mirror lines, numbers.

Everything is in hundredths of the space between dots, from the top left dot, and the same in the
browser.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from itertools import pairwise

from manipulatives.data import table
from manipulatives.maths.shapes.data import Shape, check_shape
from manipulatives.maths.shapes.outline import Outline, outline_of
from manipulatives.maths.shapes.papers import Grid, place
from manipulatives.maths.shapes.properties import Properties, properties_of

SIZES: dict[str, dict[str, float]] = table("shape_marks")
"""Lengths of the marks."""
MARKED = ("right_angles", "equal_sides", "parallel", "mirror_lines", "crossing")
COUNTED = ("", "sides", "vertices")
MOST_GROUPS = 4
FOLDED = 1e-6

Spot = tuple[float, float]


@dataclass(frozen=True)
class Mark:
    """Something that is marked.

    Attributes:
        role: `"right"`, `"equal"`, `"parallel"`, `"mirror"`, `"crossing"` or `"number"`.
        points: a chain of straight lines; of a crossing and a number only where it is.
        text: the digits of a number.
    """

    role: str
    points: tuple[Spot, ...]
    text: str = ""


def marks_of(given: Shape, grid: Grid, shown: Collection[str], counted: str = "") -> list[Mark]:
    """Return what is marked on a shape.

    Args:
        given: the shape.
        grid: the paper it is on.
        shown: any of `MARKED`.
        counted: what is numbered: "sides", "vertices" or nothing.

    Raises:
        ValueError: no shape.

    Example:
        >>> square = {"points": [[0, 0], [1, 0], [1, 1], [0, 1]], "closed": True}
        >>> marks_of(square, "square", ["right_angles"])[0].points
        ((0.0, 35.0), (35.0, 35.0), (35.0, 0.0))
    """
    shape = check_shape(given, grid)
    if "curve" in shape:
        return _on_curve(shape, grid, shown)
    outline = outline_of(shape, grid)
    spots = [place(turn, grid) for turn in outline.turns]
    marks = _numbers(outline, spots, counted)
    if "crossing" in shown:
        marks += [
            Mark("crossing", (_contact(outline, grid, meeting.one, meeting.other),))
            for meeting in outline.meetings
        ]
    if outline.polygon is not None:
        marks += _on_polygon(spots, properties_of(outline.polygon, grid), shown)
    return marks


def _on_polygon(spots: list[Spot], found: Properties, shown: Collection[str]) -> list[Mark]:
    marks = []
    if "mirror_lines" in shown:
        marks += [_mirror(spots, line) for line in found.mirrors]
    if "right_angles" in shown:
        after = [*spots[1:], spots[0]]
        marks += [_right(spots[at], spots[at - 1], after[at]) for at in found.right]
    sides = list(pairwise([*spots, spots[0]]))
    if "equal_sides" in shown:
        for many, group in enumerate(found.equal[:MOST_GROUPS], start=1):
            for side in group:
                marks += _ticks(*sides[side], many)
    if "parallel" in shown:
        for many, parallel in enumerate(_parallel_groups(found)[:MOST_GROUPS], start=1):
            for side in parallel:
                marks += _arrows(*sides[side], many, sides[parallel[0]])
    return marks


def _on_curve(shape: Shape, grid: Grid, shown: Collection[str]) -> list[Mark]:
    start, end = (place((point[0], point[1]), grid) for point in shape["points"])
    across, down = end[0] - start[0], end[1] - start[1]
    marks = []
    if shape["curve"] == "half circle" and "mirror_lines" in shown:
        middle = (start[0] + end[0]) / 2, (start[1] + end[1]) / 2
        top = middle[0] + down / 2, middle[1] - across / 2
        marks.append(_line(middle, top))
    if shape["curve"] == "quarter circle":
        other = start[0] - down, start[1] + across
        if "mirror_lines" in shown:
            turn = math.sqrt(0.5)
            arc = start[0] + (across - down) * turn, start[1] + (across + down) * turn
            marks.append(_line(start, arc))
        if "right_angles" in shown:
            marks.append(_right(start, end, other))
        if "equal_sides" in shown:
            marks += [*_ticks(start, end, 1), *_ticks(start, other, 1)]
    return marks


def _right(corner: Spot, before: Spot, after: Spot) -> Mark:
    one, other = _unit(corner, before), _unit(corner, after)
    shorter = min(math.dist(corner, before), math.dist(corner, after))
    far = min(SIZES["right"]["side"], SIZES["right"]["share"] * shorter)
    return Mark(
        "right",
        (
            _on(corner, (one, far)),
            _on(corner, (one, far), (other, far)),
            _on(corner, (other, far)),
        ),
    )


def _ticks(start: Spot, end: Spot, many: int) -> list[Mark]:
    along, scale = _unit(start, end), _scale(start, end)
    aside = -along[1], along[0]
    middle = (start[0] + end[0]) / 2, (start[1] + end[1]) / 2
    base = _on(middle, (along, SIZES["equal"]["along"] * math.dist(start, end)))
    half, gap = SIZES["equal"]["half"] * scale, SIZES["equal"]["gap"] * scale
    marks = []
    for at in range(many):
        spot = _on(base, (along, (at - (many - 1) / 2) * gap))
        marks.append(Mark("equal", (_on(spot, (aside, -half)), _on(spot, (aside, half)))))
    return marks


def _arrows(start: Spot, end: Spot, many: int, first: tuple[Spot, Spot]) -> list[Mark]:
    along, scale = _unit(start, end), _scale(start, end)
    size = SIZES["parallel"]
    half, long, gap = (size[part] * scale for part in ("half", "long", "gap"))
    middle = (start[0] + end[0]) / 2, (start[1] + end[1]) / 2
    base = _on(middle, (along, size["along"] * math.dist(start, end)))
    leading = _unit(*first)
    if along[0] * leading[0] + along[1] * leading[1] < 0:
        along = -along[0], -along[1]
    aside = -along[1], along[0]
    marks = []
    for at in range(many):
        tip = _on(base, (along, (at - (many - 1) / 2) * gap))
        tail = _on(tip, (along, -long))
        marks.append(Mark("parallel", (_on(tail, (aside, -half)), tip, _on(tail, (aside, half)))))
    return marks


def _parallel_groups(found: Properties) -> list[list[int]]:
    """Return parallel sides together, however many there are of one direction."""
    groups: list[list[int]] = []
    for one, other in found.parallel:
        home = next((group for group in groups if one in group or other in group), None)
        if home is None:
            groups.append([one, other])
        else:
            home += [side for side in (one, other) if side not in home]
    return groups


def _mirror(spots: Sequence[Spot], line: int) -> Mark:
    many = len(spots)
    middles = [
        (
            (spots[at][0] + spots[(line - at) % many][0]) / 2,
            (spots[at][1] + spots[(line - at) % many][1]) / 2,
        )
        for at in range(many)
    ]
    far = [math.dist(middles[0], middle) for middle in middles]
    one = middles[far.index(max(far))]
    apart = [math.dist(one, middle) for middle in middles]
    return _line(one, middles[apart.index(max(apart))])


def _line(one: Spot, other: Spot) -> Mark:
    along, beyond = _unit(one, other), SIZES["mirror"]["beyond"]
    return Mark("mirror", (_on(one, (along, -beyond)), _on(other, (along, beyond))))


def _contact(outline: Outline, grid: Grid, one: int, other: int) -> Spot:
    """Return where two sides meet that should not."""
    (a, b), (c, d) = (
        tuple(place(end, grid) for end in outline.sides[side]) for side in (one, other)
    )
    area = _cross(a, b, c, d)
    if area != 0:
        share = _cross(a, c, c, d) / area
        return a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])
    # On one line: in the middle of what they share.
    along = sorted([a, b, c, d])
    return (along[1][0] + along[2][0]) / 2, (along[1][1] + along[2][1]) / 2


def _numbers(outline: Outline, spots: Sequence[Spot], counted: str) -> list[Mark]:
    """Return numbers beside the sides or the corners, outside of a polygon."""
    area = sum(
        one[0] * other[1] - one[1] * other[0] for one, other in pairwise([*spots, *spots[:1]])
    )
    # An area of less than one is only a rounding error.
    turn = -1 if area < -1 else 1
    returns = len(outline.sides) == len(spots)
    sides = list(pairwise([*spots, *spots[:1]] if returns else spots))
    outward = []
    for start, end in sides:
        along = _unit(start, end)
        outward.append((along[1] * turn, -along[0] * turn))
    if counted == "sides":
        middles = [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in sides]
        places = [
            _on(middle, (out, SIZES["number"]["side"]))
            for middle, out in zip(middles, outward, strict=True)
        ]
    elif counted == "vertices" and sides:
        ways = [*outward, *outward[-1:]] if not returns else outward
        before = [outward[0], *outward] if not returns else [outward[-1], *outward[:-1]]
        places = [
            _on(spot, (_between(one, other), SIZES["number"]["corner"]))
            for spot, one, other in zip(spots, before, ways, strict=True)
        ]
    else:
        places = []
    return [Mark("number", (spot,), str(at)) for at, spot in enumerate(places, start=1)]


def _between(one: Spot, other: Spot) -> Spot:
    """Return the direction in the middle of two."""
    across, down = one[0] + other[0], one[1] + other[1]
    far = math.hypot(across, down)
    return (across / far, down / far) if far > FOLDED else one


def _cross(one: Spot, other: Spot, start: Spot, end: Spot) -> float:
    return (other[0] - one[0]) * (end[1] - start[1]) - (other[1] - one[1]) * (end[0] - start[0])


def _unit(start: Spot, end: Spot) -> Spot:
    """Return a step of length 1 from one place towards another."""
    far = math.dist(start, end)
    return (end[0] - start[0]) / far, (end[1] - start[1]) / far


def _on(start: Spot, *steps: tuple[Spot, float]) -> Spot:
    """Return the place some steps further on, each so far in its direction."""
    across, down = start
    for (right, below), far in steps:
        across, down = across + right * far, down + below * far
    return across, down


def _scale(start: Spot, end: Spot) -> float:
    return min(1.0, math.dist(start, end) / SIZES["equal"]["full"])
