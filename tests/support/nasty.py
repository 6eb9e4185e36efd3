"""Files that break readers: each may be in a folder of lessons, and none may break the shelf."""

from __future__ import annotations

import json

LARGE = "0x" + "f" * 6000
"""A number of more than 4,300 digits, which Python refuses to write out."""

DEEP = "[" * 5000 + "]" * 5000
HEADER = 'title = "Nasty"\nseed = 7\n'
ROUND = '[[rounds]]\nskill = "time.read_hour"\nseed = 1\n'

TABLE = "[" + '"' + 30 * "\\u202e" + 500 * "k" + '"' + "]"

LESSONS = {
    "a seed of many digits": f'title = "Nasty"\nseed = {LARGE}\n',
    "a seed of a round of many digits": f"{HEADER}{ROUND}".replace("seed = 1", f"seed = {LARGE}"),
    "tasks of many digits": f"{HEADER}{ROUND}tasks = {LARGE}\n",
    "an option of many digits": f"{HEADER}{ROUND}options = {{ by = {LARGE} }}\n",
    "deep lists": f"{HEADER}rounds = {DEEP}\n",
    "a title of control marks": 'title = "a\\u0007b\\u202ec"\nseed = 7\n',
    "a skill of control marks": f'{HEADER}[[rounds]]\nskill = "time.\\u202e\\u0007"\n',
    "a number that is none": 'title = "Nasty"\nseed = nan\n',
    "nothing": "",
    "a table of marks, twice": f'title = "x"\n{TABLE}\n{TABLE}\n',
    "bytes": b"\xff\xfe\x00",
}

CLASSES = {
    "a count of many digits": f"count_aloud = {LARGE}\n",
    "a vocabulary of control marks": 'vocabulary = "\\u202e\\u0000u"\n',
    "deep lists": f"currency = {DEEP}\n",
}

NAMES = {
    "bytes that no text has": b"\xff.toml",
    "a notebook of such bytes": b"day \xe9.ipynb",
    "a mark of direction": "day \u202e.toml".encode(),
    "what a terminal obeys": b"day \x1b[31m.toml",
    "a line's end": b"day\n2.ipynb",
}
"""Names of files, as the disk holds them."""


def notebook(*cells: tuple[str, str], **metadata: object) -> str:
    """Return the text of a notebook file with cells of a kind and a source."""
    made = [
        {"cell_type": kind, "id": f"c{number}", "metadata": {}, "source": source}
        | ({"outputs": [], "execution_count": None} if kind == "code" else {})
        for number, (kind, source) in enumerate(cells)
    ]
    data = {"cells": made, "metadata": metadata, "nbformat": 4, "nbformat_minor": 5}
    return json.dumps(data)


CALL = 'play("time.read_hour", seed=1)'
NOTEBOOKS = {
    "half a letter in the title": notebook(("markdown", "# A \ud800 day"), ("code", CALL)),
    "half a letter in the metadata": notebook(
        ("code", CALL), manipulatives={"title": "\udfff", "seed": 7}
    ),
    "half a letter in a call": notebook(("code", 'play("time.\udc00", seed=1)')),
    "a seed of many digits": notebook(("code", f'play("time.read_hour", seed={LARGE})')),
    "a seed in the metadata that is a text": notebook(
        ("code", CALL), manipulatives={"title": "Nasty", "seed": "7" * 5000}
    ),
    "a deep call": notebook(("code", f"play({DEEP})")),
    "a sum of many terms": notebook(("code", "play(" + "1+" * 20000 + "1)")),
    "a trait of the machinery": notebook(("code", "Clock(comm=1)")),
    "another trait of the machinery": notebook(("code", 'Clock(_model_module="x")')),
    "a trait that is a method": notebook(("code", "Clock(keys=[])")),
    "metadata that are a list": '{"cells": [], "metadata": [], "nbformat": 4, "nbformat_minor": 5}',
    "cells that are none": '{"cells": 7, "metadata": {}, "nbformat": 4, "nbformat_minor": 5}',
    "a deep file": DEEP,
    "a title that turns": notebook(("markdown", "# A \u202e day \u200b"), ("code", CALL)),
    "a title without end": notebook(("markdown", f"# {'A' * 5000}"), ("code", CALL)),
    "a title that turns, over a program": notebook(("markdown", "# A \u202e day"), ("code", "1+1")),
}
