"""Drawings as the pages of a PDF, to scale. The only module that imports matplotlib."""

from __future__ import annotations

import io
import unicodedata
from collections.abc import Sequence
from functools import cache, lru_cache
from threading import Lock
from typing import assert_never

import matplotlib as mpl
from matplotlib.artist import Artist
from matplotlib.backends.backend_pdf import PdfPages
from matplotlib.figure import Figure
from matplotlib.font_manager import FontProperties, findfont, fontManager
from matplotlib.ft2font import FT2Font
from matplotlib.patches import PathPatch
from matplotlib.path import Path
from matplotlib.text import Text as Letters
from matplotlib.textpath import text_to_path
from matplotlib.transforms import Affine2D
from pypdf import PdfReader, PdfWriter
from pypdf.generic import BooleanObject, DictionaryObject, NameObject, TextStringObject

from manipulatives.data import font
from manipulatives.drawings.shapes import (
    MM_PER_POINT,
    Arc,
    Box,
    Circle,
    Drawing,
    Line,
    Paint,
    Point,
    Polygon,
    Shape,
    Text,
)
from manipulatives.drawings.tokens import colour

MM_PER_INCH = 25.4

# matplotlib's settings are the same for all threads: one sheet at a time may change them.
_SETTINGS = Lock()


def pdf_of(pages: Sequence[Drawing], *, title: str, language: str) -> bytes:
    """Return a PDF with one drawing a page, the same to the byte each time.

    The font is embedded, a viewer that listens prints without scaling, and nothing in the file says
    when or where it was made.

    Args:
        pages: the drawings; each page is as large as its drawing.
        title: the title of the document.
        language: the language of its text, such as `"en-GB"`.
    """
    file = io.BytesIO()
    notes = {"Title": title, "Creator": "manipulatives", "CreationDate": None}
    with _SETTINGS, mpl.rc_context():
        # What somebody has set for plots of their own must not move a millimetre here.
        mpl.rcdefaults()
        mpl.rcParams.update({"pdf.fonttype": 42, "path.simplify": False})
        with PdfPages(file, metadata=notes) as document:
            for page in pages:
                document.savefig(_figure(page))
    return _finished(file, language)


def png_of(page: Drawing, *, dots_per_inch: int = 100) -> bytes:
    """Return a drawing as a picture on white.

    Args:
        page: the drawing.
        dots_per_inch: how fine it is.
    """
    file = io.BytesIO()
    with _SETTINGS, mpl.rc_context():
        mpl.rcdefaults()
        figure = _figure(page)
        figure.patch.set_visible(True)
        figure.patch.set_facecolor("#ffffff")
        figure.savefig(file, format="png", dpi=dots_per_inch, metadata={"Software": None})
    return file.getvalue()


def text_width(text: str, size: float) -> float:
    """Return how wide a line of text is in the kit's font, with kerning, in millimetres.

    Args:
        text: the text.
        size: the size of the type in millimetres.
    """
    return _width_of_em(printable(text)) * size


def printable(text: str) -> str:
    r"""Return the text as it can be printed: on one line, of letters that some font here has.

    An empty box stands for a letter or digit that none has; emoji and the like are left out.

    Args:
        text: text from anyone.

    Example:
        >>> printable("Cheese \U0001f9c0 day"), printable("\u5e02 day")
        ('Cheese day', '□ day')
    """
    return " ".join("".join(_printable(letter) for letter in text).split())


def _printable(letter: str) -> str:
    if letter.isspace() or ord(letter) in _letters_at_hand():
        return letter
    return "□" if unicodedata.category(letter)[0] in "LN" else ""


@cache
def _letters_at_hand() -> frozenset[int]:
    files = [str(font.TTF), findfont(FontProperties(family=_families()[1:]))]
    return frozenset().union(*(FT2Font(file).get_charmap() for file in files))


@lru_cache(maxsize=2048)
def _width_of_em(text: str) -> float:
    scale = 1000
    width, _, _ = text_to_path.get_text_width_height_descent(text, _type(scale), ismath=False)
    return width / scale


@cache
def _families() -> list[str]:
    fontManager.addfont(font.TTF)
    # Letters that the kit's font lacks (a Polish name, say) come from the one matplotlib brings.
    return [font.FAMILY, "DejaVu Sans"]


def _type(points: float) -> FontProperties:
    return FontProperties(family=_families(), size=points)


def _figure(page: Drawing) -> Figure:
    figure = Figure(figsize=(page.width / MM_PER_INCH, page.height / MM_PER_INCH))
    figure.patch.set_visible(False)
    # Millimetres from the top left corner to inches from the bottom left one.
    scale = Affine2D().scale(1 / MM_PER_INCH, -1 / MM_PER_INCH)
    to_paper = scale.translate(0, page.height / MM_PER_INCH) + figure.dpi_scale_trans
    for shape in page.shapes:
        for artist in _artists(shape):
            # One level for all: what comes later lies above.
            artist.set_zorder(1)
            artist.set_transform(to_paper)
            figure.add_artist(artist)
    return figure


