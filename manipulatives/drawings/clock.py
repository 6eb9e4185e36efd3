"""The clock: a dial with or without hands, numerals, minute marks and aids."""

from __future__ import annotations

from manipulatives.data import table
from manipulatives.drawings.shapes import (
    Arc,
    Circle,
    Drawing,
    Line,
    Paint,
    Point,
    Polygon,
    Shape,
    around,
    centred,
)
from manipulatives.maths.time.day import HOUR
from manipulatives.maths.time.dial import Dial, check_dial, hour_passed

FACE: dict[str, dict[str, float]] = {
    part: {name: size if name == "gap" else round(size / 100, 6) for name, size in sizes.items()}
    for part, sizes in table("clock_face").items()
}
"""Proportions of the face: every length is a share of the dial's radius, from the centre where it
is a radius; `gap` is in degrees."""

SECTOR_EDGE = 0.01


def clock_drawing(
    dial: Dial,
    *,
    numerals: bool = True,
    ticks: bool = True,
    minute_numbers: bool = False,
    sector: bool = False,
    arc: bool = False,
    hands: bool = True,
    answered: bool = False,
    size: float = 50.0,
    least_type: float = 0.0,
) -> Drawing:
    """Return a clock face that fills the given size.

    Its description says where the hands point, but not the time.

    Args:
        dial: where the hands stand.
        numerals: whether the hours are written, 1 to 12.
        ticks: whether every minute has its mark.
        minute_numbers: whether the minutes are written around the face, in fives.
        sector: whether the piece from the hour last passed to the next is shaded.
        arc: whether the way of the minute hand from twelve is drawn, five minutes at a time.
        hands: whether there are hands; without them it is a face to draw on.
        answered: whether the hands are the answer in a key: both in the colour of what is moved.
        size: width and height of the drawing in millimetres.
        least_type: smallest type allowed, in millimetres.

    Raises:
        ValueError: if `dial` is no dial.

    Example:
        >>> clock_drawing({"hour": 275, "minute": 35, "half": "am"}).description
        'Short hand between 4 and 5. Long hand exactly on the 7.'
    """
    standing = check_dial(dial)
    radius = _radius(size, least_type) if minute_numbers else size / 2 / FACE["field"]["plain"]
    middle = size / 2, size / 2
    rim = Paint(fill="sheet", stroke="ink", width=FACE["rim"]["width"] * radius)
    shapes: list[Shape] = [Circle(middle, FACE["rim"]["radius"] * radius, rim, "rim")]
    if sector and hands:
        shapes += _sector(middle, radius, standing["hour"])
    shapes += _ticks(middle, radius, every_minute=ticks)
    if arc and hands:
        shapes += _arc(middle, radius, standing["minute"])
    if minute_numbers:
        counted = standing["minute"] if arc and hands else -1
        shapes += _minute_numbers(middle, radius, counted, least_type)
    if hands:
        shapes += _hands(middle, radius, standing, answered=answered)
    if numerals:
        shapes += _numerals(middle, radius, least_type, halo=hands)
    shapes.append(Circle(middle, FACE["hub"]["radius"] * radius, Paint(fill="ink"), "hub"))
    if not hands:
        return Drawing(size, size, tuple(shapes), "A clock without hands")
    return Drawing(size, size, tuple(shapes), "A clock", _hands_in_words(standing))


def _radius(size: float, least_type: float) -> float:
    """The radius of a face with numbers around it: the larger they are, the smaller it is."""
    place, field = FACE["minute_numbers"], FACE["field"]["numbered"]
    radius = size / 2 / field
    if place["size"] * radius >= least_type:
        return radius
    badge = least_type * place["badge"] / place["size"]
    return (size / 2 - 2 * badge) / (field - 2 * place["badge"])


def _ticks(middle: Point, radius: float, *, every_minute: bool) -> list[Shape]:
    shapes: list[Shape] = []
    for minute in range(0, 60, 1 if every_minute else 5):
        kind = "minute_ticks" if minute % 5 else "five_ticks"
        tick = FACE[kind]
        paint = Paint(stroke="quiet" if minute % 5 else "ink", width=tick["width"] * radius)
        inner = around(middle, tick["inner"] * radius, 6 * minute)
        outer = around(middle, tick["outer"] * radius, 6 * minute)
        shapes.append(Line(inner, outer, paint, kind))
    return shapes


