"""Fonts for letters, and the width and outlines of a line of text.

Widths come from the shaper that also sets the text of the PDF, so they are those of the printed
line, with kerning.
"""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass, field
from functools import cache, lru_cache
from itertools import groupby
from pathlib import Path

import uharfbuzz as hb

from manipulatives.data import font

Outline = list[tuple[str, tuple[float, ...]]]
"""Drawing commands (M, L, Q, Z) and their coordinates, in ems; y runs downward."""


@dataclass(frozen=True)
class Typeface:
    """A font file.

    Attributes:
        family: its name.
        file: where it is.
        shaper: shapes and measures its letters.
        letters: the code points in it.
    """

    family: str
    file: Path
    shaper: hb.Font = field(repr=False, compare=False)
    letters: frozenset[int] = field(repr=False, compare=False)


@dataclass(frozen=True)
class Run:
    """Consecutive letters of one typeface in a line.

    Attributes:
        typeface: of the letters.
        text: the letters.
        width: of the whole run, in ems.
    """

    typeface: Typeface
    text: str
    width: float


@cache
def kit_typeface() -> Typeface:
    """Return the kit's own typeface."""
    return _typeface(font.FAMILY, font.TTF)


@cache
def fallback_typeface() -> Typeface:
    """Return the typeface for letters that the kit's own lacks, as in a Polish name.

    It comes with matplotlib, which is imported only when such a letter occurs.
    """
    import matplotlib as mpl  # noqa: PLC0415 - see above

    return _typeface("DejaVu Sans", Path(mpl.get_data_path(), "fonts", "ttf", "DejaVuSans.ttf"))


def text_width(text: str, size: float) -> float:
    """Return the width of a line of text in print, with kerning, in millimetres.

    Args:
        text: the text.
        size: the size of the type in millimetres.

    Example:
        >>> round(text_width("To", 10), 2) < round(text_width("T", 10) + text_width("o", 10), 2)
        True
    """
    return sum(run.width for run in runs_of(printable(text))) * size


def printable(text: str) -> str:
    r"""Return the text as it can be printed: on one line, with letters that a font here has.

    A letter or digit that none has becomes an empty box; emoji and the like are left out.

    Args:
        text: text from anyone.

    Example:
        >>> printable("Cheese \U0001f9c0 day"), printable("\u5e02 day")
        ('Cheese day', '□ day')
    """
    return " ".join("".join(_printable(letter) for letter in text).split())


@lru_cache(maxsize=2048)
def runs_of(text: str) -> tuple[Run, ...]:
    """Return a line of text in runs of one typeface each.

    Args:
        text: printable text.

    Example:
        >>> [(run.typeface.family, run.text) for run in runs_of("Łódź")]
        [('DejaVu Sans', 'Ł'), ('Kit Reading', 'ód'), ('DejaVu Sans', 'ź')]
    """
    parts = [(face, "".join(letters)) for face, letters in groupby(text, _typeface_for)]
    return tuple(Run(face, part, _width_of(face, part)) for face, part in parts)


def outline_of(text: str) -> Outline:
    """Return the outlines of a line of text that begins at x = 0 with its baseline at y = 0.

    Args:
        text: printable text.
    """
    found: Outline = []
    left = 0.0
    for run in runs_of(text):
        shaper = run.typeface.shaper
        em = shaper.face.upem
        at = left
        shaped = _shaped(run.typeface, run.text)
        for glyph, place in zip(shaped.glyph_infos, shaped.glyph_positions, strict=True):
            drawn: Outline = []
            shaper.draw_glyph(glyph.codepoint, _recorder(), drawn)
            right, up = at + place.x_offset / em, place.y_offset / em
            for command, ends in drawn:
                xs, ys = ends[::2], ends[1::2]
                moved = ((right + x / em, -up - y / em) for x, y in zip(xs, ys, strict=True))
                found.append((command, tuple(one for point in moved for one in point)))
            at += place.x_advance / em
        left += run.width
    return found


def _printable(letter: str) -> str:
    code = ord(letter)
    if letter.isspace() or code in kit_typeface().letters or code in fallback_typeface().letters:
        return letter
    return "□" if unicodedata.category(letter)[0] in "LN" else ""


def _typeface_for(letter: str) -> Typeface:
    kit = kit_typeface()
    return kit if ord(letter) in kit.letters else fallback_typeface()


def _typeface(family: str, file: Path) -> Typeface:
    face = hb.Face(hb.Blob.from_file_path(str(file)))
    return Typeface(family, file, hb.Font(face), frozenset(face.unicodes))


def _shaped(face: Typeface, text: str) -> hb.Buffer:
    shaped = hb.Buffer()
    shaped.add_str(text)
    shaped.guess_segment_properties()
    hb.shape(face.shaper, shaped)
    return shaped


def _width_of(face: Typeface, text: str) -> float:
    advances = (place.x_advance for place in _shaped(face, text).glyph_positions)
    return float(sum(advances)) / float(face.shaper.face.upem)


@cache
def _recorder() -> hb.DrawFuncs:
    recorder = hb.DrawFuncs()
    recorder.set_move_to_func(lambda x, y, drawn: drawn.append(("M", (x, y))))
    recorder.set_line_to_func(lambda x, y, drawn: drawn.append(("L", (x, y))))
    recorder.set_quadratic_to_func(lambda *ends: ends[-1].append(("Q", ends[:-1])))
    recorder.set_close_path_func(lambda drawn: drawn.append(("Z", ())))
    return recorder
