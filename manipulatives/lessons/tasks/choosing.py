"""Choosing what the tasks of a round ask about: no repeats, in the order that is wanted."""

from __future__ import annotations

from collections import Counter, deque
from collections.abc import Callable, Collection, Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.tasks.chance import Chance
from manipulatives.lessons.tasks.generator import TaskGenerator
from manipulatives.lessons.tasks.task import Task

Item = Any
Make = Callable[[Item, int], Task]
# So many items are looked at for every task that is wanted, before the search is given up.
MOST_SEARCHED = 2_000
# From so many items for every task the easy ones are taken.
TO_CHOOSE_FROM = 12


@dataclass(frozen=True)
class Wish:
    """What a round asks for.

    Attributes:
        skill: its skill.
        name: from which chance begins.
        generator: makes the tasks of the skill.
        options: those of each task in turn.
        order: "any", "easy first" or "mixed".
        asked: what was asked already and is not to be asked again.

    Example:
        >>> from manipulatives.lessons.tasks.make import GENERATORS
        >>> generator = GENERATORS["time.read_hour"]
        >>> wish = Wish("time.read_hour", "7", generator, [{}, {}], order="any", asked=())
        >>> len(set(chosen(wish, make=None)))
        2
    """

    skill: str
    name: str
    generator: TaskGenerator
    options: Sequence[Mapping[str, Any]]
    order: str
    asked: Collection[str]


def chosen(wish: Wish, make: Make) -> list[Item]:
    """Return what each task asks about.

    Args:
        wish: what is wanted.
        make: makes the task about an item that stands in a place, to see what it asks.

    Raises:
        LessonProblem: there are not so many different tasks, or they cannot be ordered like that.

    Example:
        See `Wish`; where nothing was asked already, no task needs to be made:

        >>> from manipulatives.lessons.tasks.make import GENERATORS
        >>> wish = Wish("time.read_hour", "7", GENERATORS["time.read_hour"], [{}], "any", ())
        >>> [item] = chosen(wish, make=None)
    """
    groups: dict[Hashable, list[int]] = {}
    for place, options in enumerate(wish.options):
        groups.setdefault(tuple(options.items()), []).append(place)
    if wish.order == "mixed" and len(groups) > 1:
        raise LessonProblem(
            "an option with a list says the order already",
            remedy='leave out the order "mixed" or the list',
            place="order",
        )
    taken: set[Item] = set()
    items: dict[int, Item] = {}
    for number, places in enumerate(groups.values()):
        # One group is the usual case; its choice is the one that saved lessons rely on.
        name = wish.name if number == 0 else f"{wish.name} group {number}"
        found = _of_group(wish, name, places, taken, make)
        taken.update(found)
        items.update(zip(places, found, strict=True))
    return [items[place] for place in range(len(wish.options))]


def twins_of(wish: Wish, items: Sequence[Item], place: int, count: int) -> list[Item]:
    """Return other items that are as hard as the one in a place: same options, same kind.

    Those that no task of the round asks about come first; a small family may have to repeat them,
    and may have fewer altogether.

    Args:
        wish: what the round asks for.
        items: what its tasks ask about.
        place: of the task.
        count: how many are wanted.

    Example:
        >>> from manipulatives.lessons.tasks.make import GENERATORS
        >>> wish = Wish("time.read_hour", "7", GENERATORS["time.read_hour"], [{}], "any", ())
        >>> 0 in twins_of(wish, [0], 0, 3)
        False
    """
    if not count:
        return []
    generator = wish.generator
    pool = generator.items(wish.options[place])
    kind = generator.kind(items[place])
    others: list[Item] = []
    again: list[Item] = []
    for item in _few(Chance(f"{wish.name} twins {place}").draws(pool)):
        if item != items[place] and generator.kind(item) == kind:
            (again if item in items else others).append(item)
            if len(others) == count:
                break
    return [*others, *again][:count]


def _of_group(
    wish: Wish, name: str, places: Sequence[int], taken: Collection[Item], make: Make
) -> list[Item]:
    generator, count = wish.generator, len(places)
    pool = generator.items(wish.options[places[0]])

    def fresh(item: Item) -> bool:
        if item in taken:
            return False
        return not wish.asked or not any(make(item, at).asks in wish.asked for at in places)

    draws = (item for item in Chance(name).draws(pool) if fresh(item))
    if wish.order == "easy first":
        found = _easy_first(generator, draws, count, Chance(f"{name} easy first"))
    elif wish.order == "mixed":
        found = _mixed(generator, draws, count)
    else:
        found = [item for item, _ in zip(draws, range(count), strict=False)]
    if len(found) == count:
        return found
    left = "" if not (taken or wish.asked) else " that were not asked already"
    if wish.order == "mixed":
        raise LessonProblem(
            f"the {count} tasks{left} cannot be mixed: too many of them are of one kind",
            remedy='ask for fewer, or leave out the order "mixed"',
            place="order",
        )
    raise LessonProblem(
        f"{wish.skill} has only {len(found)} different tasks with these options{left}, not {count}",
        remedy=f"ask for {len(found)} or fewer, or choose other options",
    )


def _few(draws: Iterator[Item]) -> Iterator[Item]:
    return (item for item, _ in zip(draws, range(MOST_SEARCHED), strict=False))


def _easy_first(
    generator: TaskGenerator, draws: Iterator[Item], count: int, chance: Chance
) -> list[Item]:
    """Return items of rising difficulty, the first from among the easiest."""
    some = [item for item, _ in zip(draws, range(TO_CHOOSE_FROM * count), strict=False)]
    if len(some) < count:
        return some
    some.sort(key=generator.ease)
    bands = [len(some) * band // count for band in range(count + 1)]
    return [chance.choose(some[low:high]) for low, high in pairwise(bands)]


def _mixed(generator: TaskGenerator, draws: Iterator[Item], count: int) -> list[Item]:
    """Return items in an order in which no two neighbours are of one kind."""
    most = (count + 1) // 2
    kept: dict[Hashable, deque[Item]] = {}
    total = 0
    for item in _few(draws):
        of_kind = kept.setdefault(generator.kind(item), deque())
        if total < count and len(of_kind) < most:
            of_kind.append(item)
            total += 1
        if total == count:
            break
    if total < count:
        return []
    left = Counter({kind: len(items) for kind, items in kept.items() if items})
    order: list[Item] = []
    last: Hashable = None
    while left:
        # The kind with most items left goes next, unless it has just been; that always works out
        # when no kind has more than half of them, rounded up.
        kinds = [kind for kind, _ in left.most_common() if not order or kind != last]
        if not kinds:
            return []
        last = kinds[0]
        order.append(kept[last].popleft())
        left[last] -= 1
        left = +left
    return order
