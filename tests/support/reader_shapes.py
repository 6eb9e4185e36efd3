# ruff: noqa: D102 - each method is named after the sentence that it understands
"""Reads the worked steps of shape tasks as a pupil would who counts, folds and measures.

An opinion apart from the kit's: it looks at the shape on the paper with `shape_oracle`. Where a
step says what is not so, it raises AssertionError.
"""

from __future__ import annotations

import re

from support import shape_oracle as oracle

CURVED = {"circle": (0, 1), "half circle": (1, 1), "quarter circle": (2, 1)}
PARTS = {
    "us": {2: "halves", 3: "thirds", 4: "fourths"},
    "uk": {2: "halves", 3: "thirds", 4: "quarters"},
}


def numbers(text):
    return [int(number) for number in re.findall(r"\d+", text)]


class ShapeReader:
    """Follows the steps of one task about a shape."""

    def __init__(self, start, *, drawing=False):
        self.shape, self.grid = start["shape"], start["grid"]
        self.vocabulary = start["vocabulary"]
        self.drawing = drawing
        self.side = max(len(self.shape["points"]) - 1, 0)
        self.cut_number = 0

    def follow(self, say, chant, show):
        self.before, self.shape = self.shape, show.get("shape", self.shape)
        self.chant = chant
        for sentence in re.split(r"(?<=\.) (?=[A-Z0-9])", say):
            self.read(sentence)

    def read(self, sentence):
        for pattern, handler in FORMS:
            match = re.fullmatch(pattern, sentence)
            if match:
                handler(self, *match.groups())
                return
        raise AssertionError(f"What does {sentence!r} mean?")

    @property
    def corners(self):
        if self.shape["closed"]:
            return len(oracle.corners_of(self.shape, self.grid))
        # The last side goes on to a gap: it is there, though it does not reach the first point.
        return len(self.shape["points"]) - 1

    def counts_sides(self, many):
        assert int(many) == self.corners
        assert numbers(self.chant) == list(range(1, int(many) + 1))

    def is_open(self):
        assert not self.shape["closed"]

    def right_angles(self, many, _):
        assert int(many) == oracle.right_angles(self.shape, self.grid)

    def equal_sides(self, many):
        long = oracle.lengths(self.shape, self.grid)
        assert int(many) == max(long.count(one) for one in long) > 1

    def no_equal_sides(self):
        long = oracle.lengths(self.shape, self.grid)
        assert len(set(long)) == len(long)

    def parallel(self, many):
        assert int(many) == oracle.parallel_pairs(self.shape, self.grid)

    def is_called(self, name):
        assert self._name(name) in oracle.names(self.shape, self.grid)

    def is_not_called(self, name):
        assert self._name(name) not in oracle.names(self.shape, self.grid)

    def _name(self, name):
        if name == "trapezium":
            assert self.vocabulary == "uk"
            return "trapezoid"
        assert (name, self.vocabulary) != ("trapezoid", "uk")
        return name

    def straight(self, many):
        assert int(many) == CURVED[self.shape["curve"]][0]

    def curved(self, many):
        assert int(many) == CURVED[self.shape["curve"]][1]

    def begins(self, _):
        assert numbers(self.chant) == list(range(1, self.corners + 1))

    def goes_around(self):
        assert self.shape["closed"]

    def point_on_side(self):
        assert len(self.shape["points"]) > self.corners

    def tips_and_notches(self, tips, notches, total):
        found = oracle.tips(self.shape, self.grid)
        assert (int(tips), int(notches)) == (found, self.corners - found)
        assert int(total) == self.corners == int(tips) + int(notches)

    def has(self, many, _):
        assert int(many) == self.corners

    def has_both(self, sides, vertices):
        assert int(sides) == int(vertices) == self.corners
        assert oracle.is_simple(self.shape)

    def tries(self, many):
        assert int(many) == self.corners
        assert numbers(self.chant) == list(range(1, self.corners + 1))

    def fits(self, many, of):
        assert int(of) == self.corners
        assert int(many) == oracle.right_angles(self.shape, self.grid)

    def only_said(self):
        pass

    def matches(self, negation):
        assert oracle.has_vertical_line(self.shape, self.grid) == (negation is None)

    def lines(self, many):
        assert int(many) == oracle.mirror_lines(self.shape, self.grid)

    def begins_drawing(self):
        assert len(self.shape["points"]) == 1

    def draws(self, side, ways):
        self.side += 1
        assert int(side) == self.side
        (a, b), (c, d) = self.before["points"][-1], self.shape["points"][-1]
        assert self.shape["points"][:-1] == self.before["points"]
        across, down = c - a, d - b
        moved = [0, 0]
        for part in ways.split(", "):
            many, _, way = part.partition(" ")
            one = WAYS[self.grid][way]
            moved = [moved[0] + int(many) * one[0], moved[1] + int(many) * one[1]]
        assert moved == [across, down]

    def closes(self, side):
        self.side += 1
        assert int(side) == self.side
        assert self.shape["closed"]
        assert not self.before["closed"]
        assert self.shape["points"] == self.before["points"]

    def shares(self, many):
        assert int(many) == len(oracle.areas(self.shape))
        assert numbers(self.chant) == list(range(1, int(many) + 1))

    def laid_match(self, negation):
        found = oracle.areas(self.shape)
        assert (max(found) - min(found) < 1e-2) == (negation is None)

    def half_squares(self, said):
        found = sorted(round(2 * area, 6) for area in oracle.areas(self.shape))
        assert sorted(numbers(said)) == found

    def equal(self, parts):
        found = oracle.areas(self.shape)
        assert max(found) - min(found) < 1e-2
        assert PARTS[self.vocabulary][len(found)] == parts

    def unequal(self, parts):
        found = oracle.areas(self.shape)
        assert max(found) - min(found) > 0.05
        assert PARTS[self.vocabulary][len(found)] == parts

    def cuts(self, number):
        self.cut_number += 1
        assert int(number) == self.cut_number == len(self.shape["cuts"])

    def equal_shares(self, many, parts):
        self.equal(parts)
        assert int(many) == len(oracle.areas(self.shape))

    def row(self, columns):
        assert (int(columns), self.rows) == self.columns_and_rows()

    @property
    def rows(self):
        return self.columns_and_rows()[1]

    def columns_and_rows(self):
        """The shares that lie at the top, and those that lie at the left."""
        areas = oracle.areas(self.shape)
        across = [x for x, _ in self.shape["points"]]
        side = areas[0] ** 0.5
        assert max(areas) - min(areas) < 1e-9
        columns = (max(across) - min(across)) / side
        assert columns == round(columns)
        return round(columns), round(len(areas) / columns)

    def row_by_row(self, said):
        columns, rows = self.columns_and_rows()
        assert numbers(said) == [columns * row for row in range(1, rows + 1)]

    def rows_together(self, parts, total):
        columns, rows = self.columns_and_rows()
        assert numbers(parts) == [columns] * rows
        assert sum(numbers(parts)) == int(total) == len(oracle.areas(self.shape))


