"""The strands: for each its skills, tasks, worked steps and foreseeable mistakes.

Each strand is a folder. Its `skills.toml` has the rows of the catalogue; its `tasks`, a module or a
folder, has the table `GENERATORS`; and its `mistakes` has the table `RULES`.

What several strands share has folders of its own here: `sums` and `stories` for addition and
subtraction, and the market town where the tasks take place.
"""

from __future__ import annotations

from pathlib import Path

FOLDER = Path(__file__).parent

STRANDS = ("counting", "place_value", "addition", "subtraction", "shapes", "money", "time")
"""The strands in the order of the catalogue; the only list of them."""
