"""The three screens that the kit is made for."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Screen:
    """A screen in CSS pixels, and whether it is touched."""

    name: str
    width: int
    height: int
    touch: bool


SCREENS = {
    screen.name: screen
    for screen in (
        Screen("board", 1920, 1080, touch=False),
        Screen("tablet", 1024, 768, touch=True),
        Screen("phone", 360, 740, touch=True),
    )
}
