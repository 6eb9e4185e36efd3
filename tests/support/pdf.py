"""What stands on the pages of a PDF, read back from its content streams.

Everything is in millimetres from the top left corner of the page; x runs right and y down.
"""

from __future__ import annotations

import io
import math
import re
from dataclasses import dataclass, field
from itertools import pairwise

from pypdf import PdfReader
from pypdf.generic import ContentStream

MM = 25.4 / 72
Matrix = tuple[float, float, float, float, float, float]
Point = tuple[float, float]


@dataclass(frozen=True)
class Path:
    """A line or an area.

    Attributes:
        points: its points in order, those that steer curves among them.
        curved: whether there are curves in it.
        fill: colour of the inside as #rrggbb, None when it is empty.
        stroke: colour of the line, None when there is none.
        width: width of the line.
        dashed: whether the line is broken.
    """

    points: tuple[Point, ...]
    curved: bool
    fill: str | None
    stroke: str | None
    width: float
    dashed: bool

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, top, right and bottom, with the line."""
        xs, ys = zip(*self.points, strict=True)
        edge = self.width / 2 if self.stroke else 0
        return min(xs) - edge, min(ys) - edge, max(xs) + edge, max(ys) + edge

    @property
    def length(self) -> float:
        """Along its points."""
        return sum(math.dist(one, other) for one, other in pairwise(self.points))


@dataclass(frozen=True)
class Line:
    """A line of text.

    Attributes:
        text: what it says.
        size: of its type, in points.
        x: where it begins.
        y: the line that its letters stand on.
        width: by the widths that the file says of its letters.
        colour: as #rrggbb.
        fonts: names of the fonts it is set in.
    """

    text: str
    size: float
    x: float
    y: float
    width: float
    colour: str
    fonts: tuple[str, ...]

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, top, right and bottom: from the tallest letters to those that hang lowest."""
        size = self.size * MM
        return self.x, self.y - 0.73 * size, self.x + self.width, self.y + 0.24 * size


@dataclass(frozen=True)
class Page:
    """A page.

    Attributes:
        width: of the paper.
        height: of the paper.
        paths: lines and areas in the order they are drawn.
        lines: text in the order it is set.
    """

    width: float
    height: float
    paths: tuple[Path, ...]
    lines: tuple[Line, ...]


def pages_of(content: bytes) -> list[Page]:
    """Return what stands on the pages of a PDF."""
    reader = PdfReader(io.BytesIO(content))
    return [_Page(reader, page).read() for page in reader.pages]


@dataclass
class _State:
    matrix: Matrix = (1, 0, 0, 1, 0, 0)
    fill: str = "#000000"
    stroke: str = "#000000"
    width: float = 1.0
    dashed: bool = False
    font: _Font | None = None
    size: float = 0.0


@dataclass
class _Font:
    name: str
    letters: dict[int, str]
    widths: dict[int, float]


@dataclass
class _Said:
    text: str = ""
    end: float = 0.0
    start: Point | None = None
    size: float = 0.0
    colour: str = ""
    fonts: list[str] = field(default_factory=list)


