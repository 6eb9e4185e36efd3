"""Several fingers on a page at once."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from playwright.sync_api import Page

Spot = tuple[float, float]


class Fingers:
    """Fingers by number, each with its position on the page.

    Example:
        fingers = Fingers(page)
        fingers.down(1, (100, 100))
        fingers.down(2, (200, 100))
        fingers.move(1, (100, 300))
        fingers.up(1)
    """

    def __init__(self, page: Page) -> None:
        self._session = page.context.new_cdp_session(page)
        self._spots: dict[int, Spot] = {}

    def down(self, finger: int, spot: Spot) -> None:
        """Put a finger onto the page."""
        self._spots[finger] = spot
        self._send("touchStart")

    def move(self, finger: int, spot: Spot, steps: int = 5) -> None:
        """Move a finger straight to another place; the others stay."""
        start = self._spots[finger]
        for step in range(1, steps + 1):
            self._spots[finger] = (
                start[0] + (spot[0] - start[0]) * step / steps,
                start[1] + (spot[1] - start[1]) * step / steps,
            )
            self._send("touchMove")

    def up(self, finger: int) -> None:
        """Take a finger off the page; the others stay."""
        self._send("touchEnd", {finger: self._spots.pop(finger)})

    def _send(self, kind: str, spots: dict[int, Spot] | None = None) -> None:
        points = [{"x": x, "y": y, "id": id_} for id_, (x, y) in (spots or self._spots).items()]
        self._session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})
