"""The picture of a task on paper, for each manipulative."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from manipulatives.drawings.clock import clock_drawing
from manipulatives.drawings.shapes import Drawing, Line, Paint, Polygon
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.task import Task
from manipulatives.outputs.sheet.paper import Size

ARROW_ROOM = 10.0


@dataclass(frozen=True)
class Picture:
    """How a manipulative is printed.

    Attributes:
        draw: draws the state it is in (its traits); `blank` leaves out what pupils are to draw,
            `answered` marks what a key has drawn for them.
        orders: what pupils are told to do where they answer on the picture itself.
    """

    draw: Callable[..., Drawing]
    orders: str


def picture_of(task: Task, size: Size, *, key: bool) -> Drawing:
    """Return what a task shows, or gives to draw on, or both; as wide as it needs.

    Args:
        task: the task.
        size: the sizes of the sheet.
        key: whether the answer is given.

    Raises:
        LessonProblem: if its manipulative cannot be drawn.
    """
    picture = _picture(task.manipulative)
    if task.ask["by"] != "manipulative":
        return picture.draw(task.start, size, size.picture)
    solved = _solved(task) if key else task.start
    how = {"answered": True} if key else {"blank": True}
    if task.kind == "set":
        # Where the hands happen to stand at first is no part of the question.
        return picture.draw(solved, size, size.picture, **how)
    given = picture.draw(task.start, size, size.pair)
    return _from_to(given, picture.draw(solved, size, size.pair, **how))


def orders(task: Task) -> str:
    """Return what pupils are told to do where they answer on the picture itself.

    Args:
        task: the task.

    Raises:
        LessonProblem: if its manipulative cannot be drawn.
    """
    return _picture(task.manipulative).orders


def _picture(manipulative: str) -> Picture:
    if manipulative in PICTURES:
        return PICTURES[manipulative]
    raise LessonProblem(
        f"{manipulative} cannot be printed",
        remedy=f"leave out the round, or take one with {' or '.join(PICTURES)}",
    )


def _solved(task: Task) -> dict[str, Any]:
    """The traits after the last step; every step's `show` is laid over what was there."""
    traits = dict(task.start)
    for step in task.steps:
        traits.update(step.show)
    # Of what the steps show on the board, the key shows what the pupil is to draw.
    return {**traits, **{help_: task.start.get(help_, False) for help_ in ("sector", "arc")}}


def _from_to(given: Drawing, asked: Drawing) -> Drawing:
    height = max(given.height, asked.height)
    left, right, middle = given.width + 1.5, given.width + ARROW_ROOM - 1.5, height / 2
    tip = ((right, middle), (right - 3, middle - 1.8), (right - 3, middle + 1.8))
    arrow = (
        Line((left, middle), (right - 2.5, middle), Paint(stroke="quiet", width=0.8)),
        Polygon(tip, Paint(fill="quiet")),
    )
    asked_at = given.width + ARROW_ROOM
    shapes = (*given.at(0, 0), *arrow, *asked.at(asked_at, 0))
    return Drawing(asked_at + asked.width, height, shapes)


def _clock(
    traits: dict[str, Any],
    size: Size,
    width: float,
    *,
    blank: bool = False,
    answered: bool = False,
) -> Drawing:
    shown = {name: traits[name] for name in _ON_PAPER if name in traits}
    return clock_drawing(
        traits["dial"],
        **shown,
        hands=not blank,
        answered=answered,
        size=width,
        least_type=size.note,
    )


_ON_PAPER = ("numerals", "ticks", "minute_numbers", "sector", "arc")

PICTURES = {"Clock": Picture(_clock, "Draw the hands.")}
"""For each manipulative how it is printed."""