class _Page:
    """One page while it is read."""

    def __init__(self, reader: PdfReader, page) -> None:
        self.page = page
        self.reader = reader
        self.height = float(page.mediabox.height)
        self.state = _State()
        self.stack: list[_State] = []
        resources = page["/Resources"]
        self.fonts = {name: _font(font.get_object()) for name, font in resources["/Font"].items()}
        self.styles = {
            name: style.get_object() for name, style in resources.get("/ExtGState", {}).items()
        }
        self.points: list[Point] = []
        self.curved = False
        self.paths: list[Path] = []
        self.lines: list[Line] = []

    def read(self) -> Page:
        for operands, operator in ContentStream(self.page.get_contents(), self.reader).operations:
            self.obey(operator.decode(), operands)
        size = float(self.page.mediabox.width) * MM, self.height * MM
        return Page(*size, tuple(self.paths), tuple(self.lines))

    def obey(self, operator: str, operands: list) -> None:
        known = {
            "q": self.push, "Q": self.pop, "cm": self.turn, "gs": self.set_style,
            "w": self.set_width, "d": self.set_dash,
            "g": self.set_fill, "rg": self.set_fill, "G": self.set_stroke, "RG": self.set_stroke,
            "m": self.go, "l": self.go, "c": self.curve, "h": self.close, "re": self.box,
            "S": self.draw_line, "s": self.draw_line, "f": self.draw_area, "B": self.draw_both,
            "b": self.draw_both, "n": self.forget, "W": self.nothing,
            "BT": self.begin, "Tf": self.set_font, "Td": self.move, "Tm": self.place_at,
            "TJ": self.say, "Tj": self.say_one, "ET": self.end,
        }  # fmt: skip
        silent = {"j", "J", "M", "CS", "cs", "Tr"}
        if operator in known:
            known[operator](*operands)
        elif operator not in silent:
            raise NotImplementedError(f"{operator} {operands}")

    def at(self, x, y) -> Point:
        a, b, c, d, e, f = self.state.matrix
        x, y = float(x), float(y)
        return (a * x + c * y + e) * MM, (self.height - (b * x + d * y + f)) * MM

    def push(self) -> None:
        self.stack.append(_State(**vars(self.state)))

    def pop(self) -> None:
        self.state = self.stack.pop()

    def set_style(self, name) -> None:
        style = self.styles[name]
        if "/LW" in style:
            self.state.width = float(style["/LW"])

    def turn(self, *matrix) -> None:
        a, b, c, d, e, f = map(float, matrix)
        m = self.state.matrix
        self.state.matrix = (
            m[0] * a + m[2] * b, m[1] * a + m[3] * b,
            m[0] * c + m[2] * d, m[1] * c + m[3] * d,
            m[0] * e + m[2] * f + m[4], m[1] * e + m[3] * f + m[5],
        )  # fmt: skip

    def set_width(self, width) -> None:
        self.state.width = float(width)

    def set_dash(self, lengths, _phase) -> None:
        self.state.dashed = len(lengths) > 0

    def set_fill(self, *channels) -> None:
        self.state.fill = _colour(channels)

    def set_stroke(self, *channels) -> None:
        self.state.stroke = _colour(channels)

    def go(self, x, y) -> None:
        self.points.append(self.at(x, y))

    def curve(self, *steers) -> None:
        self.curved = True
        for x, y in zip(steers[::2], steers[1::2], strict=True):
            self.points.append(self.at(x, y))

    def close(self) -> None:
        self.points.append(self.points[0])

    def box(self, x, y, width, height) -> None:
        x, y, right, top = float(x), float(y), float(x) + float(width), float(y) + float(height)
        corners = (x, y), (right, y), (right, top), (x, top), (x, y)
        self.points += [self.at(*corner) for corner in corners]

    def draw_line(self) -> None:
        self.draw(None, self.state.stroke)

    def draw_area(self) -> None:
        self.draw(self.state.fill, None)

    def draw_both(self) -> None:
        self.draw(self.state.fill, self.state.stroke)

    def draw(self, fill: str | None, stroke: str | None) -> None:
        a, b, c, d, _, _ = self.state.matrix
        # A line is as many times wider as the matrix makes areas larger, in its square root.
        width = self.state.width * math.sqrt(abs(a * d - b * c)) * MM
        if stroke and not width:
            stroke = None
        dashed = self.state.dashed
        self.paths.append(Path(tuple(self.points), self.curved, fill, stroke, width, dashed))
        self.forget()

    def forget(self) -> None:
        self.points, self.curved = [], False

    def nothing(self) -> None:
        pass

    def begin(self) -> None:
        self.said = _Said()
        self.place = (0.0, 0.0)

    def set_font(self, name, size) -> None:
        self.state.font, self.state.size = self.fonts[name], float(size)

    def move(self, x, y) -> None:
        self.place = (self.place[0] + float(x), self.place[1] + float(y))
        self.said.end = self.place[0]

    def place_at(self, *matrix) -> None:
        *turned, x, y = map(float, matrix)
        assert turned == [1, 0, 0, 1]
        self.place = x, y
        self.said.end = self.place[0]

    def say_one(self, part) -> None:
        self.say([part])

    def say(self, parts) -> None:
        said, font = self.said, self.state.font
        said.start = said.start or self.at(*self.place)
        said.size, said.colour = self.state.size, self.state.fill
        if font.name not in said.fonts:
            said.fonts.append(font.name)
        for part in parts:
            if isinstance(part, (str, bytes)):
                data = part if isinstance(part, bytes) else part.original_bytes
                for high, low in zip(data[::2], data[1::2], strict=True):
                    code = 256 * high + low
                    said.text += font.letters[code]
                    said.end += font.widths[code] / 1000 * said.size
            else:
                said.end -= float(part) / 1000 * said.size

    def end(self) -> None:
        said = self.said
        if not said.start:
            return
        x, y = said.start
        # In millimetres from the left edge.
        width = self.at(said.end, 0)[0] - x
        before = self.lines[-1] if self.lines else None
        if before and _goes_on(before, said, x, y):
            # Another font in the same line of text.
            self.lines[-1] = Line(
                before.text + said.text, before.size, before.x, before.y, x + width - before.x,
                before.colour, (*before.fonts, *said.fonts),
            )  # fmt: skip
            return
        self.lines.append(Line(said.text, said.size, x, y, width, said.colour, tuple(said.fonts)))


