"""Works out the steps and mistakes of shape tasks again: counted, folded and measured afresh.

An opinion apart from the kit's: it looks at the shape on the paper with `geometry`. Where a number
is not so, it raises AssertionError.
"""

from __future__ import annotations

import math
import re

from support.oracles import geometry
from support.sentences import numbers_said

CURVED = {"circle": (0, 1), "half circle": (1, 1), "quarter circle": (2, 1)}
PARTS = {
    "us": {2: "halves", 3: "thirds", 4: "fourths"},
    "uk": {2: "halves", 3: "thirds", 4: "quarters"},
}
WAYS = {
    "square": {"right": (1, 0), "left": (-1, 0), "down": (0, 1), "up": (0, -1)},
    "triangle": {
        "right": (1, 0), "left": (-1, 0), "down right": (0, 1), "up left": (0, -1),
        "down left": (-1, 1), "up right": (1, -1),
    },
}  # fmt: skip
# What a sentence about each of these says beside its numbers.
SAYS = {
    "sides": r"sides?\b",
    "vertices": r"vert(ices|ex)\b",
    "corners": r"corners\b",
    "shares": r"shares\b",
    "squares": r"row by row",
    "squares in a row": r"row has .* squares",
    "right angles": r"right angles?\b",
    "equal sides": r"equally long",
    "parallel pairs": r"parallel",
    "mirror lines": r"Mirror lines",
}


def numbers(text):
    return [int(number) for number in re.findall(r"\d+", text)]


def most_alike(values):
    """How many of some values are the same, at most; 0 when all differ."""
    most = max(values.count(one) for one in values)
    return most if most > 1 else 0


class ShapeOracle:
    """Follows the steps of one task about a shape."""

    def __init__(self, start):
        self.shape, self.grid = start["shape"], start["grid"]
        self.vocabulary = start["vocabulary"]
        self.side = max(len(self.shape["points"]) - 1, 0)
        self.cuts = 0

    def follow(self, step):
        """Check one step."""
        self.before, self.shape = self.shape, step.show.get("shape", self.shape)
        self.step, self.said = step, numbers_said(step.say)
        if not step.numbers:
            assert "old it" in step.say or "finger" in step.say
            assert self.said - {1} == set()
            return
        values = dict(step.numbers)
        act = values.pop("act").replace(" ", "_")
        getattr(self, f"_{act}")(**values)

    @property
    def corners(self):
        """How many corners there are."""
        if self.shape["closed"]:
            return len(geometry.corners_of(self.shape, self.grid))
        # The last side goes on to a gap: it is there, though it does not reach the first point.
        return len(self.shape["points"]) - 1

    def many_of(self, what):
        """How many there are of something, found afresh."""
        found = {
            **dict.fromkeys(("sides", "vertices", "corners"), lambda: self.corners),
            "right angles": lambda: geometry.right_angles(self.shape, self.grid),
            "equal sides": lambda: most_alike(geometry.lengths(self.shape, self.grid)),
            "parallel pairs": lambda: geometry.parallel_pairs(self.shape, self.grid),
            "mirror lines": lambda: geometry.mirror_lines(self.shape, self.grid),
            "shares": lambda: len(geometry.areas(self.shape)),
            "squares": lambda: math.prod(self.columns_and_rows()),
            "squares in a row": lambda: self.columns_and_rows()[0],
        }
        return found[what]()

    def _count(self, what, by, to, counted, **begin):
        assert begin == {"from": 0}
        assert to == self.many_of(what)
        assert by == (self.columns_and_rows()[0] if what == "squares" else 1)
        assert counted == list(range(by, to + 1, by))
        assert numbers(self.step.chant) == counted
        assert re.search(SAYS[what], self.step.say) or "Begin at one" in self.step.say
        # "Begin at one side" says that it is one; the others say how many there are, or all.
        assert self.said <= {*counted} | {1}
        if "Begin at one" not in self.step.say:
            assert self.said - {1} <= ({*counted} if what == "squares" else {to, 1})
            assert to in self.said

    def _find(self, what, many, **more):
        assert many == self.many_of(what)
        assert re.search(SAYS[what], self.step.say)
        for name, value in more.items():
            assert value == self.many_of(name)
            assert re.search(SAYS[name], self.step.say)
        assert self.said == ({many} if many or "No sides" not in self.step.say else set()) | {
            *more.values()
        }
        assert ("No sides" in self.step.say) == (what == "equal sides" and many == 0)

    def _sides(self, straight, curved):
        assert (straight, curved) == CURVED[self.shape["curve"]]
        assert self.step.say == f"Straight sides: {straight}. Curved sides: {curved}."

    def _add(self, terms, total):
        assert sum(terms) == total
        assert numbers(self.step.say) == [*terms, total]
        if "notches" in self.step.say:
            tips = geometry.tips(self.shape, self.grid)
            assert terms == [tips, self.corners - tips]
        else:
            columns, rows = self.columns_and_rows()
            assert terms == [columns] * rows
            assert total == len(geometry.areas(self.shape))

    def _fit(self, fits, of):
        assert fits == geometry.right_angles(self.shape, self.grid)
        assert of == self.corners
        assert numbers(self.step.say) == [fits, of]

    def _name(self, name, **verdict):
        plain = "trapezoid" if name == "trapezium" else name
        assert (name == "trapezium") <= (self.vocabulary == "uk")
        assert (name == "trapezoid") <= (self.vocabulary == "us")
        true = plain in geometry.names(self.shape, self.grid)
        assert verdict == {"is": true}
        assert self.step.say.endswith(f" {name}.")
        assert (" not " in self.step.say) == (not true)

    def _match(self, match):
        assert (" not " in self.step.say) == (not match)
        if "Laid" in self.step.say:
            found = geometry.areas(self.shape)
            assert match == (max(found) - min(found) < 1e-2)
        else:
            assert match == geometry.has_vertical_line(self.shape, self.grid)

    def _open(self):
        assert not self.shape["closed"]
        assert "open" in self.step.say

    def _mid_side(self):
        assert len(self.shape["points"]) > self.corners

    def _draw(self, side, step):
        if side == 0:
            assert len(self.shape["points"]) == 1
            assert step is None
            return
        self.side += 1
        assert side == self.side
        assert self.step.say.startswith(f"Side {side}: ")
        if step is None:
            assert self.shape["closed"]
            assert not self.before["closed"]
            assert self.shape["points"] == self.before["points"]
            return
        (a, b), (c, d) = self.before["points"][-1], self.shape["points"][-1]
        assert self.shape["points"][:-1] == self.before["points"]
        assert step == [c - a, d - b]
        moved = [0, 0]
        for part in self.step.say.partition(": ")[2].rstrip(".").split(", "):
            many, _, way = part.partition(" ")
            one = WAYS[self.grid][way]
            moved = [moved[0] + int(many) * one[0], moved[1] + int(many) * one[1]]
        assert moved == step

    def _cut(self, number):
        self.cuts += 1
        assert number == self.cuts == len(self.shape["cuts"])
        assert self.said == {number}

    def _compare(self, areas):
        found = sorted(round(2 * area, 6) for area in geometry.areas(self.shape))
        assert sorted(areas) == found
        assert numbers(self.step.say) == areas

    def _share(self, shares, equal):
        found = geometry.areas(self.shape)
        assert shares == len(found)
        assert equal == (max(found) - min(found) < 1e-2)
        assert ("Not equal" in self.step.say) == (not equal)
        assert PARTS[self.vocabulary][shares] in self.step.say
        assert self.said <= {shares}

    def columns_and_rows(self):
        """The squares that lie at the top, and those that lie at the left."""
        areas = geometry.areas(self.shape)
        across = [x for x, _ in self.shape["points"]]
        side = areas[0] ** 0.5
        assert max(areas) - min(areas) < 1e-9
        columns = (max(across) - min(across)) / side
        assert columns == round(columns)
        return round(columns), round(len(areas) / columns)


