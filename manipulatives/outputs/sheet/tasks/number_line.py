"""Number lines to draw hops on."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from manipulatives.drawings.shapes import Arc, Circle, Drawing, Line, Paint, Shape, Text
from manipulatives.outputs.sheet.layout.paper import Size
from manipulatives.outputs.sheet.pdf.letters import text_width
from manipulatives.outputs.sheet.tasks.printed import Manner

LONGEST = 170.0

_INK = Paint(stroke="ink", width=0.5)
_HOP = Paint(stroke="move", width=0.6, round=True)


def hops_drawing(needed: Sequence[int], shown: Sequence[int], step: int, manner: Manner) -> Drawing:
    """Return a number line for a count, with the hops so far.

    Args:
        needed: the numbers that the line must reach.
        shown: the numbers that were counted: hops lead from each to the next.
        step: the distance between its marks.
        manner: how the round is printed.
    """
    low = max(0, (min(needed) // step - 1) * step)
    high = (max(needed) // step + 1 + (max(needed) % step > 0)) * step
    width, size = min(manner.room, LONGEST), manner.size
    room = 0.5 * text_width(str(high), size.note) + 1
    base = 2.0 * size.box

    def place(number: int) -> float:
        return room + (number - low) / (high - low) * (width - 2 * room)

    shapes: list[Shape] = [Line((0, base), (width, base), _INK, "line")]
    for number in range(low, high + 1, step):
        x = place(number)
        shapes.append(Line((x, base - 1.2), (x, base + 1.8), _INK, "mark"))
        at = x, base + 2.4 + size.note
        shapes.append(Text(at, str(number), size.note, "middle", role="stop"))
    shapes += _hops([(place(one), str(one)) for one in shown], base, step, size)
    lines = 2.6 if any(one % step for one in needed) else 1.3
    return Drawing(width, base + 2.4 + lines * size.note, tuple(shapes))


def jumps_drawing(start: int, jumps: Sequence[int], manner: Manner, *, back: bool) -> Drawing:
    """Return an empty number line that begins at a number, with the jumps of a key.

    Args:
        start: the number that the first jump leaves from.
        jumps: the size of each jump; none for a line to draw on.
        manner: how the round is printed.
        back: whether the jumps go to smaller numbers.
    """
    size, width = manner.size, min(manner.room, LONGEST)
    base = 2.6 * size.box
    way = -1 if back else 1
    numbers = [start]
    for jump in jumps:
        numbers.append(numbers[-1] + way * jump)
    room = 0.5 * text_width("0000", size.note) + 1
    first = width - room if back else room
    apart = (width - 2 * room) / max(len(jumps), 1)
    shapes: list[Shape] = [Line((0, base), (width, base), _INK, "line")]
    places = [first + way * apart * at for at in range(len(numbers))]
    for x, number in zip(places, numbers, strict=True):
        shapes.append(Line((x, base - 1.2), (x, base + 1.8), _INK, "mark"))
        colour = "ink" if number == start else "move"
        at = x, base + 2.4 + size.note
        shapes.append(Text(at, str(number), size.note, "middle", colour, role="stop"))
    for (one, other), jump in zip(pairwise(places), jumps, strict=True):
        reach = abs(other - one) / 2
        middle, high = (one + other) / 2, min(reach, base - 1.5 * size.note)
        shapes.append(_hop(middle, reach, high, base))
        sign = "\u2212" if back else "+"
        above = middle, base - high - 0.4 * size.note
        shapes.append(Text(above, f"{sign}{jump}", size.note, "middle", "move", role="jump"))
    return Drawing(width, base + 2.4 + 1.3 * size.note, tuple(shapes))


def _hops(stops: Sequence[tuple[float, str]], base: float, step: int, size: Size) -> list[Shape]:
    shapes: list[Shape] = []
    for (one, _), (other, _) in pairwise(stops):
        reach = abs(other - one) / 2
        high = min(reach, base - 1.8 * size.note)
        shapes.append(_hop((one + other) / 2, reach, high, base))
    for x, number in stops:
        shapes.append(Circle((x, base), 0.9, Paint(fill="move"), "at"))
        if int(number) % step:
            # A number between the marks is printed on a second line.
            at = x, base + 2.4 + 2.3 * size.note
            shapes.append(Text(at, number, size.note, "middle", "move", role="counted"))
    return shapes


def _hop(middle: float, reach: float, high: float, base: float) -> Arc:
    radius = (reach**2 + high**2) / (2 * high)
    half = math.degrees(math.asin(min(1.0, reach / radius)))
    return Arc((middle, base - high + radius), radius, -half, 2 * half, _HOP, role="hop")
