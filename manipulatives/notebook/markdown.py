"""The text cells of a notebook: headings read and written, and the text as clean HTML.

Text from a file is text. HTML in it is shown as it was typed, and what is made of the rest goes
through a cleaner all the same.
"""

from __future__ import annotations

import re
from itertools import pairwise
from typing import TYPE_CHECKING
from urllib.parse import unquote

import nh3
from markdown_it import MarkdownIt

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from markdown_it.renderer import RendererHTML
    from markdown_it.token import Token

_TAGS = {
    *("h1", "h2", "h3", "h4", "h5", "h6", "p", "br", "hr", "blockquote", "pre", "code"),
    *("em", "strong", "s", "ul", "ol", "li", "a", "img"),
    *("table", "thead", "tbody", "tr", "th", "td"),
}
_ATTRIBUTES = {"a": {"href", "title"}, "img": {"src", "alt", "title"}, "ol": {"start"}}
_PICTURE = re.compile(r"data:image/(png|jpeg|gif|webp);base64,[A-Za-z0-9+/=\s]*")
# The web, the page itself, or a file beside it.
_LINK = re.compile(r"(https?:|mailto:|#).*|[\w%-][\w%./-]*", re.IGNORECASE)
# What can begin something in a line of Markdown, here or in a notebook's own renderer.
_RISKY = re.compile(r"([\\`*_\[\]<>#&~|!$^])")


def _reader() -> MarkdownIt:
    return MarkdownIt("commonmark", {"html": False}).enable(["table", "strikethrough"])


def headings(text: str) -> list[tuple[int, str]]:
    r"""Return the headings of a text as level and plain words.

    Example:
        >>> headings("# Market clock\n\nFor *Thursday*.\n\n## Half *past*")
        [(1, 'Market clock'), (2, 'Half past')]
    """
    return [(level, words) for level, words, _ in _headings(text)]


def without_title(text: str) -> tuple[str | None, str]:
    r"""Return the first heading of level 1, or None, and the text without it.

    Example:
        >>> without_title("# Market clock\nFor Thursday.")
        ('Market clock', 'For Thursday.')
    """
    for level, words, (start, end) in _headings(text):
        if level == 1:
            lines = re.split(r"\r\n|\r|\n", text)
            return words, "\n".join(lines[:start] + lines[end:]).strip()
    return None, text


def heading(level: int, words: str) -> str:
    r"""Return `words` as a heading whose text is exactly these words, wherever that can be.

    Example:
        >>> heading(2, "Half past")
        '## Half past'
        >>> heading(2, "*Tick*")
        '## \\*Tick\\*'
    """
    plain = f"{'#' * level} {words}"
    # A notebook's own renderer also knows HTML, and formulas between two dollars.
    if headings(plain) == [(level, words)] and "<" not in words and words.count("$") <= 1:
        return plain
    return "#" * level + " " + _RISKY.sub(r"\\\1", " ".join(words.split()))


def html(text: str, pictures: Mapping[str, Mapping[str, str]] | None = None) -> tuple[str, list]:
    """Return a text as HTML that can do no harm, and the pictures that had to be left out.

    A picture stays when it is attached to the cell; one that would have to be fetched from
    anywhere leaves its description.

    Args:
        text: Markdown.
        pictures: a cell's attachments: name, then media type, then base64.

    Example:
        >>> html("Tick <b>tock</b>")
        ('<p>Tick &lt;b&gt;tock&lt;/b&gt;</p>', [])
    """
    left_out: list[str] = []
    reader = _reader()

    def image(
        self: RendererHTML, tokens: Sequence[Token], index: int, options: object, env: object
    ) -> str:
        token = tokens[index]
        source = str(token.attrs.get("src", ""))
        if source.startswith("attachment:"):
            carried = (pictures or {}).get(unquote(source.removeprefix("attachment:")), {})
            for kind, data in carried.items():
                token.attrs["src"] = source = f"data:{kind};base64,{data}"
        if _PICTURE.fullmatch(source):
            return self.image(tokens, index, options, env)
        left_out.append(source)
        return nh3.clean_text(token.content)

    reader.add_render_rule("image", image)
    made = nh3.clean(
        reader.render(text),
        tags=_TAGS,
        attributes=_ATTRIBUTES,
        attribute_filter=_harmless,
        url_schemes={"http", "https", "mailto", "data"},
        link_rel="noopener noreferrer",
    )
    return made.strip(), left_out


def _harmless(_tag: str, name: str, value: str) -> str | None:
    if name == "src":
        return value if _PICTURE.fullmatch(value) else None
    if name == "href":
        return value if _LINK.fullmatch(value) else None
    return value


def _headings(text: str) -> list[tuple[int, str, tuple[int, int]]]:
    """Return level, plain words and the lines of each heading."""
    tokens = _reader().parse(text)
    found = []
    for opening, inline in pairwise(tokens):
        if opening.type == "heading_open" and opening.level == 0:
            start, end = opening.map or (0, 0)
            words = " ".join(_plain(inline.children or []).split())
            found.append((int(opening.tag[1:]), words, (start, end)))
    return found


def _plain(tokens: Sequence[Token]) -> str:
    return "".join(
        " " if token.type in ("softbreak", "hardbreak") else token.content for token in tokens
    )
