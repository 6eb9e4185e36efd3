"""Blocks distributed over pages; no block is split."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from manipulatives.drawings.shapes import Drawing, Shape
from manipulatives.outputs.sheet.layout.paper import MARGIN, Paper

Footer = Callable[[int, int], Drawing]
"""Draws the foot of a page from its number and the number of pages."""


@dataclass(frozen=True)
class Block:
    """A part of a sheet that is not split between pages.

    Attributes:
        drawing: its drawing, as wide as the paper between the margins.
        before: free space above it in millimetres, left out at the top of a page.
        keep_with_next: whether it must stay on one page with the block after it, as a heading.
        repeated_heading: the heading of its round, printed again where the block begins a page.
    """

    drawing: Drawing
    before: float = 0.0
    keep_with_next: bool = False
    repeated_heading: Drawing | None = None


def laid_out(blocks: Sequence[Block], paper: Paper, footer: Footer) -> list[Drawing]:
    """Return the pages that hold the blocks, each a drawing as large as the paper.

    Args:
        blocks: the blocks in order.
        paper: the paper.
        footer: draws the foot of each page.
    """
    room = paper.height - 2 * MARGIN - footer(1, 1).height
    pages: list[list[Shape]] = []
    used = room
    for group in _groups(blocks):
        laid = group
        if used + sum(block.before + block.drawing.height for block in group) > room:
            pages.append([])
            used = 0.0
            if group[0].repeated_heading:
                laid = [Block(group[0].repeated_heading), *group]
        for block in laid:
            used += block.before if used else 0.0
            pages[-1] += block.drawing.at(MARGIN, MARGIN + used)
            used += block.drawing.height
    finished = []
    for number, shapes in enumerate(pages, start=1):
        foot = footer(number, len(pages))
        at_the_foot = foot.at(MARGIN, paper.height - MARGIN - foot.height)
        finished.append(Drawing(paper.width, paper.height, (*shapes, *at_the_foot)))
    return finished


def _groups(blocks: Sequence[Block]) -> list[list[Block]]:
    groups: list[list[Block]] = []
    joined = False
    for block in blocks:
        if joined:
            groups[-1].append(block)
        else:
            groups.append([block])
        joined = block.keep_with_next
    return groups
