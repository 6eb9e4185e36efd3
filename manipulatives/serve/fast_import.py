"""Leaves out of a process what takes long to load and is of no use here."""

from __future__ import annotations

import sys


def start_quickly() -> None:
    """Keep one optional part of the schema checker from loading, before anything asks for it.

    It builds a parser for international addresses, which takes longer than loading all the rest
    of a server. Nothing here checks such an address, and the checker works without it. This is
    for processes that are the kit's own: the shelf and its JupyterLab.
    """
    sys.modules.setdefault("rfc3987_syntax", None)  # type: ignore[arg-type] - as Python documents
