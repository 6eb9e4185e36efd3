"""What benchmarks of drags share: coins, blocks and shapes measured in turns, and their table."""

from __future__ import annotations

import statistics
from typing import TYPE_CHECKING, Protocol, TypeVar

from support.chromium import chromium

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from playwright.sync_api import Browser

    Lags = tuple[list[float], list[float]]

RUNS = 3
SLOWER = (1, 4)


class Named(Protocol):
    """What is measured."""

    name: str


Subject = TypeVar("Subject", bound=Named)


def measure(
    subjects: Sequence[Subject],
    drag: Callable[[Browser, Subject, int], Lags],
    work: Callable[[Browser, int], None] | None = None,
    *,
    second: str = "heard",
) -> None:
    """Drag each subject at full speed and slowed down, and print how long the frames took.

    Args:
        subjects: the bare one first.
        drag: returns milliseconds until the frame of each move: from the pointer's time stamp, and
            from when the page heard of it, or whatever else `second` names.
        work: prints what else is measured, at a speed.
        second: what the second of the two is called.
    """
    with chromium() as browser:
        for slower in SLOWER:
            print(f"\nprocessor {slower} times slower" if slower > 1 else "\nfull speed")
            heads = f"{'stamp: ms':>11}{'95 %':>8}{second + ': ms':>11}{'95 %':>8}"
            print(f"{'':12}{heads}{'of bare':>10}")
            # In turns, so that whatever else the machine does meets all of them.
            runs = [[drag(browser, subject, slower) for subject in subjects] for _ in range(RUNS)]
            bare = 0.0
            for subject, *its in zip(subjects, *runs, strict=True):
                stamped, heard = ([lag for run in its for lag in run[kind]] for kind in (0, 1))
                row = "".join(
                    f"{statistics.median(lags):11.1f}{statistics.quantiles(lags, n=20)[-1]:8.1f}"
                    for lags in (stamped, heard)
                )
                bare = bare or statistics.median(stamped)
                print(f"{subject.name:12}{row}{statistics.median(stamped) / bare:10.2f}")
            if work is not None:
                work(browser, slower)
