"""Reads printed tasks and their keys, and works out by other means what the key should say.

Everything is read from the shapes that are printed: digits in boxes, coins, blocks, corners of
shapes. What is asked is read from the words. Nothing of the kit's own reckoning is used.
"""

from __future__ import annotations

import math
import re
from collections import Counter
from itertools import pairwise

from num2words import num2words
from shapely import LineString, Polygon, unary_union
from shapely.ops import polygonize

from manipulatives.drawings.shapes import Box, Text
from support.oracles.stories import Story
from support.paper import box_of, text_in, texts, with_role

WORTH = {"pence": 1, "cents": 1, "pounds": 100, "dollars": 100, "euros": 100}


def number_said(words):
    """The number from 0 to 1000 that words say."""
    wanted = words.replace(" and ", " ").replace("-", " ")
    for number in range(1001):
        if num2words(number).replace(" and ", " ").replace("-", " ") == wanted:
            return number
    raise AssertionError(words)


def value(text):
    """What a sum comes to, added and taken away from left to right."""
    total, sign = 0, 1
    for part in re.findall(r"\d+|[-+\u2212]", text):
        if part.isdigit():
            total += sign * int(part)
        else:
            sign = 1 if part == "+" else -1
    return total


# What a key says


def chosen(key):
    """The text of the choice that is marked, or of the answer in a ring."""
    [one] = [s for s in with_role(key, "choice") if s.paint.stroke == "move"]
    return text_in(key, one)


def boxed(key):
    """The digits in all boxes, from left to right."""
    return "".join(text.text for text in texts(key, "answer"))


def line_of(key):
    """Everything of a sum in one line, with the key's digits."""
    parts = sorted(texts(key, "said", "answer"), key=lambda text: box_of(text)[0])
    said, before = "", None
    for part in parts:
        joined = before is not None and before.role == part.role == "answer"
        said += part.text if joined or not said else f" {part.text}"
        before = part
    return said


def cells(drawing):
    """What stands in the cells of a row, None for nothing."""
    row = sorted(with_role(drawing, "cell"), key=lambda cell: cell.corner[0])
    return [int(text_in(drawing, cell)) if text_in(drawing, cell) else None for cell in row]


def blocks_on(drawing):
    """How many blocks of each place there are."""
    names = ("hundreds", "tens", "ones", "thousands")
    return Counter(s.role for s in drawing.shapes if isinstance(s, Box) and s.role in names)


def worth_of(blocks):
    worth = {"ones": 1, "tens": 10, "hundreds": 100, "thousands": 1000}
    return sum(worth[place] * count for place, count in blocks.items())


def coins_on(drawing):
    """The keys of the coins, from top to bottom and from left to right."""
    found = [s for s in drawing.shapes if s.role.startswith("coin ")]
    return [s.role.removeprefix("coin ") for s in found]


def corners(drawing):
    """The corners of the shape, without points on straight sides."""
    [outline] = with_role(drawing, "outline")
    points = list(outline.points)
    kept = []
    for at, point in enumerate(points):
        before, after = points[at - 1], points[(at + 1) % len(points)]
        cross = (point[0] - before[0]) * (after[1] - point[1]) - (point[1] - before[1]) * (
            after[0] - point[0]
        )
        lengths = math.dist(before, point) * math.dist(point, after)
        if abs(cross) > 0.001 * lengths:
            kept.append(point)
    return kept


def angles(points):
    """The angles inside a shape, in degrees."""
    turning = sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise([*points, points[0]]))
    found = []
    for at, point in enumerate(points):
        before, after = points[at - 1], points[(at + 1) % len(points)]
        one = math.atan2(before[1] - point[1], before[0] - point[0])
        other = math.atan2(after[1] - point[1], after[0] - point[0])
        turn = math.degrees(one - other) % 360
        found.append(turn if turning > 0 else 360 - turn)
    return found


def sides(points):
    return [math.dist(a, b) for a, b in pairwise([*points, points[0]])]


def alike(lengths):
    return max(lengths) - min(lengths) < 0.01 * max(lengths)


