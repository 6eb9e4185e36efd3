"""Everything that a page is made of, put into one HTML file that asks for nothing."""

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
    """What a page does around the widgets, by whom it is for.

    Attributes:
        name: as the page says it of itself, to the widgets and to who finds the file.
        entry: its code.
        styles: its style sheets, of which later ones have the last word.
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
# The grammar of the kit's modules leaves the dynamic import out, for a widget never needs one; a
# host does, so it is handed in here.
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
        key: under which a browser keeps where a class is in the lesson; any text.
        language: such as "en-GB".
        body: the blocks, which are HTML already.
        saved: the widgets, as `SavedWidgets.script` has them.
        audience: whom it is for, one of `SESSIONS`.
        source: where the files that the page saves come from, as `source_of` has it.

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
    """Say to the browser: no request to anywhere, and no code but what the page came with."""
    digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode("ascii")
    return "; ".join(
        [
            "default-src 'none'",
            # Widgets' code is kept as text and loaded from blob: addresses, which only code makes.
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
