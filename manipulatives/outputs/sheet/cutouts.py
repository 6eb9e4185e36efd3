"""Paper coins, blocks, and a clock face with hands to pin on, to cut out."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path

from manipulatives.drawings.blocks import block_shapes
from manipulatives.drawings.clock import FACE, clock_drawing
from manipulatives.drawings.coin_face import coin_face
from manipulatives.drawings.shapes import Circle, Drawing, Paint, Polygon, Shape
from manipulatives.lessons.catalogue.skills import skill_called
from manipulatives.lessons.lesson import Lesson
from manipulatives.lessons.problem import in_file
from manipulatives.lessons.settings import ClassSettings, settled
from manipulatives.maths.money.coin import Coin
from manipulatives.maths.money.coins import Currency, currency
from manipulatives.maths.time.dial import dial_at
from manipulatives.outputs.sheet.files import lesson_at
from manipulatives.outputs.sheet.layout.frame import foot, head
from manipulatives.outputs.sheet.layout.lines import paragraph
from manipulatives.outputs.sheet.layout.pages import Block, laid_out
from manipulatives.outputs.sheet.layout.paper import MARGIN, STANDARD, Paper, paper_called
from manipulatives.outputs.sheet.pdf.document import pdf_of
from manipulatives.outputs.sheet.pdf.letters import printable
from manipulatives.outputs.sheet.sheet import LANGUAGES

APART = 3.0
"""Between things that are cut out, in millimetres."""

ONE = 9.0
"""The side of a one in millimetres; a ten is ten times as long, a hundred as wide and as high."""

CLOCK = 150.0
"""How wide the clock face is, in millimetres."""

_MOST_ROWS = 3
_HAND = 9.0
_PIN = 1.2


def cutouts_of_file(path: str | Path, *, paper: str | None = None) -> bytes:
    """Return the cut-outs of a lesson file or a notebook, as a PDF.

    Args:
        path: ends in .toml or .ipynb.
        paper: "a4" or "letter", None for that of the lesson or its settings.

    Raises:
        LessonProblem: the file cannot be read, or there is no such paper.

    Example:
        >>> cutouts_of_file("notebooks/market-clock.toml")[:4]
        b'%PDF'
    """
    lesson, settings = lesson_at(path)
    with in_file(str(path)):
        return cutouts_of(lesson, settings, paper=paper)


def cutouts_of(lesson: Lesson, settings: ClassSettings, *, paper: str | None = None) -> bytes:
    """Return the cut-outs of a lesson as a PDF: those that its rounds need, or all of them.

    Coins have their true size. Ten ones are as long as a ten, ten tens as wide as a hundred.

    Args:
        lesson: the lesson.
        settings: of the class, for what the lesson leaves unset.
        paper: "a4" or "letter", None for that of the lesson or its settings.

    Raises:
        LessonProblem: there is no such paper.

    Example:
        >>> cutouts_of(Lesson("Monday", seed=7), ClassSettings())[:4]
        b'%PDF'
    """
    complete = settled(lesson, settings)
    pages = cutout_pages(complete, paper=paper)
    title = f"{printable(complete.title)}: to cut out"
    return pdf_of(pages, title=title, language=LANGUAGES[str(complete.vocabulary)])


def cutout_pages(complete: Lesson, *, paper: str | None = None) -> list[Drawing]:
    """Return the pages of cut-outs as drawings.

    Args:
        complete: the lesson, with nothing left unset.
        paper: "a4" or "letter", None for that of the lesson.

    Raises:
        LessonProblem: there is no such paper.
    """
    on = paper_called(paper or str(complete.paper))
    money = currency(complete.currency)
    kinds = {skill_called(each.skill).manipulative for each in complete.rounds}
    wanted = [kind for kind in _CUT_OUT if kind in kinds] or list(_CUT_OUT)
    pages: list[Drawing] = []
    for kind in wanted:
        pages += _CUT_OUT[kind](on, money)
    return pages


def _pages(title: str, instructions: str, rows: Iterable[Drawing], on: Paper) -> list[Drawing]:
    text = paragraph(instructions, STANDARD.text, on.inside)
    top = head(title, STANDARD, on.inside, names=False)
    blocks = [
        Block(top, keep_with_next=True),
        Block(text, before=STANDARD.text / 2, keep_with_next=True),
        *(Block(row, before=APART + (at == 0) * APART) for at, row in enumerate(rows)),
    ]
    return laid_out(blocks, on, lambda page, of: foot(title, page, of, STANDARD, on.inside))


def _room(title: str, instructions: str, on: Paper) -> float:
    """Return the height below the instructions on one page."""
    foot_high = foot(title, 1, 1, STANDARD, on.inside).height
    free = on.height - 2 * MARGIN - foot_high
    return free - _above(title, instructions, on) - 2 * APART


def _above(title: str, instructions: str, on: Paper) -> float:
    top = head(title, STANDARD, on.inside, names=False).height
    return top + STANDARD.text / 2 + paragraph(instructions, STANDARD.text, on.inside).height


def _coins(on: Paper, money: Currency) -> list[Drawing]:
    """Return a row of every usual coin, and more rows of the small ones while there is room."""
    title, instructions = "Coins to cut out", "Cut along the edge of each coin."
    usual = [money.coin(key) for key in money.usual]
    room = _room(title, instructions, on) + APART
    rows = {coin.key: 1 for coin in usual}
    used = sum(coin.diameter + APART for coin in usual)
    for _ in range(_MOST_ROWS - 1):
        for coin in reversed(usual):
            if used + coin.diameter + APART <= room:
                rows[coin.key] += 1
                used += coin.diameter + APART
    drawn = [_row_of(coin, money, on) for coin in usual for _ in range(rows[coin.key])]
    return _pages(title, instructions, drawn, on)


def _row_of(coin: Coin, money: Currency, on: Paper) -> Drawing:
    pitch, radius = coin.diameter + APART, coin.diameter / 2
    shapes: list[Shape] = []
    for place in range(int((on.inside + APART) / pitch)):
        middle = place * pitch + radius, radius
        shapes += coin_face(
            coin, money, middle, worth=True, name=True, scale=1.0, least=STANDARD.note
        )
    return Drawing(on.inside, coin.diameter, tuple(shapes))


def _blocks(on: Paper, _: Currency) -> list[Drawing]:
    """Return a hundred, tens and ones."""
    pitch = ONE + 2.0
    hundred = 10 * ONE
    beside = int((on.inside - hundred) / pitch)
    first: list[Shape] = [*block_shapes("hundreds", (0, 0), ONE)]
    for at in range(beside):
        first += block_shapes("tens", (hundred + 2.0 + at * pitch, 0), ONE)
    across = int((on.inside + 2.0) / pitch)
    tens = [shape for at in range(across) for shape in block_shapes("tens", (at * pitch, 0), ONE)]
    ones = [shape for at in range(across) for shape in block_shapes("ones", (at * pitch, 0), ONE)]
    title, instructions = "Blocks to cut out", "Cut along the edge of each block."
    left = _room(title, instructions, on) - 2 * hundred - APART
    rows = [
        Drawing(on.inside, hundred, tuple(first)),
        Drawing(on.inside, hundred, tuple(tens)),
        *[Drawing(on.inside, ONE, tuple(ones))] * int(left / (ONE + APART)),
    ]
    return _pages(title, instructions, rows, on)


def _clock(on: Paper, _: Currency) -> list[Drawing]:
    face = clock_drawing({**dial_at(0)}, hands=False, size=CLOCK, least_type=STANDARD.note)
    middle = CLOCK / 2
    hole = Circle((middle, middle), _PIN, Paint(fill="sheet", stroke="ink", width=0.3), "pin")
    shapes = (*face.shapes, hole)
    row = Drawing(on.inside, CLOCK, Drawing(0, 0, shapes).at((on.inside - CLOCK) / 2, 0))
    radius = CLOCK / 2 / FACE["field"]["plain"]
    hands = [
        _hand(FACE["minute"]["length"] * radius, "minute"),
        _hand(FACE["hour"]["length"] * radius, "hour"),
    ]
    left, parts = 0.0, []
    for each in hands:
        parts += each.at(left, 0)
        left += each.width + 4 * APART
    instructions = "Cut out the clock and both hands. Pin the hands to the middle."
    rows = [row, Drawing(on.inside, _HAND, tuple(parts))]
    return _pages("A clock to cut out", instructions, rows, on)


def _hand(length: float, role: str) -> Drawing:
    """Return a hand that lies on its side, as long from the pin as on the drawn clock."""
    half = _HAND / 2
    tip = 0.16 * length if role == "minute" else 0.34 * length
    slim = 0.18 * _HAND if role == "minute" else 0.3 * _HAND
    outline = (
        (0, half - slim - 1), (half, 0), (2 * half, half - slim - 1),
        (half + length - tip, half - slim),
        *(() if role == "minute" else ((half + length - tip, 0.4),)),
        (half + length, half),
        *(() if role == "minute" else ((half + length - tip, _HAND - 0.4),)),
        (half + length - tip, half + slim), (2 * half, half + slim + 1),
        (half, _HAND), (0, half + slim + 1),
    )  # fmt: skip
    paint = Paint(fill=role, stroke=role, width=0.3)
    hole = Circle((half, half), _PIN, Paint(fill="sheet"), "pin")
    return Drawing(half + length, _HAND, (Polygon(outline, paint, role=role), hole))


_CUT_OUT: dict[str, Callable[[Paper, Currency], list[Drawing]]] = {
    "CoinTray": _coins,
    "PlaceValueBlocks": _blocks,
    "Clock": _clock,
}
