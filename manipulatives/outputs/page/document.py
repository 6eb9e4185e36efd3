"""One HTML file with everything that a page needs: text, widgets, code, styles and font."""

from __future__ import annotations

import base64
import hashlib
from dataclasses import dataclass
from functools import cache
from html import escape
from pathlib import Path

from manipulatives.data.font import font_face_css
from manipulatives.widgets.assemble import SHARED_STYLES, assemble, stylesheet

HERE = Path(__file__).parent


@dataclass(frozen=True)
class Session:
    """What a page shows around its widgets; each audience has its own session.

    Attributes:
        name: the value of `data-kit-session` on the page, which widgets and `shelf.outputs` read.
        entry: the entry module of its code.
        styles: its style sheets; a later one overrides those before it.
    """

    name: str
    entry: Path
    styles: tuple[Path, ...]


SESSIONS = {
    "board": Session(
        "page",
        HERE / "session" / "page.js",
        (*SHARED_STYLES, HERE / "session" / "session.css", HERE / "page.css"),
    ),
    "pupils": Session(
        "pupils",
        HERE / "pupils" / "page.js",
        (*SHARED_STYLES, HERE / "page.css", HERE / "pupils" / "pupils.css"),
    ),
}
NOSCRIPT = (
    "This page needs JavaScript, which is turned off here. "
    "Turn it on in the browser's settings and open the page again."
)
# The grammar of the kit's modules has no dynamic import, because no widget needs one. A host does,
# so the page passes it in.
LOAD = """page.open(document, async (code) => {
const url = URL.createObjectURL(new Blob([code], { type: "text/javascript" }));
try {
return await import(url);
} finally {
URL.revokeObjectURL(url);
}
});
"""


def document(
    *,
    title: str,
    key: str,
    language: str,
    body: list[str],
    saved: str,
    audience: str = "board",
    source: str = "{}",
) -> str:
    """Return the text of an HTML file.

    Args:
        title: of the lesson; any text.
        key: under which a browser stores the class's place in the lesson; any text.
        language: such as "en-GB".
        body: the blocks, as HTML.
        saved: the widgets, as `SavedWidgets.script` returns them.
        audience: whom it is for, one of `SESSIONS`.
        source: where the files that the page saves come from, as `source_of` returns it.

    Example:
        >>> document(title="Monday", key="", language="en-GB", body=[], saved="")[:15]
        '<!doctype html>'
    """
    session = SESSIONS[audience]
    about = f'data-kit-lesson="{escape(key)}" data-kit-source="{escape(source)}"'
    script = _script(session)
    lines = [
        "<!doctype html>",
        f'<html lang="{language}" data-kit-session="{session.name}" {about}>',
        "<head>",
        '<meta charset="utf-8">',
        f'<meta http-equiv="Content-Security-Policy" content="{_policy(script)}">',
        '<meta name="viewport" content="width=device-width, initial-scale=1">',
        '<link rel="icon" href="data:,">',
        f"<title>{escape(title)}</title>",
        f"<style>{_style(session)}</style>",
        "</head>",
        '<body class="kit kit-page">',
        f'<header class="kit-head"><h1>{escape(title)}</h1></header>',
        f"<noscript><p>{NOSCRIPT}</p></noscript>",
        "<main>",
        *body,
        "</main>",
        f'<script type="text/plain" id="kit-saved">{saved}</script>',
        f'<script type="module">{script}</script>',
        "</body>",
        "</html>",
    ]
    return "\n".join(lines) + "\n"


def _policy(script: str) -> str:
    """Return a Content-Security-Policy: no requests, and no code but the page's own."""
    digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode("ascii")
    return "; ".join(
        [
            "default-src 'none'",
            # Widgets' code is stored as text and loaded from blob: addresses, which only code can
            # make.
            f"script-src 'sha256-{digest}' blob:",
            "style-src 'unsafe-inline'",
            "img-src data: blob:",
            "media-src data: blob:",
            "font-src data:",
            "connect-src 'none'",
            "base-uri 'none'",
            "form-action 'none'",
        ]
    )


@cache
def _script(session: Session) -> str:
    """Return the page's own code."""
    opened = assemble(session.entry).replace("export default ", "const page = ", 1)
    return opened + LOAD


@cache
def _style(session: Session) -> str:
    return font_face_css() + "\n" + stylesheet(*session.styles)