def mirror_lines(points):
    """How many lines fold a shape onto itself, and whether an upright one is among them."""
    middle = [sum(p[at] for p in points) / len(points) for at in (0, 1)]
    halves = [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in pairwise([*points, points[0]])]
    shape = Polygon(points)
    lines: list[float] = []
    for x, y in [*points, *halves]:
        if math.dist((x, y), middle) > 0.01:
            line = math.degrees(math.atan2(y - middle[1], x - middle[0])) % 180
            if not any(abs((line - other + 90) % 180 - 90) < 0.1 for other in lines):
                lines.append(line)
    fitting = []
    for line in lines:
        turn = math.radians(2 * line)
        folded = Polygon([
            (
                middle[0] + (x - middle[0]) * math.cos(turn) + (y - middle[1]) * math.sin(turn),
                middle[1] + (x - middle[0]) * math.sin(turn) - (y - middle[1]) * math.cos(turn),
            )
            for x, y in points
        ])  # fmt: skip
        if shape.symmetric_difference(folded).area < 0.01 * shape.area:
            fitting.append(line)
    upright = any(abs(line - 90) < 0.1 for line in fitting)
    return len(fitting), upright


def shares(drawing):
    """The areas of the pieces that a shape is cut into."""
    [outline] = with_role(drawing, "outline")
    rim = LineString([*outline.points, outline.points[0]])
    cuts = [
        LineString([_longer(c.start, c.end), _longer(c.end, c.start)])
        for c in with_role(drawing, "cut")
    ]
    whole = Polygon(outline.points)
    pieces = polygonize(unary_union([rim, *cuts]))
    return [piece.area for piece in pieces if whole.contains(piece.representative_point())]


def _longer(end, other):
    """An end of a cut, a little outward, so that it meets a rim of many short sides."""
    return tuple(e + 0.02 * (e - o) for e, o in zip(end, other, strict=True))


# Names by what makes them; the wider meaning of each, as both curricula teach it


def is_called(name, points):
    """Whether a shape with straight sides has a name."""
    count, turns, lengths = len(points), angles(points), sides(points)
    four = count == 4
    right = four and all(abs(turn - 90) < 0.1 for turn in turns)
    equal = four and alike(lengths)
    ways = [(b[0] - a[0], b[1] - a[1]) for a, b in pairwise([*points, points[0]])] if four else []
    level = [
        abs(ways[at][0] * ways[at + 2][1] - ways[at][1] * ways[at + 2][0])
        < 0.001 * lengths[at] * lengths[at + 2]
        for at in (0, 1)
    ] if four else [False, False]  # fmt: skip
    kite = four and any(
        alike([lengths[at], lengths[at - 1]]) and alike([lengths[at - 2], lengths[at - 3]])
        for at in (0, 1)
    )
    numbered = {3: "triangle", 4: "quadrilateral", 5: "pentagon", 6: "hexagon", 7: "heptagon",
                8: "octagon", 9: "nonagon", 10: "decagon", 12: "dodecagon"}  # fmt: skip
    facts = {
        "square": right and equal, "rectangle": right, "rhombus": equal,
        "parallelogram": all(level), "trapezoid": any(level), "trapezium": any(level), "kite": kite,
    }  # fmt: skip
    return facts[name] if name in facts else numbered.get(count) == name


def straight_sides(drawing):
    """How many sides are much longer than the pieces that a curve is drawn of."""
    [outline] = with_role(drawing, "outline")
    lengths = sides(outline.points)
    return sum(length > 3 * sorted(lengths)[len(lengths) // 2] for length in lengths)


def story_answer(text):
    return Story(text).answer


def sum_on_squares(key):
    """The numbers of a written sum, its sign and its answer, row by row."""
    rows: dict[float, list[Text]] = {}
    for text in texts(key, "digit", "sign", "answer"):
        rows.setdefault(round(text.at[1], 1), []).append(text)
    signs = [t.text for row in rows.values() for t in row if t.role == "sign"]
    numbers, answer = [], 0
    for row in rows.values():
        digits = [t.text for t in sorted(row, key=lambda t: t.at[0]) if t.role == "digit"]
        if digits:
            # 40 and 7 beside each other are 47, and so are 4 and 7.
            long = any(len(digit) > 1 for digit in digits)
            numbers.append(sum(map(int, digits)) if long else int("".join(digits)))
        answers = [t.text for t in sorted(row, key=lambda t: t.at[0]) if t.role == "answer"]
        if answers:
            answer = int("".join(answers))
    return numbers, signs[0], answer
