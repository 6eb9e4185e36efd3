"""A teacher's own photographs of coin faces, read from files into text that travels."""

from __future__ import annotations

import base64
import re
from collections.abc import Mapping
from pathlib import Path

from manipulatives.maths.money.coins import currency

LARGEST = 1_000_000
"""How many bytes a photograph has at most."""

# How a picture of each kind begins.
_KINDS = {
    "png": re.compile(rb"\x89PNG\r\n\x1a\n"),
    "jpeg": re.compile(rb"\xff\xd8\xff"),
    "gif": re.compile(rb"GIF8[79]a"),
    "webp": re.compile(rb"RIFF.{4}WEBP", re.DOTALL),
}
_TEXT = re.compile(r"data:image/(png|jpeg|gif|webp);base64,([A-Za-z0-9+/]+={0,2})")


def check_photographs(given: object, money: object) -> dict[str, str]:
    """Return photographs of coins as text that holds the whole picture.

    Args:
        given: for each coin by its key the path of a file in the folder of the notebook, or a
            text that such a file became before. The picture is cut to the outline of the coin:
            the coin fills it from edge to edge.
        money: the currency of the coins.

    Raises:
        ValueError: no such coin, a file elsewhere, or one that is no picture or too large.
    """
    if not isinstance(given, Mapping):
        raise ValueError(f'Photographs are a dict like {{"10": "dime.jpg"}}, not {given!r}.')  # noqa: TRY004 - a wrong value of whatever kind is one
    units = currency(money)
    return {units.coin(str(key)).key: _picture(source) for key, source in given.items()}


def _picture(source: object) -> str:
    if not isinstance(source, str):
        raise ValueError(f"A photograph is the path of a file, not {source!r}.")  # noqa: TRY004 - as above
    if source.startswith("data:"):
        found = _TEXT.fullmatch(source)
        if found is None or len(source) > 2 * LARGEST:
            raise ValueError("A photograph as text is a PNG, JPEG, GIF or WebP picture in base64.")
        return _as_text(base64.b64decode(found[2]), "The photograph")
    here = Path.cwd()
    path = (here / source).resolve()
    # A lesson of someone else is not to take pictures from anywhere on this machine.
    if not path.is_relative_to(here):
        raise ValueError(f"{source} is outside this folder; put the photograph into it.")
    if not path.is_file():
        raise ValueError(f"There is no file {source} in this folder.")
    if path.stat().st_size > LARGEST:
        raise ValueError(f"{source} is larger than a megabyte; make the photograph smaller.")
    return _as_text(path.read_bytes(), source)


def _as_text(picture: bytes, name: str) -> str:
    for kind, begin in _KINDS.items():
        if begin.match(picture):
            return f"data:image/{kind};base64,{base64.b64encode(picture).decode()}"
    raise ValueError(f"{name} is no PNG, JPEG, GIF or WebP picture.")
