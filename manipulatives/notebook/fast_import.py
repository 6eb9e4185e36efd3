"""Loads what reads notebooks without one optional part that takes a second and is not used."""

from __future__ import annotations

import sys

_SLOW = "rfc3987_syntax"


def import_nbformat_fast() -> None:
    """Import `nbformat`, and `jsonschema` with it, without the check of international addresses.

    The case: `python -X importtime -c "import jsonschema"` takes 1.1 s, of which 1.0 s is
    `rfc3987_syntax`, which builds some thirty parsers while it is imported. jsonschema (4.26)
    imports it whenever it is installed and has no setting against that; jupyter_events (0.12)
    requires it. Nothing here checks such an address, and jsonschema works without it. From the
    command `manipulatives serve` to its first page it is 1.1 s this way, and 2.3 s otherwise.

    In the import system None in `sys.modules` marks a module as missing. It is there only while
    jsonschema is imported; a later import of the module works. Call this
    only in processes that are the kit's own, before anything else imports jsonschema; after that
    it does nothing.

    Example:
        >>> import_nbformat_fast()
    """
    if "jsonschema" not in sys.modules and _SLOW not in sys.modules:
        sys.modules[_SLOW] = None  # type: ignore[assignment] - as Python documents
        try:
            import nbformat  # noqa: F401, PLC0415 - here and nowhere else
        finally:
            del sys.modules[_SLOW]
