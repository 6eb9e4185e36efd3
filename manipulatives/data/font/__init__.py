"""The kit's own font, carried along so that board, page and paper show the same letters.

*Kit Reading* is a subset of an open font made for beginning readers: a plain 1, a single-storey a
and g, digits of equal width. It has one weight and no arrows or check marks. Its licence is in
`OFL.txt` beside it; `tests/support/make_font.py` makes the files afresh.
"""

from __future__ import annotations

import base64
from functools import cache
from pathlib import Path

FAMILY = "Kit Reading"
"""The name that style sheets and drawings call it by."""

TTF = Path(__file__).with_name("kit-reading.ttf")
"""The font for paper: a TrueType file."""

WOFF2 = Path(__file__).with_name("kit-reading.woff2")
"""The font for the browser, compressed."""

LICENCE = Path(__file__).with_name("OFL.txt")
"""The licence, which goes wherever the font goes."""


@cache
def font_face_css() -> str:
    """Return the `@font-face` rule that brings the font with it, so that nothing is fetched.

    Example:
        >>> font_face_css()[:40]
        '@font-face{font-family:"Kit Reading";src'
    """
    data = base64.b64encode(WOFF2.read_bytes()).decode("ascii")
    return (
        f'@font-face{{font-family:"{FAMILY}";'
        f'src:url("data:font/woff2;base64,{data}") format("woff2");'
        "font-style:normal;font-weight:400;font-display:block}"
    )
