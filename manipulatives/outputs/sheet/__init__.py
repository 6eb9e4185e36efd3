"""A lesson on paper: practice and its key, the script for whoever stands in, things to cut out."""

from __future__ import annotations

from manipulatives.outputs.sheet.cutouts import cutouts_of, cutouts_of_file
from manipulatives.outputs.sheet.printed_sheet import printed_of
from manipulatives.outputs.sheet.script import script_of, script_of_file
from manipulatives.outputs.sheet.sheet import sheet_of, sheet_of_file

__all__ = [
    "cutouts_of",
    "cutouts_of_file",
    "printed_of",
    "script_of",
    "script_of_file",
    "sheet_of",
    "sheet_of_file",
]