def _goes_on(before: Line, said: _Said, x: float, y: float) -> bool:
    """Whether text begins where a line of another font ends."""
    near = math.isclose(y, before.y, abs_tol=0.01)
    near = near and math.isclose(x, before.x + before.width, abs_tol=0.02)
    return near and said.size == before.size and said.fonts[0] != before.fonts[-1]


def _colour(channels) -> str:
    values = [float(channel) for channel in channels] * (3 if len(channels) == 1 else 1)
    return "#" + "".join(f"{round(255 * value):02x}" for value in values)


def _font(font) -> _Font:
    (inner,) = font["/DescendantFonts"]
    inner = inner.get_object()
    return _Font(
        str(font["/BaseFont"]), _letters(font["/ToUnicode"].get_data()), _widths(inner["/W"])
    )


def _letters(cmap: bytes) -> dict[int, str]:
    text = cmap.decode("ascii")
    found = {}
    for block in re.findall(r"beginbfchar(.*?)endbfchar", text, re.DOTALL):
        for code, letter in re.findall(r"<(\w+)>\s*<(\w+)>", block):
            found[int(code, 16)] = bytes.fromhex(letter).decode("utf-16-be")
    for block in re.findall(r"beginbfrange(.*?)endbfrange", text, re.DOTALL):
        for first, last, letters in re.findall(r"<(\w+)>\s*<(\w+)>\s*(\[.*?\]|<\w+>)", block):
            codes = range(int(first, 16), int(last, 16) + 1)
            given = re.findall(r"<(\w+)>", letters)
            if letters.startswith("["):
                decoded = [bytes.fromhex(each).decode("utf-16-be") for each in given]
            else:
                begin = ord(bytes.fromhex(given[0]).decode("utf-16-be"))
                decoded = [chr(begin + step) for step in range(len(codes))]
            found.update(zip(codes, decoded, strict=True))
    return found


def _widths(array) -> dict[int, float]:
    found, items = {}, list(array)
    while items:
        first = int(items.pop(0))
        following = items.pop(0)
        if isinstance(following, list):
            found.update({first + step: float(width) for step, width in enumerate(following)})
        else:
            width = float(items.pop(0))
            found.update(dict.fromkeys(range(first, int(following) + 1), width))
    return found
