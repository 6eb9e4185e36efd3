from __future__ import annotations

import math
import re

import pytest
from shapely import Polygon as Region
from shapely.affinity import rotate
from shapely.geometry import Point

from manipulatives.drawings.coin_face import FACE, coin_face, corners_of, outline, teeth
from manipulatives.drawings.coins import coins_drawing
from manipulatives.drawings.shapes import Circle, Polygon, Text
from manipulatives.drawings.svg import svg_of
from manipulatives.drawings.tokens import colours
from manipulatives.maths.money.coin import Coin
from manipulatives.maths.money.coins import CURRENCIES, currency
from manipulatives.maths.money.places import MAT
from manipulatives.maths.money.tray import tray_of

COINS = [(code, coin) for code, money in CURRENCIES.items() for coin in money.coins]
IDS = [f"{code} {coin.key}" for code, coin in COINS]


def of_role(drawing, role):
    return [shape for shape in drawing.shapes if shape.role == role]


def metal(drawing):
    return [shape for shape in drawing.shapes if shape.role.startswith("coin ")]


def widths(region):
    """How wide a shape is across, for each degree that it is turned."""
    for degrees in range(180):
        left, _, right, _ = rotate(region, degrees, origin=(0, 0)).bounds
        yield right - left


@pytest.mark.parametrize(("code", "coin"), COINS, ids=IDS)
def test_a_coin_is_as_wide_as_published_however_it_is_turned(code, coin):
    del code
    across = list(widths(Region(outline(coin))))
    if coin.sides and coin.sides % 2 == 0:
        assert max(across) == pytest.approx(coin.diameter, abs=0.01)
        assert min(across) == pytest.approx(coin.flats, abs=0.02)
    else:
        # Round, or a curve of constant width.
        assert across == pytest.approx([coin.diameter] * 180, abs=0.02 * coin.notches or 0.01)


@pytest.mark.parametrize("sides", [3, 5, 7, 9, 11])
def test_a_curve_of_constant_width_has_the_area_that_geometry_gives(sides):
    # Reuleaux polygon of width 1 with n sides: the regular polygon and n circular segments.
    turn = math.pi / sides
    corner = 1 / 2 / math.cos(turn / 2)
    polygon = sides / 2 * corner**2 * math.sin(2 * turn)
    segment = (turn - math.sin(turn)) / 2
    region = Region(outline(Coin(1, "token", 20, "copper", sides=sides)))
    assert region.area / 400 == pytest.approx(polygon + sides * segment, rel=2e-3)


@pytest.mark.parametrize(("code", "coin"), COINS, ids=IDS)
def test_an_outline_has_as_many_corners_or_notches_as_the_coin(code, coin):
    del code
    region = Region(outline(coin))
    assert region.is_valid
    if coin.notches:
        hull = region.convex_hull.difference(region)
        dents = [part for part in getattr(hull, "geoms", [hull]) if part.area > 0.02]
        assert len(dents) == coin.notches
        return
    points = outline(coin)
    turns = []
    for index, point in enumerate(points):
        before, after = points[index - 1], points[(index + 1) % len(points)]
        first = math.atan2(point[1] - before[1], point[0] - before[0])
        then = math.atan2(after[1] - point[1], after[0] - point[0])
        turns.append(math.degrees((then - first) % (2 * math.pi)))
    # Along a curve the outline turns by three degrees at most; more of it is a corner.
    assert sum(turn > 4 for turn in turns) == coin.sides


def numbers(path):
    return [float(number) for number in re.findall(r"-?\d+(?:\.\d+)?", path)]


@pytest.mark.parametrize(("code", "coin"), COINS, ids=IDS)
def test_the_browser_draws_the_same_outline(js, code, coin):
    del code
    (path,) = js("coins/state/face.js", "outline", [[coin.to_data()]])
    ours = Region([(10 * x, 10 * y) for x, y in outline(coin)])
    if coin.notches:
        ends = numbers(re.sub(r"A[\d.]+ [\d.]+ 0 0 [01] ", " ", path))
        assert len(ends) // 2 == 2 * coin.notches + 1
        sweeps = re.findall(r"A([\d.]+) [\d.]+ 0 0 ([01]) ", path)
        assert [sweep for _, sweep in sweeps] == ["0", "1"] * coin.notches
        dent = FACE["notch"]["dent"] * 5 * coin.diameter
        dents = [float(radius) for radius, sweep in sweeps if sweep == "0"]
        assert dents == pytest.approx([dent] * coin.notches, abs=0.01)
    else:
        corners = corners_of(coin)
        bows = [float(radius) for radius in re.findall(r"A([\d.]+) ", path)]
        bowed = 0 if math.isinf(corners.bow) else len(corners.turns)
        assert bows == pytest.approx([10 * corners.bow] * bowed, abs=0.01)
        ends = numbers(re.sub(r"A[\d.]+ [\d.]+ 0 0 1 ", " ", path))
        assert len(ends) // 2 == len(corners.turns) + 1
    for x, y in zip(ends[::2], ends[1::2], strict=True):
        assert ours.exterior.distance(Point(x, y)) < 0.1


