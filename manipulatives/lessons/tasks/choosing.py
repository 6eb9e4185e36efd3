"""Choosing what the tasks of a round ask about: no repeats, in the order that is wanted."""

from __future__ import annotations

from collections import Counter, deque
from collections.abc import Callable, Collection, Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import islice, pairwise
from typing import Any

from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.tasks.chance import Chance
from manipulatives.lessons.tasks.generator import TaskGenerator
from manipulatives.lessons.tasks.task import Task

Item = Any
MakeTask = Callable[[Item, int], Task]
"""Makes the task about an item at a place in the round, counted from 0."""

# The search for one item ends after so many.
MOST_SEARCHED = 2_000
# Where easy tasks come first, the items are chosen from so many for each task.
SORTED_FOR_EACH_TASK = 12


@dataclass(frozen=True)
class RoundRequest:
    """What the tasks of a round are to be about.

    Attributes:
        skill: the id of its skill.
        seed: the text that seeds all random choices of the round.
        generator: makes the tasks of the skill.
        options: those of each task in turn.
        order: "any", "easy first" or "mixed".
        asked: what was asked already and is not to be asked again, as `Task.asks` says it.

    Example:
        >>> from manipulatives.lessons.tasks.make import GENERATORS
        >>> generator = GENERATORS["time.read_hour"]
        >>> request = RoundRequest("time.read_hour", "7", generator, [{}, {}], "any", asked=())
        >>> len(set(choose_items(request, make=None)))
        2
    """

    skill: str
    seed: str
    generator: TaskGenerator
    options: Sequence[Mapping[str, Any]]
    order: str
    asked: Collection[str]


def choose_items(request: RoundRequest, make: MakeTask) -> list[Item]:
    """Return what each task asks about.

    Args:
        request: what the round asks for.
        make: makes a task, to see what it asks; not called where nothing was asked already.

    Raises:
        LessonProblem: there are not so many different tasks, or they cannot be ordered like that.

    Example:
        >>> from manipulatives.lessons.tasks.make import GENERATORS
        >>> generator = GENERATORS["time.read_hour"]
        >>> request = RoundRequest("time.read_hour", "7", generator, [{}], "any", ())
        >>> [item] = choose_items(request, make=None)
    """
    groups: dict[Hashable, list[int]] = {}
    for place, options in enumerate(request.options):
        groups.setdefault(tuple(options.items()), []).append(place)
    if request.order == "mixed" and len(groups) > 1:
        raise LessonProblem(
            "an option with a list says the order already",
            remedy='leave out the order "mixed" or the list',
            place="order",
        )
    taken: set[Item] = set()
    items: dict[int, Item] = {}
    for number, places in enumerate(groups.values()):
        # The first group has the plain seed, as all tasks have where no option is a list.
        seed = request.seed if number == 0 else f"{request.seed} group {number}"
        found = _choose_for(places, request, seed, taken, make)
        taken.update(found)
        items.update(zip(places, found, strict=True))
    return [items[place] for place in range(len(request.options))]


def twins_of(request: RoundRequest, items: Sequence[Item], place: int, count: int) -> list[Item]:
    """Return other items that are as difficult as that of one task: same options, same kind.

    Items that no task of the round asks about come first. Where there are too few of them, items
    of other tasks follow; there may still be fewer than wanted.

    Args:
        request: what the round asks for.
        items: what its tasks ask about.
        place: of the task in the round, counted from 0.
        count: how many are wanted.

    Example:
        >>> from manipulatives.lessons.tasks.make import GENERATORS
        >>> generator = GENERATORS["time.read_hour"]
        >>> request = RoundRequest("time.read_hour", "7", generator, [{}], "any", ())
        >>> 0 in twins_of(request, [0], 0, 3)
        False
    """
    if not count:
        return []
    generator = request.generator
    pool = generator.items(request.options[place])
    kind = generator.kind(items[place])
    new: list[Item] = []
    repeated: list[Item] = []
    for item in _limited(Chance(f"{request.seed} twins {place}").draws(pool)):
        if item != items[place] and generator.kind(item) == kind:
            (repeated if item in items else new).append(item)
            if len(new) == count:
                break
    return [*new, *repeated][:count]


def _choose_for(
    places: Sequence[int],
    request: RoundRequest,
    seed: str,
    taken: Collection[Item],
    make: MakeTask,
) -> list[Item]:
    """Return items for the tasks at some places, which all have the same options."""
    generator, count = request.generator, len(places)
    pool = generator.items(request.options[places[0]])

    def fresh(item: Item) -> bool:
        if item in taken:
            return False
        return not request.asked or not any(make(item, at).asks in request.asked for at in places)

    draws = (item for item in Chance(seed).draws(pool) if fresh(item))
    if request.order == "easy first":
        found = _easy_first(generator, draws, count, Chance(f"{seed} easy first"))
    elif request.order == "mixed":
        found = _mixed(generator, draws, count)
    else:
        found = [*islice(draws, count)]
    if len(found) == count:
        return found
    left = "" if not (taken or request.asked) else " that were not asked already"
    if request.order == "mixed":
        raise LessonProblem(
            f"the {count} tasks{left} cannot be mixed: too many of them are of one kind",
            remedy='ask for fewer, or leave out the order "mixed"',
            place="order",
        )
    raise LessonProblem(
        f"{request.skill} has only {len(found)} different tasks with these options{left}, "
        f"not {count}",
        remedy=f"ask for {len(found)} or fewer, or choose other options",
    )


def _limited(draws: Iterator[Item]) -> Iterator[Item]:
    return islice(draws, MOST_SEARCHED)


def _easy_first(
    generator: TaskGenerator, draws: Iterator[Item], count: int, chance: Chance
) -> list[Item]:
    """Return items of rising difficulty: one from each part of a sorted sample."""
    some = [*islice(draws, SORTED_FOR_EACH_TASK * count)]
    if len(some) < count:
        return some
    some.sort(key=generator.difficulty)
    bands = [len(some) * band // count for band in range(count + 1)]
    return [chance.choose(some[low:high]) for low, high in pairwise(bands)]


def _mixed(generator: TaskGenerator, draws: Iterator[Item], count: int) -> list[Item]:
    """Return items in an order in which no two neighbours are of one kind."""
    most = (count + 1) // 2
    by_kind: dict[Hashable, deque[Item]] = {}
    total = 0
    for item in _limited(draws):
        of_kind = by_kind.setdefault(generator.kind(item), deque())
        if total < count and len(of_kind) < most:
            of_kind.append(item)
            total += 1
        if total == count:
            break
    if total < count:
        return []
    left = Counter({kind: len(items) for kind, items in by_kind.items() if items})
    order: list[Item] = []
    last: Hashable = None
    while left:
        # The next item is of the kind with most items left, unless the last item was of that kind.
        # Such an order exists when no kind has more than half of all items, rounded up.
        kinds = [kind for kind, _ in left.most_common() if not order or kind != last]
        if not kinds:
            return []
        last = kinds[0]
        order.append(by_kind[last].popleft())
        left[last] -= 1
        left = +left
    return order
