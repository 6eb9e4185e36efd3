"""How large the assembled widgets are, as DEVELOPERS.md tells it."""

from __future__ import annotations

import re

import pytest

from manipulatives.widgets.round.board.widget import BoardRound
from manipulatives.widgets.round.children import MANIPULATIVES
from manipulatives.widgets.round.pupil.widget import PupilRound
from support.files import ROOT

ROW = re.compile(r"^\| (\w+) \| (\d+) \| (\d+) \|$", re.MULTILINE)
ROWS = {name: sizes for name, *sizes in ROW.findall((ROOT / "DEVELOPERS.md").read_text("utf-8"))}
WIDGETS = (*MANIPULATIVES.values(), BoardRound, PupilRound)


def test_every_widget_has_a_row():
    assert set(ROWS) == {kind.__name__ for kind in WIDGETS}


@pytest.mark.parametrize("kind", WIDGETS, ids=lambda kind: kind.__name__)
def test_code_and_style_are_as_large_as_the_table_says(kind):
    for text, thousands in zip((kind._esm, kind._css), ROWS[kind.__name__], strict=True):  # noqa: SLF001 - it is what hosts are sent
        assert len(str(text).encode()) / 1000 == pytest.approx(int(thousands), abs=1)