@pytest.mark.parametrize(("code", "coin"), COINS, ids=IDS)
def test_the_browser_draws_the_same_teeth(js, code, coin):
    del code
    (dashes,) = js("coins/state/face.js", "teeth", [[coin.to_data()]])
    assert [dash / 10 for dash in dashes] == pytest.approx(list(teeth(coin)))
    if coin.edge in ("milled", "scalloped", "interrupted"):
        once_around = 2 * math.pi * FACE["edge"]["radius"] * coin.diameter / 2
        whole = once_around / sum(teeth(coin))
        assert whole == pytest.approx(round(whole))
    else:
        assert dashes == []


@pytest.mark.parametrize("alone", [False, True])
def test_names_are_as_large_on_paper_as_in_the_browser(js, alone):
    calls = [[coin.to_data(), alone] for _, coin in COINS]
    for (code, coin), found in zip(COINS, js("coins/state/face.js", "nameOn", calls), strict=True):
        shapes = coin_face(
            coin, CURRENCIES[code], (0, 0), worth=not alone, name=True, scale=1, least=0
        )
        named = [shape for shape in shapes if shape.role == "name"]
        assert [text.text for text in named] == found["lines"]
        assert all(text.size == pytest.approx(found["size"] / 10) for text in named)


@pytest.mark.parametrize(("code", "coin"), COINS, ids=IDS)
def test_what_is_written_on_a_coin_stays_on_it(code, coin):
    """A digit of the kit's font is 0.6 wide and 0.7 tall; a letter taken for 0.56 wide."""
    region = Region(outline(coin))
    for worth, name in ((True, False), (True, True), (False, True)):
        shapes = coin_face(coin, CURRENCIES[code], (0, 0), worth=worth, name=name, scale=1, least=0)
        texts = [shape for shape in shapes if isinstance(shape, Text)]
        assert bool(texts)
        for text in texts:
            tall, wide = (0.7, 0.6) if text.role == "worth" else (0.52, 0.56)
            half = len(text.text) * wide * text.size / 2
            x, y = text.at
            box = [(x + side * half, y - up * text.size) for side in (-1, 1) for up in (0, tall)]
            assert all(region.contains(Point(corner)) for corner in box), text


def test_numeral_and_name_do_not_touch():
    for code, coin in COINS:
        shapes = coin_face(coin, CURRENCIES[code], (0, 0), worth=True, name=True, scale=1, least=0)
        (worth,) = [shape for shape in shapes if shape.role == "worth"]
        first = next(shape for shape in shapes if shape.role == "name")
        # Ascenders of the kit's font are as tall as its digits.
        assert first.at[1] - 0.7 * first.size > worth.at[1] - 0.1


def test_the_numeral_stays_in_the_middle_that_no_other_coin_covers():
    # Half the breadth of two digits, 0.6 each: what `readable` keeps in sight.
    assert 0.6 * FACE["numeral"]["size"] <= 0.56


def test_a_coin_without_its_worth_bears_no_figure():
    drawing = coins_drawing(tray_of("25 10"), worths=False)
    assert [shape for shape in drawing.shapes if isinstance(shape, Text)] == []


def test_coins_are_drawn_at_true_size_on_the_mat():
    tray = tray_of("25 10 5 1")
    drawing = coins_drawing(tray)
    (mat,) = of_role(drawing, "mat")
    assert (mat.width, mat.height) == (MAT / 10, MAT / 10)
    for lying, shape in zip(tray, metal(drawing), strict=True):
        coin = CURRENCIES["usd"].coin(lying["coin"])
        region = Region(shape.points)
        left, _, right, _ = region.bounds
        # 0.1 mm is the tolerance to print by.
        assert right - left == pytest.approx(coin.diameter, abs=0.1)
        middle = region.centroid
        assert middle.x - mat.corner[0] == pytest.approx(lying["x"] / 10, abs=0.05)
        assert middle.y - mat.corner[1] == pytest.approx(lying["y"] / 10, abs=0.05)


def test_a_drawing_has_the_wanted_width_and_sizes_in_proportion():
    drawing = coins_drawing(tray_of("25 10"), mat=False, width=60)
    assert drawing.width == pytest.approx(60)
    sizes = [Region(shape.points).area ** 0.5 for shape in metal(drawing)]
    assert sizes[0] / sizes[1] == pytest.approx(24.26 / 17.91, rel=1e-3)


