from __future__ import annotations

import math
import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.drawings.clock import FACE, clock_drawing
from manipulatives.drawings.shapes import MM_PER_POINT, Arc, Circle, Line, Polygon, Text

SIZE = 61.0
MIDDLE = SIZE / 2
RADIUS = SIZE / 2 / FACE["field"]["plain"]

dials = st.builds(
    lambda hour, minute: {"hour": hour, "minute": minute, "half": "am"},
    st.integers(0, 719),
    st.integers(0, 59),
)


def at(reading):
    return {"hour": reading, "minute": reading % 60, "half": "am"}


def of_role(drawing, role):
    return [shape for shape in drawing.shapes if shape.role == role]


def angle_of(points):
    """The angle from twelve of the middle line of a hand: it runs to the middle of its far end."""
    far = max(math.dist(point, (MIDDLE, MIDDLE)) for point in points)
    ends = [point for point in points if math.dist(point, (MIDDLE, MIDDLE)) > far - 1e-6]
    x = sum(point[0] for point in ends) / len(ends) - MIDDLE
    y = sum(point[1] for point in ends) / len(ends) - MIDDLE
    return math.degrees(math.atan2(x, -y)) % 360


def extent(shape):
    match shape:
        case Line():
            points, edge = [shape.start, shape.end], shape.paint.width / 2
        case Polygon():
            points, edge = list(shape.points), 0
        case Circle():
            points, edge = (
                [shape.centre],
                shape.radius + shape.paint.width / 2 * bool(shape.paint.stroke),
            )
        case Arc():
            points, edge = [shape.centre], shape.radius + shape.paint.width / 2
        case Text():
            # No digit is wider than 0.6 of its type.
            half = 0.3 * len(shape.text) * shape.size
            x, y = shape.at
            points, edge = [(x - half, y - 0.72 * shape.size), (x + half, y)], 0
    xs, ys = zip(*points, strict=True)
    return min(*xs, *ys) - edge, max(*xs, *ys) + edge


@given(dials)
def test_each_hand_points_where_the_dial_says(dial):
    drawing = clock_drawing(dial, size=SIZE)
    (hour,), (minute,) = of_role(drawing, "hour"), of_role(drawing, "minute")
    turn = Fraction(360)
    for hand, angle in (
        (hour, turn * dial["hour"] / 720),
        (minute, turn * dial["minute"] / 60),
    ):
        apart = (angle_of(hand.points) - float(angle) + 180) % 360 - 180
        assert abs(apart) < 1e-6


@pytest.mark.parametrize("hand", ["hour", "minute"])
def test_a_hand_is_as_long_as_on_the_face_in_the_browser(hand):
    (shape,) = of_role(clock_drawing(at(275), size=SIZE), hand)
    reach = [
        (px - MIDDLE) * math.sin(math.radians(angle_of(shape.points)))
        - (py - MIDDLE) * math.cos(math.radians(angle_of(shape.points)))
        for px, py in shape.points
    ]
    assert max(reach) == pytest.approx(FACE[hand]["length"] * RADIUS)
    assert min(reach) == pytest.approx(0, abs=1e-9)


def numbers(path):
    return [float(number) for number in re.findall(r"-?\d+(?:\.\d+)?(?:e-?\d+)?", path)]


@pytest.mark.parametrize("hand", ["hour", "minute"])
def test_hands_have_the_outline_that_the_browser_draws(js, hand):
    (path,) = js("clock/face.js", "handOutline", [[hand]])
    xs, ys = numbers(path)[::2], numbers(path)[1::2]
    unit = -min(ys) / FACE[hand]["length"]
    (shape,) = of_role(clock_drawing(at(0), size=SIZE), hand)
    paper = sorted(((x - MIDDLE) / RADIUS, (y - MIDDLE) / RADIUS) for x, y in set(shape.points))
    browser = sorted({(x / unit, y / unit) for x, y in zip(xs, ys, strict=True)})
    assert len(paper) == len(browser)
    for one, other in zip(paper, browser, strict=True):
        assert one == pytest.approx(other, abs=2e-4)


@pytest.mark.parametrize("minute", [5, 12, 35, 59])
def test_the_arc_has_the_pieces_that_the_browser_draws(js, minute):
    (text,) = js("clock/face.js", "arcDashes", [[minute]])
    lengths = [6 * float(length) for length in text.split()]
    gap = FACE["arc"]["gap"]
    # Dashes and gaps in turn, from half a gap after the twelve on; the last gap goes all around.
    starts = [gap / 2 + sum(lengths[:place]) for place in range(0, len(lengths) - 1, 2)]
    browser = list(zip(starts, lengths[::2], strict=True))
    pieces = of_role(clock_drawing(at(minute), size=SIZE, arc=True), "arc")
    assert len(pieces) == len(browser) == math.ceil(minute / 5)
    for piece, drawn in zip(pieces, browser, strict=True):
        assert (piece.start, piece.sweep) == pytest.approx(drawn)
        edges = piece.radius - piece.paint.width / 2, piece.radius + piece.paint.width / 2
        expected = FACE["arc"]["inner"] * RADIUS, FACE["arc"]["outer"] * RADIUS
        assert edges == pytest.approx(expected)