WAYS = {
    "square": {"right": (1, 0), "left": (-1, 0), "down": (0, 1), "up": (0, -1)},
    "triangle": {
        "right": (1, 0), "left": (-1, 0), "down right": (0, 1), "up left": (0, -1),
        "down left": (-1, 1), "up right": (1, -1),
    },
}  # fmt: skip
FORMS = [
    (r"Count the sides: there are (\d+)\.", ShapeReader.counts_sides),
    (r"The shape is open\.", ShapeReader.is_open),
    (r"It has (\d+) (right angles?)\.", ShapeReader.right_angles),
    (r"(\d+) sides? (?:is|are) equally long\.", ShapeReader.equal_sides),
    (r"No sides are equally long\.", ShapeReader.no_equal_sides),
    (r"It has (\d+) pairs? of parallel sides\.", ShapeReader.parallel),
    (r"It is not an? (.+)\.", ShapeReader.is_not_called),
    (r"It is an? (.+)\.", ShapeReader.is_called),
    (r"Straight sides: (\d+)\.", ShapeReader.straight),
    (r"Curved sides: (\d+)\.", ShapeReader.curved),
    (r"Begin at one (side|vertex)\.", ShapeReader.begins),
    (r"Go all the way around\.", ShapeReader.goes_around),
    (r"A point on a side leaves it one side\.", ShapeReader.point_on_side),
    (r"A point on a straight side is no vertex\.", ShapeReader.point_on_side),
    (r"Points and notches: (\d+) \+ (\d+) = (\d+)\.", ShapeReader.tips_and_notches),
    (r"It has (\d+) (sides|vertices)\.", ShapeReader.has),
    (r"It has (\d+) sides and (\d+) vertices\.", ShapeReader.has_both),
    (r"Try all (\d+) corners, one by one\.", ShapeReader.tries),
    (r"A sheet's corner fits (\d+) of (\d+) corners\.", ShapeReader.fits),
    (r"Follow the edge with a finger\.", ShapeReader.only_said),
    (r"Fold it on a vertical line in the middle\.", ShapeReader.only_said),
    (r"Fold it every way, and see whether the parts match\.", ShapeReader.only_said),
    (r"The two parts (do not )?match\.", ShapeReader.matches),
    (r"Mirror lines: (\d+)\.", ShapeReader.lines),
    (r"Begin here, with the first point\.", ShapeReader.begins_drawing),
    (r"Side (\d+): back to the first point\.", ShapeReader.closes),
    (r"Side (\d+): (.+)\.", ShapeReader.draws),
    (r"There are (\d+) shares\.", ShapeReader.shares),
    (r"Laid on each other, they (do not )?match\.", ShapeReader.laid_match),
    (r"Count half squares: (.+)\.", ShapeReader.half_squares),
    (r"Equal shares: (\w+)\.", ShapeReader.equal),
    (r"Not equal: these are no (\w+)\.", ShapeReader.unequal),
    (r"Cut (\d+), from edge to edge\.", ShapeReader.cuts),
    (r"(\d+) equal shares: (\w+)\.", ShapeReader.equal_shares),
    (r"Each row has (\d+) squares\.", ShapeReader.row),
    (r"Count row by row: (.+)\.", ShapeReader.row_by_row),
    (r"(\d+(?: \+ \d+)+) = (\d+)\.", ShapeReader.rows_together),
]
