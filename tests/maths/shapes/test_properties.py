"""What is true of polygons, worked out again by complex numbers, shapely and sympy."""

from __future__ import annotations

import cmath
import math
from itertools import combinations
from random import Random

import pytest
import sympy
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import affinity
from shapely.geometry import Polygon

from manipulatives.maths.shapes.outline import outline_of
from manipulatives.maths.shapes.properties import properties_of
from manipulatives.words.shape_facts import shape_facts
from manipulatives.words.shape_names import kinds_of
from support.shapes import TURNS, put, put_on_plain, random_shape, small_points, spots

CLOSE = 1e-7
TOLD = ("tips", "right_angles", "equal_sides", "regular", "convex", "parallel", "mirror_lines")
KINDS = ("square", "rectangle", "rhombus", "parallelogram", "trapezoid", "kite")


class Reference:
    """The same, by angles and lengths in floating point. On dots nothing is nearly so."""

    def __init__(self, polygon, grid):
        placed = [complex(*spot) for spot in spots([list(point) for point in polygon], grid)]
        self.ring = Polygon([(spot.real, spot.imag) for spot in placed])
        if not self.ring.exterior.is_ccw:
            placed.reverse()
        self.many = many = len(placed)
        self.placed = placed
        self.steps = [placed[(at + 1) % many] - placed[at] for at in range(many)]
        self.lengths = [abs(step) for step in self.steps]
        # Inside angles, from 0 to 360 degrees.
        self.angles = [
            math.degrees(cmath.phase(-self.steps[at - 1] / self.steps[at]) % (2 * math.pi))
            for at in range(many)
        ]

    def facts(self):
        """Return what the polygon's facts should be."""
        equal = max(
            sum(abs(length - other) < CLOSE for other in self.lengths) for length in self.lengths
        )
        parallel = [abs((one / other).imag) < CLOSE for one, other in combinations(self.steps, 2)]
        same_angles = max(self.angles) - min(self.angles) < CLOSE
        return {
            "tips": sum(angle < 180 for angle in self.angles),
            "right_angles": sum(abs(angle - 90) < CLOSE for angle in self.angles),
            "equal_sides": equal if equal > 1 else 0,
            "regular": equal == self.many and same_angles,
            "convex": self.ring.convex_hull.equals(self.ring),
            "parallel": sum(parallel),
            "mirror_lines": self.mirrors(),
        }

    def mirrors(self):
        """Return how many lines fold the polygon onto itself, by trying all that could."""
        middle = complex(self.ring.centroid.x, self.ring.centroid.y)
        halves = [(spot + self.placed[at - 1]) / 2 for at, spot in enumerate(self.placed)]
        lines = set()
        for spot in [*self.placed, *halves]:
            if abs(spot - middle) < CLOSE:
                continue
            turn = cmath.phase(spot - middle) % math.pi
            # The reflection in a line through the origin at that angle.
            cosine, sine = math.cos(2 * turn), math.sin(2 * turn)
            moved = affinity.translate(self.ring, -middle.real, -middle.imag)
            folded = affinity.affine_transform(moved, [cosine, sine, sine, -cosine, 0, 0])
            if folded.symmetric_difference(moved).area < CLOSE * self.ring.area:
                lines.add(round(turn / math.pi, 6) % 1)
        return len(lines)


def polygons(seed, many):
    """Polygons on dots by chance."""
    chance = Random(seed)  # noqa: S311 - nothing here is secret
    while many:
        grid = chance.choice(["square", "triangle"])
        shape = random_shape(chance, grid)
        polygon = None if "curve" in shape else outline_of(shape, grid).polygon
        if polygon:
            many -= 1
            yield polygon, grid


def test_on_dots_all_is_as_floating_point_finds_it():
    seen = {name: set() for name in TOLD}
    for polygon, grid in polygons(31, 1200):
        facts = shape_facts({"points": [list(p) for p in polygon], "closed": True}, grid)
        expected = Reference(polygon, grid).facts()
        assert {name: facts[name] for name in TOLD} == expected, (polygon, grid)
        for name in TOLD:
            seen[name].add(facts[name])
    assert {0, 1, 2, 4} <= seen["mirror_lines"]
    assert {0, 1, 2, 3, 4} <= seen["right_angles"]
    assert {0, 1, 2} <= seen["parallel"]
    assert {0, 2, 3, 4} <= seen["equal_sides"]
    assert seen["regular"] == seen["convex"] == {True, False}


