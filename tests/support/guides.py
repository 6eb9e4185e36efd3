"""Makes what is generated among the guides.

    python tests/support/guides.py

writes notebooks/guide/standards.ipynb and one example of each printed form. Tests compare them with
what would be written now.
"""

from __future__ import annotations

from pathlib import Path

import nbformat
from nbformat.v4 import new_markdown_cell, new_notebook

from manipulatives.lessons.atomic_write import atomic_write
from manipulatives.lessons.catalogue.coverage import coverage_table
from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.outputs.sheet.cutouts import cutouts_of_file
from manipulatives.outputs.sheet.script import script_of_file
from manipulatives.outputs.sheet.sheet import sheet_of_file

NOTEBOOKS = Path(__file__).parents[2] / "notebooks"
STANDARDS = NOTEBOOKS / "guide" / "standards.ipynb"
EXAMPLES = NOTEBOOKS / "guide" / "examples"
LESSON = NOTEBOOKS / "week-3-wednesday.ipynb"
FORMS = {
    "sheet": lambda: sheet_of_file(LESSON),
    "key": lambda: sheet_of_file(LESSON, kind="key"),
    "steps": lambda: sheet_of_file(LESSON, kind="steps"),
    "large-print": lambda: sheet_of_file(LESSON, large_print=True),
    "version-B": lambda: sheet_of_file(LESSON, version="B"),
    "script": lambda: script_of_file(LESSON),
    "cutouts": lambda: cutouts_of_file(LESSON),
}
"""How each example is made, as the bytes of a PDF."""

BEFORE = """# Skills and standards

The kit teaches {many} skills of seven strands. This table names for every Common Core standard \
up to grade 2 in number, operations, time, money and shape, and for every statutory statement of \
England's programmes of study for years 1 and 2 in the same areas, the skills that serve it, or \
why none does. The words are ours, in short; the standards themselves are what counts.

Adding and subtracting in columns is a *written method beside strategies*: neither the Common Core \
up to grade 2 nor England's years 1 and 2 demands it. The number line, known facts and bridging \
ten are there for every sum, and the class settings choose.

`manipulatives skills --standard 2.NBT.B.5` lists the skills of a standard, \
`manipulatives tasks addition.two_digit` shows tasks of a skill."""


def standards() -> str:
    """Return the guide to skills and standards as the text of a notebook."""
    cells = [
        new_markdown_cell(BEFORE.format(many=len(SKILLS)), id="about"),
        new_markdown_cell(coverage_table(), id="table"),
    ]
    return nbformat.writes(new_notebook(cells=cells)) + "\n"


if __name__ == "__main__":
    atomic_write(STANDARDS, standards())
    for name, make in FORMS.items():
        (EXAMPLES / f"{name}.pdf").write_bytes(make())
