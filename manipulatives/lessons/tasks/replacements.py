"""Tasks that replace the ones of a seed: typed by hand, or drawn once more.

In lesson files, and in calls of notebooks, these replacements are the field `instead`.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import islice

from manipulatives.lessons.checks import check_text, check_whole
from manipulatives.lessons.problem import LessonProblem, at, quoted
from manipulatives.lessons.tasks.chance import Chance
from manipulatives.lessons.tasks.choosing import MOST_SEARCHED, Item, MakeTask, RoundRequest

Replacement = str | int
"""What replaces one task: numbers as a teacher types them, or how often the task was drawn again;
"" and 0 leave the task that the seed gives."""

LONGEST, MOST_DRAWS = 60, 999


def check_replacements(replacements: object, count: int) -> tuple[Replacement, ...]:
    """Return the replacements that were given, if they are texts and numbers, one for each task.

    Args:
        replacements: as they were given.
        count: how many tasks there are.

    Raises:
        LessonProblem: they are something else, or too many.

    Example:
        >>> check_replacements(["", "4:35", 1], 5)
        ('', '4:35', 1)
    """
    if not isinstance(replacements, list | tuple):
        raise LessonProblem(
            f"{quoted(replacements)} is no list",
            remedy='write it like ["", "37 + 48"], one for a task',
        )
    if len(replacements) > count:
        raise LessonProblem(
            f"{quoted([*replacements])} is for {len(replacements)} tasks and the round has {count}",
            remedy=f"give {count} or fewer",
        )
    for number, replacement in enumerate(replacements, start=1):
        with at(f"task {number}"):
            if isinstance(replacement, str):
                if replacement:
                    check_text(replacement, longest=LONGEST)
            else:
                check_whole(replacement, 0, MOST_DRAWS)
    return tuple(replacements)


def apply_replacements(
    items: Sequence[Item],
    replacements: Sequence[Replacement],
    request: RoundRequest,
    make: MakeTask,
) -> list[Item]:
    """Return what each task asks about, after tasks were replaced.

    A task that is drawn again is of the same kind and has the same options as the one before.

    Args:
        items: what the tasks of the seed ask about.
        replacements: one for each task from the first on.
        request: what the round asks for.
        make: makes the task about an item at a place in the round.

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
    # Typed tasks first: drawn ones must be different from them.
    for place, replacement in enumerate(replacements):
        if replacement and isinstance(replacement, str):
            with at(f"task {place + 1}"):
                found[place] = _typed(replacement, place, found, request)
    for place, replacement in enumerate(replacements):
        if replacement and isinstance(replacement, int):
            with at(f"task {place + 1}"):
                found[place] = _drawn(replacement, place, found, request, make)
    return found


def _typed(text: str, place: int, items: Sequence[Item], request: RoundRequest) -> Item:
    if request.generator.read is None:
        raise LessonProblem(
            f"numbers cannot be typed for {request.skill}",
            remedy="draw the task again, or choose other options",
        )
    item = request.generator.read(text.strip(), request.options[place])
    for other, taken in enumerate(items):
        if other != place and taken == item:
            raise LessonProblem(
                f"{quoted(text)} is asked in task {other + 1} already",
                remedy=f"type something else, or draw task {other + 1} again",
            )
    return item


def _drawn(
    times: int, place: int, items: Sequence[Item], request: RoundRequest, make: MakeTask
) -> Item:
    generator = request.generator
    kind = generator.kind(items[place])
    draws = Chance(f"{request.seed} again {place}").draws(generator.items(request.options[place]))
    left = times
    for item in islice(draws, MOST_SEARCHED):
        if item in items or generator.kind(item) != kind:
            continue
        if request.asked and make(item, place).asks in request.asked:
            continue
        left -= 1
        if left == 0:
            return item
    raise LessonProblem(
        f"there is no {'other' if times == 1 else 'further'} task like it",
        remedy="ask for fewer tasks, or choose other options",
    )
