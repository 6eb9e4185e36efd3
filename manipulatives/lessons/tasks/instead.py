"""Tasks that are typed by hand, or drawn once more, instead of the ones that a seed gives."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from manipulatives.lessons.checks import check_text, check_whole
from manipulatives.lessons.problem import LessonProblem, at, quoted
from manipulatives.lessons.tasks.chance import Chance
from manipulatives.lessons.tasks.choosing import MOST_SEARCHED, Item, Wish

Instead = str | int
"""What is asked instead in one place: numbers as they are typed; how often the task was drawn
again; "" or 0 for the task that the seed gives."""

LONGEST, MOST_DRAWS = 60, 999


def check_instead(instead: object, count: int) -> tuple[Instead, ...]:
    """Return what is asked instead, if it is a list of texts and numbers, one for each task.

    Args:
        instead: as it was given.
        count: how many tasks there are.

    Raises:
        LessonProblem: it is something else.

    Example:
        >>> check_instead(["", "4:35", 1], 5)
        ('', '4:35', 1)
    """
    if not isinstance(instead, list | tuple):
        raise LessonProblem(
            f"{quoted(instead)} is no list", remedy='write it like ["", "37 + 48"], one for a task'
        )
    if len(instead) > count:
        raise LessonProblem(
            f"{quoted([*instead])} is for {len(instead)} tasks and the round has {count}",
            remedy=f"give {count} or fewer",
        )
    for place, one in enumerate(instead, start=1):
        with at(f"task {place}"):
            if isinstance(one, str):
                if one:
                    check_text(one, longest=LONGEST)
            else:
                check_whole(one, 0, MOST_DRAWS)
    return tuple(instead)


def put_in(
    items: Sequence[Item],
    instead: Sequence[Instead],
    wish: Wish,
    make: Callable[[Item, int], Any],
) -> list[Item]:
    """Return what each task asks about, after those that were typed or drawn again are put in.

    A task that is drawn again is of the same kind and has the same options as the one before.

    Args:
        items: what the tasks of the seed ask about.
        instead: what is asked instead, one for each task from the first on.
        wish: what the round asks for.
        make: makes the task about an item that stands in a place.

    Raises:
        LessonProblem: numbers cannot be typed for the skill, or it cannot ask about these, or
            asks about them already, or there is no other task to be drawn.

    Example:
        >>> from manipulatives.lessons.tasks.make import make_tasks
        >>> [task] = make_tasks("time.read_hour", seed=7, count=1, instead=["4:00"])
        >>> task.answer
        '4:00'
    """
    found = [*items]
    # What was typed goes first: what is drawn must be different from it.
    for place, one in enumerate(instead):
        if one and isinstance(one, str):
            with at(f"task {place + 1}"):
                found[place] = _typed(one, place, found, wish)
    for place, one in enumerate(instead):
        if one and isinstance(one, int):
            with at(f"task {place + 1}"):
                found[place] = _drawn(one, place, found, wish, make)
    return found


def _typed(text: str, place: int, items: Sequence[Item], wish: Wish) -> Item:
    if wish.generator.read is None:
        raise LessonProblem(
            f"numbers cannot be typed for {wish.skill}",
            remedy="draw the task again, or choose other options",
        )
    item = wish.generator.read(text.strip(), wish.options[place])
    for other, taken in enumerate(items):
        if other != place and taken == item:
            raise LessonProblem(
                f"{quoted(text)} is asked in task {other + 1} already",
                remedy=f"type something else, or draw task {other + 1} again",
            )
    return item


def _drawn(
    times: int, place: int, items: Sequence[Item], wish: Wish, make: Callable[[Item, int], Any]
) -> Item:
    generator = wish.generator
    kind = generator.kind(items[place])
    draws = Chance(f"{wish.name} again {place}").draws(generator.items(wish.options[place]))
    left = times
    for item, _ in zip(draws, range(MOST_SEARCHED), strict=False):
        if item in items or generator.kind(item) != kind:
            continue
        if wish.asked and make(item, place).asks in wish.asked:
            continue
        left -= 1
        if left == 0:
            return item
    raise LessonProblem(
        f"there is no {'other' if times == 1 else 'further'} task like it",
        remedy="ask for fewer tasks, or choose other options",
    )