def test_without_a_mat_the_drawing_holds_the_coins_and_no_more():
    drawing = coins_drawing(tray_of("25 10 5 1"), mat=False, counts=True)
    assert of_role(drawing, "mat") == []
    region = Region(
        [(0, 0), (drawing.width, 0), (drawing.width, drawing.height), (0, drawing.height)]
    )
    for shape in metal(drawing):
        assert region.contains(Region(shape.points))
    assert drawing.width < 110
    assert drawing.height < 45


@pytest.mark.parametrize(
    ("counts", "figures"),
    [(False, []), (0, []), (2, ["25", "35"]), (True, ["25", "35", "40", "41"]), (9, None)],
)
def test_the_figures_of_counting_on_stand_below_the_coins(counts, figures):
    tray = tray_of("25 10 5 1")
    drawing = coins_drawing(tray, counts=counts)
    found = of_role(drawing, "count")
    assert [text.text for text in found] == (
        ["25", "35", "40", "41"] if figures is None else figures
    )
    for text, lying in zip(found, tray, strict=False):
        assert text.at[0] == pytest.approx(lying["x"] / 10 + 1)
        assert text.at[1] - text.size > lying["y"] / 10 + 9


def test_a_ring_is_drawn_around_the_coin_that_is_asked_about():
    drawing = coins_drawing(tray_of("10 10 1"), worths=False, ring="10")
    rings = of_role(drawing, "ring")
    assert len(rings) == 2
    assert all(ring.radius > 17.91 / 2 for ring in rings)


def test_type_too_small_to_print_is_left_out():
    tray = tray_of("25 10 5 1")
    assert len(of_role(coins_drawing(tray, names=True, least_type=0), "name")) == 4
    small = of_role(coins_drawing(tray, names=True, least_type=4), "name")
    assert 0 < len(small) < 4
    assert all(text.size >= 4 for text in small)
    figures = of_role(coins_drawing(tray, counts=True, width=50, least_type=4), "count")
    assert all(text.size >= 4 for text in figures)


def test_metals_are_those_of_the_kit():
    for _, coin in COINS:
        for part in filter(None, (coin.metal, coin.centre)):
            assert {part, f"{part}-rim"} <= set(colours())


def test_a_description_gives_the_number_of_coins_and_not_their_worth():
    assert coins_drawing(tray_of("25")).description == "1 coin."
    text = svg_of(coins_drawing(tray_of("25 10"), worths=False))
    assert "2 coins." in text
    assert "35" not in re.sub(r'"[^"]*"', "", text)


def test_an_empty_tray_is_a_mat():
    drawing = coins_drawing([])
    assert [shape.role for shape in drawing.shapes] == ["mat"]
    assert coins_drawing([], mat=False).shapes == ()


def test_coins_of_a_teacher_are_drawn():
    own = {
        "name": "market tokens",
        "minor": {"sign": "t", "one": "token", "many": "tokens"},
        "coins": [
            {"worth": 3, "diameter": 22, "metal": "silver", "centre": "copper", "sides": 8},
            {"worth": 1, "diameter": 20, "metal": "gold", "edge": "scalloped"},
        ],
    }
    drawing = coins_drawing(tray_of("3 1 1", own), own)
    assert [shape.paint.fill for shape in metal(drawing)] == ["silver", "gold", "gold"]
    (centre,) = of_role(drawing, "centre")
    assert isinstance(centre, Circle)
    assert centre.paint.fill == "copper"
    assert isinstance(metal(drawing)[0], Polygon)
    assert len(metal(drawing)[0].points) == 8
    assert currency(own).coin("3").name == "three tokens"


def channels_of(token):
    return [int(colours()[token][index : index + 2], 16) / 255 for index in (1, 3, 5)]


def luminance(channels):
    """Relative luminance, Web Content Accessibility Guidelines 2.2, definition of it."""
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return sum(share * c for share, c in zip((0.2126, 0.7152, 0.0722), linear, strict=True))


def contrast(one, other):
    colour_pair = [channels_of(each) if isinstance(each, str) else each for each in (one, other)]
    light, dark = sorted(map(luminance, colour_pair), reverse=True)
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize("metal_token", ["copper", "silver", "gold"])
def test_coins_stand_out_from_what_they_lie_on_and_their_numbers_from_them(metal_token):
    # Success criteria 1.4.3 (text, 4.5) and 1.4.11 (what is needed to see a thing, 3).
    # The purse as the style sheet mixes it.
    mixed = zip(channels_of("move-soft"), channels_of("sheet"), strict=True)
    purse = [0.8 * soft + 0.2 * sheet for soft, sheet in mixed]
    assert contrast("ink", metal_token) >= 4.5
    assert contrast("ink", purse) >= 4.5
    assert contrast(f"{metal_token}-rim", "sheet") >= 3
    assert contrast(f"{metal_token}-rim", purse) >= 3
    assert contrast("minute", "sheet") >= 4.5
    assert contrast("move", "sheet") >= 3
    assert contrast("move", purse) >= 3