def upright_angles(shape, grid):
    """How many right angles have a level and an upright side."""
    spots = geometry.places(shape, grid)
    many = 0
    for before, here, after in zip([spots[-1], *spots[:-1]], spots, [*spots[1:], spots[0]],
                                   strict=True):  # fmt: skip
        flat = [abs(one[1] - here[1]) < 1e-6 for one in (before, after)]
        steep = [abs(one[0] - here[0]) < 1e-6 for one in (before, after)]
        many += (flat[0] and steep[1]) or (steep[0] and flat[1])
    return many


def wrong_of(does, shape, grid):
    """Run the procedure of a mistake on a shape and return what comes out."""
    given = {key: value for key, value in does.items() if key not in {"act", "wrong"}}
    if does["act"] == "name":
        return _wrong_name(shape, grid, **given)
    what = given.pop("what")
    if what == "squares":
        return _wrong_squares(**given)
    if "curve" in shape:
        straight, curved = CURVED[shape["curve"]]
        corners = straight
    else:
        corners, curved = len(geometry.corners_of(shape, grid)), 0
    if given.pop("start_counted", False):
        return corners + 1
    if given.pop("left_out", 0):
        return corners - 1
    takes = given.pop("takes")
    assert not given
    return {
        "every corner": lambda: corners,
        "upright corners": lambda: upright_angles(shape, grid),
        "turns": lambda: 2,
        "sides": lambda: corners,
        "vertical lines": lambda: int(geometry.has_vertical_line(shape, grid)),
        "tips": lambda: geometry.tips(shape, grid),
        "points": lambda: len(shape["points"]),
        "curved sides too": lambda: corners + curved,
    }[takes]()


def _wrong_name(shape, grid, *, four=None, round=None, part=None, sides=0):  # noqa: A002 - as data
    if four:
        return four
    if round:
        return round
    if part == "other":
        return {"half circle": "quarter circle", "quarter circle": "half circle"}[shape["curve"]]
    many = len(geometry.corners_of(shape, grid)) + sides
    return {3: "triangle", 5: "pentagon", 6: "hexagon", 7: "heptagon", 8: "octagon"}[many]


def _wrong_squares(rows, columns, *, sign="*", takes=None):
    if sign == "+":
        return rows + columns
    every = [(row, column) for row in range(rows) for column in range(columns)]
    if takes == "one row":
        return len([spot for spot in every if spot[0] == 0])
    assert takes == "the edge"
    return len([1 for row, column in every if row in (0, rows - 1) or column in (0, columns - 1)])
