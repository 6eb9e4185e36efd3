"""How much a page of the kit weighs: it goes to tablets, on sticks and by e-mail."""

from __future__ import annotations

from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook

from manipulatives.outputs.page import page_of
from manipulatives.widgets.round.children import MANIPULATIVES

CALLS = (
    'Clock(time="4:35")',
    'CoinTray("25 10 10 5", trade=True)',
    "PlaceValueBlocks(345)",
    'PolygonDrawer("hexagon")',
    "CountingChart(1, 120, step=5, line=True)",
    'ColumnBoard("347 + 285", mode="show")',
)
ROUND = 'play("time.read_hour", tasks=3, seed=7)'


def test_a_page_with_every_manipulative_and_a_round_is_less_than_300_kb():
    named = {call.split("(")[0] for call in CALLS}
    assert named <= set(MANIPULATIVES)
    calls = (*CALLS, *(f"{name}()" for name in MANIPULATIVES if name not in named), ROUND)
    cells = [new_markdown_cell("# Market day"), *map(new_code_cell, calls)]
    assert len(page_of(new_notebook(cells=cells)).encode()) < 300_000