@pytest.mark.parametrize(("reading", "numeral"), [(275, 4), (240, 4), (719, 11), (5, 0)])
def test_the_sector_runs_from_the_hour_last_passed_to_the_next(reading, numeral):
    (sector,) = of_role(clock_drawing(at(reading), size=SIZE, sector=True), "sector")
    assert (sector.start, sector.sweep, sector.slice) == (30 * numeral, 30, True)
    assert sector.radius == pytest.approx(FACE["sector"]["radius"] * RADIUS)


def test_numerals_stand_at_their_hours():
    numerals = of_role(clock_drawing(at(0), size=SIZE), "numeral")
    assert [text.text for text in numerals] == [str(hour) for hour in range(1, 13)]
    for hour, text in enumerate(numerals, start=1):
        middle = text.at[0], text.at[1] - 0.35 * text.size
        turn = math.radians(30 * hour)
        place = FACE["numerals"]["radius"] * RADIUS
        expected = MIDDLE + place * math.sin(turn), MIDDLE - place * math.cos(turn)
        assert middle == pytest.approx(expected)


@pytest.mark.parametrize(("every", "marks"), [(True, 60), (False, 12)])
def test_marks_are_at_every_minute_or_every_five(every, marks):
    drawing = clock_drawing(at(0), size=SIZE, ticks=every)
    drawn = of_role(drawing, "five_ticks") + of_role(drawing, "minute_ticks")
    angles = {
        round(math.degrees(math.atan2(tick.end[0] - MIDDLE, MIDDLE - tick.end[1])) % 360, 6)
        for tick in drawn
    }
    assert angles == {360 / marks * number for number in range(marks)}


@given(dials, st.booleans(), st.floats(30, 120), st.sampled_from([0, 12, 18]))
def test_nothing_reaches_beyond_the_drawing(dial, minute_numbers, size, points):
    drawing = clock_drawing(
        dial,
        minute_numbers=minute_numbers,
        sector=True,
        arc=True,
        size=size,
        least_type=points * MM_PER_POINT,
    )
    assert (drawing.width, drawing.height) == (size, size)
    for shape in drawing.shapes:
        least, most = extent(shape)
        assert least >= -1e-9, shape
        assert most <= size + 1e-9, shape


@given(st.floats(30, 120), st.sampled_from([12, 18]))
def test_type_is_never_smaller_than_asked(size, points):
    least = points * MM_PER_POINT
    drawing = clock_drawing(at(275), minute_numbers=True, size=size, least_type=least)
    sizes = [shape.size for shape in drawing.shapes if isinstance(shape, Text)]
    assert len(sizes) == 24
    assert min(sizes) >= least - 1e-9


def test_passed_minute_numbers_have_a_disc_and_not_only_a_colour():
    drawing = clock_drawing(at(275), minute_numbers=True, arc=True, size=SIZE)
    badges = {badge.centre for badge in of_role(drawing, "badge")}
    numbers_at = {
        text.text: (text.at[0], text.at[1] - 0.35 * text.size)
        for text in of_role(drawing, "minute_number")
    }
    on_disc = {
        name
        for name, place in numbers_at.items()
        if any(math.dist(place, badge) < 1e-6 for badge in badges)
    }
    assert on_disc == {"5", "10", "15", "20", "25", "30", "35"}


def test_a_face_to_draw_on_has_no_hands_and_does_not_describe_them():
    drawing = clock_drawing(at(275), hands=False, sector=True, arc=True, minute_numbers=True)
    roles = {shape.role for shape in drawing.shapes}
    assert roles.isdisjoint({"hour", "minute", "halo", "sector", "arc", "badge"})
    assert drawing.description == ""
    assert drawing.title == "A clock without hands"


def test_the_hands_of_an_answer_have_the_colour_of_what_is_moved():
    drawing = clock_drawing(at(275), answered=True)
    fills = {shape.paint.fill for role in ("hour", "minute") for shape in of_role(drawing, role)}
    assert fills == {"move"}


@pytest.mark.parametrize(
    ("reading", "minute", "said"),
    [
        (275, 35, "Short hand between 4 and 5. Long hand exactly on the 7."),
        (0, 0, "Short hand exactly on the 12. Long hand exactly on the 12."),
        (719, 59, "Short hand between 11 and 12. Long hand 4 marks past the 11."),
        (1, 1, "Short hand between 12 and 1. Long hand 1 mark past the 12."),
    ],
)
def test_the_description_says_where_the_hands_stand_and_not_the_time(reading, minute, said):
    dial = {"hour": reading, "minute": minute, "half": "am"}
    assert clock_drawing(dial).description == said


def test_the_narrow_hand_is_drawn_over_the_broad_one():
    roles = [shape.role for shape in clock_drawing(at(65)).shapes]
    assert roles.index("hour") < roles.index("minute") < roles.index("numeral")


@pytest.mark.parametrize("dial", [{}, {"hour": 720, "minute": 0, "half": "am"}, None, 275])
def test_what_is_no_dial_is_refused(dial):
    with pytest.raises(ValueError, match="A dial is"):
        clock_drawing(dial)