def test_the_inside_angles_add_up():
    # (n - 2) · 180 degrees for every simple polygon; standard, from memory.
    for polygon, grid in polygons(32, 300):
        assert sum(Reference(polygon, grid).angles) == pytest.approx(180 * (len(polygon) - 2))


def test_sides_and_angles_on_triangle_dots_are_as_sympy_finds_them():
    """Exactly: with the square root of three, and without rounding."""
    root = sympy.sqrt(3)
    for polygon, grid in (each for each in polygons(33, 40) if each[1] == "triangle"):
        placed = [sympy.Point(a + sympy.Rational(b, 2), b * root / 2) for a, b in polygon]
        many = len(placed)
        squares = [
            sympy.expand(sum(part**2 for part in placed[(at + 1) % many] - placed[at]))
            for at in range(many)
        ]
        right = sum(
            sympy.expand((placed[at] - placed[at - 1]).dot(placed[(at + 1) % many] - placed[at]))
            == 0
            for at in range(many)
        )
        found = properties_of(polygon, grid)
        most = max(squares.count(square) for square in squares)
        assert (len(found.equal[0]) if found.equal else 1) == most
        notched = set(range(many)) - set(found.tips)
        assert len(found.right) <= right <= len(found.right) + len(notched)


@pytest.mark.parametrize("sides", [3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 20])
def test_regular_polygons_are_regular_at_any_angle_and_size(sides):
    # Interior angles: 3 60, 4 90, 5 108, 6 120, 8 135, 9 140, 10 144, 12 150, 20 162 (computed).
    chance = Random(sides)  # noqa: S311 - nothing here is secret
    for _ in range(20):
        turn, radius = chance.uniform(0, math.tau), chance.uniform(200, 390)
        corners = [cmath.rect(radius, turn + math.tau * at / sides) for at in range(sides)]
        points = put_on_plain([(corner.real, corner.imag) for corner in corners])
        facts = shape_facts({"points": points, "closed": True}, "plain")
        assert facts["regular"] is True
        assert facts["convex"] is True
        assert facts["equal_sides"] == facts["mirror_lines"] == facts["sides"] == sides
        assert facts["right_angles"] == (4 if sides == 4 else 0)
        assert facts["parallel"] == (sides // 2 if sides % 2 == 0 else 0)


def test_the_regular_star_outline_is_what_published_numbers_say():
    # Outline of the star {5/2} of outer radius 1: ten sides, points of 36 and notches of 252
    # degrees, inner radius 0.381966, area 1.122570, convex hull 2.377641 (computed).
    radii = [1, 0.381966]
    corners = [cmath.rect(370 * radii[at % 2], math.pi * at / 5) for at in range(10)]
    ring = Polygon([(corner.real / 370, corner.imag / 370) for corner in corners])
    assert ring.area == pytest.approx(1.122570, abs=1e-5)
    assert ring.convex_hull.area == pytest.approx(2.377641, abs=1e-5)
    points = put_on_plain([(corner.real, corner.imag) for corner in corners])
    facts = shape_facts({"points": points, "closed": True}, "plain")
    assert (facts["sides"], facts["vertices"], facts["tips"]) == (10, 10, 5)
    assert (facts["mirror_lines"], facts["equal_sides"], facts["name"]) == (5, 10, "star")


def family(name, one, other, lean):
    """A quadrilateral of a kind, from lengths and a lean well away from what the slack allows."""
    if name == "rectangle":
        return [(0, 0), (one, 0), (one, other), (0, other)]
    if name == "rhombus":
        return [
            (0, 0),
            (one, 0),
            (one + one * math.cos(lean), one * math.sin(lean)),
            (one * math.cos(lean), one * math.sin(lean)),
        ]
    if name == "parallelogram":
        side = other * math.cos(lean), other * math.sin(lean)
        return [(0, 0), (one, 0), (one + side[0], side[1]), side]
    if name == "trapezoid":
        return [(0, 0), (one, 0), (0.7 * one, other), (0.1 * one, other)]
    return [(0, 0), (other / 2, one / 3), (0, one), (-other / 2, one / 3)]


@pytest.mark.parametrize("name", ["rectangle", "rhombus", "parallelogram", "trapezoid", "kite"])
def test_on_plain_paper_a_kind_is_known_at_any_angle_either_way_round(name):
    chance = Random(name)  # noqa: S311 - nothing here is secret
    for _ in range(60):
        one = chance.uniform(220, 300)
        # A kite of these has no angle within four degrees of a right one.
        other = one * (chance.uniform(0.72, 0.85) if name == "kite" else chance.uniform(0.5, 0.8))
        lean = math.radians(chance.uniform(40, 75))
        corners = [complex(*corner) for corner in family(name, one, other, lean)]
        middle = sum(corners) / 4
        spin = cmath.rect(1, chance.uniform(0, math.tau))
        moved = [(corner - middle) * spin for corner in corners]
        if chance.random() < 0.5:
            moved = [corner.conjugate() for corner in moved]
        shift = chance.randrange(4)
        moved = moved[shift:] + moved[:shift]
        points = put_on_plain([(corner.real, corner.imag) for corner in moved])
        facts = shape_facts({"points": points, "closed": True}, "plain")
        assert facts["name"] == name, points
        assert facts["mirror_lines"] == {"rectangle": 2, "rhombus": 2, "kite": 1}.get(name, 0)
        assert facts["right_angles"] == (4 if name == "rectangle" else 0)
        assert facts["parallel"] == {"trapezoid": 1, "kite": 0}.get(name, 2)


@pytest.mark.parametrize("grid", ["square", "triangle"])
@pytest.mark.parametrize("turn", range(6))
@given(data=st.data())
def test_turning_mirroring_and_scaling_change_no_fact(grid, turn, data):
    """Neither orientation nor size changes a name (Common Core K.G.A.2)."""
    points = data.draw(small_points(grid))
    change = list(TURNS[grid].values())[turn]
    moved = [change(*point) for point in points]
    one, other = (
        shape_facts({"points": put(each, grid), "closed": True}, grid) for each in (points, moved)
    )
    assert one == other


@pytest.mark.parametrize("grid", ["square", "triangle"])
@given(data=st.data())
def test_neither_the_first_vertex_nor_the_direction_changes_a_fact(grid, data):
    points = put(data.draw(small_points(grid)), grid)
    shift = data.draw(st.integers(0, len(points) - 1))
    turned = points[shift:] + points[:shift]
    facts = [
        shape_facts({"points": each, "closed": True}, grid)
        for each in (points, turned, turned[::-1])
    ]
    assert facts[0] == facts[1] == facts[2]


def plain_polygon(draw):
    """A polygon on plain paper that was nearly a special one, or by chance."""
    many = draw(st.integers(3, 7))
    radius = draw(st.lists(st.floats(150, 390), min_size=many, max_size=many))
    wobble = st.floats(-6, 6)
    regular = draw(st.booleans())
    corners = []
    for at in range(many):
        far = 350 if regular else radius[at]
        corner = cmath.rect(far, math.tau * at / many)
        corners.append((corner.real + draw(wobble), corner.imag + draw(wobble)))
    return put_on_plain(corners)


@given(st.data())
def test_on_plain_paper_facts_depend_neither_on_the_first_vertex_nor_on_the_direction(data):
    points = plain_polygon(data.draw)
    shift = data.draw(st.integers(0, len(points) - 1))
    turned = points[shift:] + points[:shift]
    mirrored = [[800 - across, down] for across, down in points]
    quarter = [[800 - down, across] for across, down in points]
    facts = [
        shape_facts({"points": each, "closed": True}, "plain")
        for each in (points, turned, turned[::-1], mirrored, quarter)
    ]
    assert all(each == facts[0] for each in facts)


@given(st.data(), st.floats(0, math.tau))
def test_on_plain_paper_turning_a_clear_shape_does_not_change_its_facts(data, turn):
    """Clear: no angle or ratio is between a half and one and a half of the slack."""
    points = plain_polygon(data.draw)
    polygon = outline_of({"points": points, "closed": True}, "plain").polygon
    assume(polygon is not None and len(polygon) == len(points))
    assume(clear(polygon))
    corners = [complex(across - 400, down - 400) * cmath.rect(1, turn) for across, down in points]
    moved = put_on_plain([(corner.real, corner.imag) for corner in corners])
    assume(all(0 < part < 800 for point in moved for part in point))
    assert shape_facts({"points": moved, "closed": True}, "plain") == shape_facts(
        {"points": points, "closed": True}, "plain"
    )


def clear(polygon):
    """Whether nothing about a polygon is near the limits of three degrees and one in twenty."""
    reference = Reference(polygon, "plain")
    apart = [abs(one - other) for one, other in combinations(reference.placed, 2)]
    off = [
        abs(math.degrees(cmath.phase(one / other)) % 90)
        for one, other in combinations(reference.steps, 2)
    ]
    ratios = [max(pair) / min(pair) - 1 for pair in combinations(apart, 2)]
    gaps = []
    if reference.many == 4:
        a, b, c, d = reference.placed
        gaps = [abs(a - b + c - d) / min(reference.lengths)]
    return not (
        any(1.5 < min(angle, 90 - angle) < 4.5 for angle in off)
        or any(0.025 < ratio < 0.075 for ratio in ratios)
        or any(0.025 < gap < 0.075 for gap in gaps)
    )


@given(st.data())
def test_on_plain_paper_facts_never_contradict_each_other(data):
    """What follows from a name in geometry holds among the facts, however crooked the shape."""
    many = data.draw(st.integers(3, 6))
    base = data.draw(st.sampled_from([family(name, 400, 300, 1.2) for name in KINDS[1:]]))
    wobble = st.integers(-30, 30)
    corners = (
        base
        if many == 4
        else [
            (300 * math.cos(math.tau * at / many), 300 * math.sin(math.tau * at / many))
            for at in range(many)
        ]
    )
    moved = [(x - 150 + data.draw(wobble), y - 150 + data.draw(wobble)) for x, y in corners]
    points = put_on_plain(moved)
    facts = shape_facts({"points": points, "closed": True}, "plain")
    if facts["fault"]:
        return
    sides = facts["sides"]
    assert sides % (facts["mirror_lines"] or 1) == 0 or facts["mirror_lines"] == 1
    assert facts["equal_sides"] <= sides
    if facts["regular"]:
        assert facts["equal_sides"] == facts["mirror_lines"] == sides
        assert facts["convex"]
    if sides == 3:
        assert facts["mirror_lines"] == {0: 0, 2: 1, 3: 3}[facts["equal_sides"]]
        assert facts["parallel"] == 0
        assert facts["right_angles"] <= (0 if facts["regular"] else 1)
    if sides == 4:
        check_quadrilateral(facts)


def check_quadrilateral(facts):
    """Each line is a theorem on quadrilaterals."""
    assert facts["square"] == (facts["rectangle"] and facts["rhombus"]) == facts["regular"]
    assert facts["rectangle"] == (facts["right_angles"] == 4)
    assert facts["right_angles"] != 3
    assert facts["rhombus"] == (facts["equal_sides"] == 4)
    assert facts["parallelogram"] == (facts["parallel"] == 2)
    assert facts["trapezoid"] == (facts["parallel"] >= 1)
    assert not (facts["rectangle"] or facts["rhombus"]) or facts["parallelogram"]
    lines = facts["mirror_lines"]
    assert lines == 4 or not facts["square"]
    assert lines == 2 or facts["rectangle"] == facts["rhombus"]
    if facts["parallelogram"] and not (facts["rectangle"] or facts["rhombus"]):
        assert (lines, facts["right_angles"], facts["equal_sides"]) == (0, 0, 2)
    if facts["kite"] and not facts["rhombus"]:
        assert (lines, facts["parallel"]) == (1, 0)
    assert facts["convex"] or facts["parallel"] == 0


def test_a_quadrilateral_is_only_what_it_is():
    for polygon, grid in polygons(34, 800):
        if len(polygon) == 4:
            facts = shape_facts({"points": [list(p) for p in polygon], "closed": True}, grid)
            check_quadrilateral(facts)
            kinds = kinds_of(properties_of(polygon, grid), 4)
            assert kinds == {kind: facts[kind] for kind in KINDS}


def test_mirror_lines_fold_the_corners_onto_each_other():
    for polygon, grid in polygons(35, 400):
        placed = [complex(*spot) for spot in spots([list(point) for point in polygon], grid)]
        many = len(placed)
        for line in properties_of(polygon, grid).mirrors:
            pairs = [(placed[at], placed[(line - at) % many]) for at in range(many)]
            middles = [(one + other) / 2 for one, other in pairs]
            ways = [one - other for one, other in pairs if one != other]
            assert all(abs((one / other).imag) < CLOSE for one, other in combinations(ways, 2))
            along = [spot - middles[0] for spot in middles if abs(spot - middles[0]) > CLOSE]
            assert all(abs((step / ways[0]).real) < CLOSE for step in along)