def _sector(middle: Point, radius: float, hour: int) -> list[Shape]:
    passed, reach = hour // HOUR * 30, FACE["sector"]["radius"] * radius
    shade = Paint(fill="hour", opacity=0.13)
    edge = Paint(stroke="hour", width=SECTOR_EDGE * radius, round=True)
    return [
        Arc(middle, reach, passed, 30, shade, slice=True, role="sector"),
        Arc(middle, reach, passed, 30, edge, slice=True, role="sector_edge"),
    ]


def _arc(middle: Point, radius: float, minute: int) -> list[Shape]:
    inner, outer = FACE["arc"]["inner"] * radius, FACE["arc"]["outer"] * radius
    paint = Paint(stroke="minute", width=outer - inner)
    half_gap = FACE["arc"]["gap"] / 2
    pieces: list[Shape] = []
    for begin in range(0, minute, 5):
        end = min(begin + 5, minute)
        start = 6 * begin + half_gap
        stop = 6 * end - (half_gap if end < minute else 0)
        pieces.append(Arc(middle, (inner + outer) / 2, start, stop - start, paint, role="arc"))
    return pieces


def _minute_numbers(middle: Point, radius: float, counted: int, least_type: float) -> list[Shape]:
    place = FACE["minute_numbers"]
    size = max(place["size"] * radius, least_type)
    badge_radius = size * place["badge"] / place["size"]
    ring = (place["radius"] - place["badge"]) * radius + badge_radius
    shapes: list[Shape] = []
    for minute in range(0, 60, 5):
        at = around(middle, ring, 6 * minute)
        passed = 0 < minute <= counted
        if passed:
            badge = Paint(fill="minute")
            shapes.append(Circle(at, badge_radius, badge, "badge"))
        colour = "sheet" if passed else "quiet"
        shapes.append(centred(at, str(minute), size, colour=colour, role="minute_number"))
    return shapes


def _numerals(middle: Point, radius: float, least_type: float, *, halo: bool) -> list[Shape]:
    place = FACE["numerals"]
    size = max(place["size"] * radius, least_type)
    rim = place["halo"] * radius / 2 if halo else 0.0
    return [
        centred(
            around(middle, place["radius"] * radius, 30 * hour),
            str(hour),
            size,
            halo=rim,
            role="numeral",
        )
        for hour in range(1, 13)
    ]


def _hands(middle: Point, radius: float, dial: Dial, *, answered: bool) -> list[Shape]:
    hour, minute = FACE["hour"], FACE["minute"]
    neck = hour["length"] - hour["head"]
    # One side of each hand from the centre outward: how far, and how far from its middle line.
    hour_side = [(0.0, hour["width"] / 2), (neck, hour["width"] / 2), (neck, hour["spread"] / 2)]
    minute_side = [(0.0, minute["width"] / 2), (minute["length"], minute["tip"] / 2)]
    hour_line = _both_sides(middle, radius, dial["hour"] / 2, hour_side, [(hour["length"], 0.0)])
    minute_line = _both_sides(middle, radius, dial["minute"] * 6, minute_side)
    edge = 2 * minute["halo"] * radius
    hour_colour, minute_colour = ("move", "move") if answered else ("hour", "minute")
    # The hour hand is drawn first, so that the narrow minute hand hides less of it; a light edge
    # separates the two.
    return [
        Polygon(hour_line, Paint(hour_colour, hour_colour, edge, round=True), role="hour"),
        Polygon(minute_line, Paint(stroke="sheet", width=edge, round=True), role="halo"),
        Polygon(minute_line, Paint(minute_colour), role="minute"),
    ]


def _both_sides(
    middle: Point,
    radius: float,
    degrees: float,
    side: list[tuple[float, float]],
    tip: list[tuple[float, float]] | None = None,
) -> tuple[Point, ...]:
    outline = [*side, *(tip or []), *((along, -aside) for along, aside in reversed(side))]
    points = []
    for along, aside in outline:
        on_line = around(middle, along * radius, degrees)
        points.append(around(on_line, aside * radius, degrees - 90))
    return tuple(points)


def _hands_in_words(dial: Dial) -> str:
    passed = hour_passed(dial["hour"])
    between = f"between {passed} and {passed % 12 + 1}"
    hour = between if dial["hour"] % HOUR else f"exactly on the {passed}"
    numeral, marks = dial["minute"] // 5 or 12, dial["minute"] % 5
    past = f"{marks} {'mark' if marks == 1 else 'marks'} past the {numeral}"
    return f"Short hand {hour}. Long hand {past if marks else f'exactly on the {numeral}'}."