def _artists(shape: Shape) -> list[Artist]:
    if not isinstance(shape, Text):
        return [_patch(shape)]
    return [_halo(shape), _letters(shape)] if shape.halo else [_letters(shape)]


def _patch(shape: Line | Circle | Polygon | Arc | Box) -> PathPatch:
    paint = shape.paint
    return PathPatch(
        _path(shape),
        facecolor=_ink(paint.fill) if paint.fill else "none",
        edgecolor=_ink(paint.stroke) if paint.stroke else "none",
        linewidth=paint.width / MM_PER_POINT if paint.stroke else 0,
        alpha=paint.opacity if paint.opacity < 1 else None,
        capstyle="round" if paint.round else "butt",
        joinstyle="round" if paint.round else "miter",
        linestyle=_dashes(paint),
    )


def _ink(name: str) -> str:
    # Paper has a colour of its own; printing the screen's would only dot it grey.
    return "#ffffff" if name == "sheet" else colour(name)


def _dashes(paint: Paint) -> str | tuple[float, tuple[float, ...]]:
    if not paint.dashes:
        return "solid"
    # matplotlib counts dashes in widths of the line.
    return 0, tuple(length / paint.width for length in paint.dashes)


def _path(shape: Line | Circle | Polygon | Arc | Box) -> Path:
    match shape:
        case Line():
            return Path([shape.start, shape.end])
        case Polygon():
            points = [*shape.points, shape.points[0]] if shape.closed else list(shape.points)
            return Path(points, closed=shape.closed)
        case Circle():
            return Path.circle(shape.centre, shape.radius)
        case Arc():
            return _arc(shape)
        case Box():
            return _box(shape)
        case _:
            assert_never(shape)


def _arc(arc: Arc) -> Path:
    # y runs downward here, which makes matplotlib's angles run clockwise, from three o'clock.
    curve = Path.arc(arc.start - 90, arc.start - 90 + arc.sweep)
    curve = curve.transformed(Affine2D().scale(arc.radius).translate(*arc.centre))
    if not arc.slice:
        return curve
    points = [arc.centre, *curve.vertices, arc.centre]
    return Path(points, [Path.MOVETO, Path.LINETO, *curve.codes[1:], Path.CLOSEPOLY])


def _box(box: Box) -> Path:
    (left, top), right, bottom = box.corner, box.corner[0] + box.width, box.corner[1] + box.height
    r = box.radius
    if not r:
        corners = [(left, top), (right, top), (right, bottom), (left, bottom), (left, top)]
        return Path(corners, closed=True)
    points: list[Point] = [(left + r, top), (right - r, top)]
    codes = [Path.MOVETO, Path.LINETO]
    # The control points of a quarter circle lie this far along its tangents.
    k = r * (1 - 0.5522847498)
    for control_1, control_2, end, line in (
        ((right - k, top), (right, top + k), (right, top + r), (right, bottom - r)),
        ((right, bottom - k), (right - k, bottom), (right - r, bottom), (left + r, bottom)),
        ((left + k, bottom), (left, bottom - k), (left, bottom - r), (left, top + r)),
        ((left, top + k), (left + k, top), (left + r, top), (left + r, top)),
    ):
        points += [control_1, control_2, end, line]
        codes += [Path.CURVE4, Path.CURVE4, Path.CURVE4, Path.LINETO]
    codes[-1] = Path.CLOSEPOLY
    return Path(points, codes)


def _letters(text: Text) -> Letters:
    align = {"start": "left", "middle": "center", "end": "right"}[text.anchor]
    return Letters(
        *text.at,
        printable(text.text),
        fontproperties=_type(text.size / MM_PER_POINT),
        color=_ink(text.colour),
        horizontalalignment=align,
        verticalalignment="baseline",
        # A price such as $5 is text, not the start of a formula.
        parse_math=False,
    )


def _halo(text: Text) -> PathPatch:
    # The outline of the letters, drawn wide: the letters themselves stay text.
    vertices, codes = text_to_path.get_text_path(_type(1), printable(text.text))
    left = {"start": 0.0, "middle": 0.5, "end": 1.0}[text.anchor] * text_width(text.text, text.size)
    scale = text.size / text_to_path.FONT_SCALE
    to_place = Affine2D().scale(scale, -scale)
    outline = Path(vertices, codes).transformed(to_place.translate(text.at[0] - left, text.at[1]))
    return PathPatch(
        outline,
        facecolor=_ink("sheet"),
        edgecolor=_ink("sheet"),
        linewidth=2 * text.halo / MM_PER_POINT,
        joinstyle="round",
    )


def _finished(file: io.BytesIO, language: str) -> bytes:
    # matplotlib has no way to say these: a page at its true size, and the language to read it in.
    writer = PdfWriter(clone_from=PdfReader(file))
    wishes = {"/PrintScaling": NameObject("/None"), "/DisplayDocTitle": BooleanObject(value=True)}
    preferences = DictionaryObject({NameObject(key): wish for key, wish in wishes.items()})
    writer.root_object[NameObject("/ViewerPreferences")] = preferences
    writer.root_object[NameObject("/Lang")] = TextStringObject(language)
    finished = io.BytesIO()
    writer.write(finished)
    return finished.getvalue()
