"""A page that is nothing but a session, over blocks given as HTML: no notebook, no real rounds."""

from __future__ import annotations

import json
import os
from typing import TYPE_CHECKING, Any

from manipulatives.widgets.assemble import assemble, stylesheet
from support.files import PACKAGE

if TYPE_CHECKING:
    from pathlib import Path

STYLES = (
    PACKAGE / "data" / "tokens.css",
    PACKAGE / "widgets" / "shared" / "shared.css",
    PACKAGE / "outputs" / "page" / "session" / "session.css",
)
TELL = """([name, event, detail]) => document.querySelector(`[data-kit-round='${name}']`)
  .dispatchEvent(new CustomEvent(event, { bubbles: true, detail }))"""


def bare_session(
    folder: Path,
    body: str,
    *,
    kind: str = "board",
    busy: bool = False,
    storage: str = "",
    begin: str = "",
) -> Path:
    """Write the page and return its file.

    Args:
        folder: where the file goes.
        body: the blocks.
        kind: page or board.
        busy: whether more blocks are to come.
        storage: what is given to the session besides, as JavaScript.
        begin: JavaScript that runs once the session is there.
    """
    page = os.path.relpath(PACKAGE / "outputs" / "page", folder)
    entry = folder / "entry.js"
    entry.write_text(
        f'import {{ startSession }} from "./{page}/session/session.js";\n'
        f'import {{ whenCommitted }} from "./{page}/host/committed.js";\n'
        "export default { startSession, whenCommitted };\n",
        "utf-8",
    )
    script = assemble(entry).replace("export default", "const kit =", 1)
    file = folder / "bare.html"
    file.write_text(
        "<!doctype html><html lang=en data-starting><meta charset=utf-8><title>Market day</title>"
        '<meta name="viewport" content="width=device-width">'
        f"<style>body {{ margin: 0 }} {stylesheet(*STYLES)}</style>"
        f"<main{' aria-busy=true' if busy else ''}>{body}</main>"
        f'<script type="module">{script}\n'
        "window.controller = new AbortController();\n"
        "await kit.whenCommitted();\n"
        'window.session = kit.startSession({ main: document.querySelector("main"), '
        f'key: "market 7", kind: "{kind}", '
        f"signal: window.controller.signal{storage} }});\n{begin}\n"
        "document.documentElement.removeAttribute('data-starting');</script>",
        "utf-8",
    )
    return file


def round_block(heading: str, name: str) -> str:
    """Return a heading and a round that does nothing but stand there."""
    return (
        f'<h2>{heading}</h2><div><div class="kit-round" data-kit-round="{name}">'
        f"<button>In {name}</button></div></div>"
    )


def telling(*told: tuple[str, str, Any]) -> str:
    """Return JavaScript that lets rounds tell: their name, the event and its detail."""
    return "\n".join(f"({TELL})({json.dumps(each)});" for each in told)
