"""From a skill and a seed to the tasks of a round, and to a task that somebody typed."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from importlib import import_module
from typing import Any

from manipulatives.lessons import strands
from manipulatives.lessons.catalogue.skills import Given, check_options, options_at, skill_called
from manipulatives.lessons.checks import check_seed, check_whole
from manipulatives.lessons.currency import money_of
from manipulatives.lessons.problem import LessonProblem, at, quoted
from manipulatives.lessons.strands.sums.columns.methods import check_method
from manipulatives.lessons.tasks.chance import Chance
from manipulatives.lessons.tasks.choosing import Item, RoundRequest, choose_items, twins_of
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.replacements import Replacement, apply_replacements
from manipulatives.lessons.tasks.task import Task
from manipulatives.maths.vocabulary import check_vocabulary

GENERATORS: Mapping[str, TaskGenerator] = {
    skill: generator
    for strand in strands.STRANDS
    for skill, generator in import_module(f"{strands.__name__}.{strand}.tasks").GENERATORS.items()
}
TWINS = 3
# More than the tasks of a round, so that twins are about other scenes than the tasks.
TURNS_APART = 41
METHOD = "counting on"


def make_tasks(
    skill: str,
    *,
    seed: int,
    count: int,
    vocabulary: str = "us",
    currency: object = "usd",
    method: str = METHOD,
    options: Mapping[str, Given] | None = None,
    asked: Collection[str] = (),
    instead: Sequence[Replacement] = (),
    twins: int = TWINS,
) -> list[Task]:
    """Return the tasks of a round; the same seed gives the same tasks everywhere.

    No two tasks ask the same, and none asks what was asked already. More tasks begin with the same
    ones, unless they are put in order. Neither vocabulary nor the way of answering changes what is
    asked about.

    Args:
        skill: as the catalogue names it.
        seed: a whole number from 0.
        count: how many tasks.
        vocabulary: "us" or "uk".
        currency: whose coins are counted, such as "usd", or a table with coins of your own.
        method: how the class works written sums, one of `strands.sums.columns.methods.METHODS`.
        options: what the skill lets a round set; of a list each task takes the value in its
            place. `order` is any, easy first or mixed.
        asked: what was asked already, as `Task.asks` says it.
        instead: replacements, one for each task: numbers as a teacher types them, how often the
            task was drawn again, or "".
        twins: how many other tasks of the same difficulty each task has.

    Raises:
        LessonProblem: there is no such skill or option, there are not so many different tasks, or
            what was typed cannot be asked.
        ValueError: no vocabulary or method of the kit.

    Example:
        >>> [task.answer for task in make_tasks("time.read_hour", seed=90213, count=2)]
        ['12:00', '7:00']
    """
    check_vocabulary(vocabulary)
    check_method(method)
    with at("seed"):
        check_seed(seed)
    given = check_options(skill, options or {})
    money = money_of(currency)
    check_count(skill, count, given, currency=currency)
    seed_text = f"{skill} {seed}"
    first_turn = Chance(f"{seed_text} turn").below(1_000_000)
    round_request = RoundRequest(
        skill=skill,
        seed=seed_text,
        generator=GENERATORS[skill],
        options=[{**options_at(skill, given, place), "currency": money} for place in range(count)],
        order=str(given.get("order", "any")),
        asked=frozenset(asked),
    )

    def make(item: Item, place: int, twin: int = 0) -> Task:
        return round_request.generator.task(
            Request(
                skill=skill,
                item=item,
                turn=first_turn + place + twin * TURNS_APART,
                # Each task has its own seed, so that it does not depend on the tasks before it.
                chance=Chance(f"{seed_text} task {place}" + (f" twin {twin}" if twin else "")),
                vocabulary=vocabulary,
                options=round_request.options[place],
                currency=money,
                method=method,
            )
        )

    items = choose_items(round_request, make)
    items = apply_replacements(items, instead, round_request, make)
    if not twins:
        return [make(item, place) for place, item in enumerate(items)]
    return [
        replace(
            make(item, place),
            twins=tuple(
                make(other, place, number)
                for number, other in enumerate(
                    twins_of(round_request, items, place, twins), start=1
                )
            ),
        )
        for place, item in enumerate(items)
    ]


def make_typed(
    skill: str,
    text: str,
    *,
    vocabulary: str = "us",
    currency: object = "usd",
    method: str = METHOD,
    options: Mapping[str, Given] | None = None,
) -> Task:
    """Return the task that a teacher typed, with its worked steps and foreseeable mistakes.

    Args:
        skill: as the catalogue names it.
        text: the numbers, in the way the skill asks them, such as "58 + 37".
        vocabulary: "us" or "uk".
        currency: whose coins are counted.
        method: how the class works written sums.
        options: what the skill lets a round set.

    Raises:
        LessonProblem: numbers cannot be typed for the skill, or it cannot ask about these.
        ValueError: no vocabulary or method of the kit.

    Example:
        >>> make_typed("time.read_five_minutes", "4:35").answer
        '4:35'
    """
    check_vocabulary(vocabulary)
    check_method(method)
    generator = GENERATORS[skill_called(skill).id]
    if generator.read is None:
        able = [one for one, other in GENERATORS.items() if other.read is not None]
        raise LessonProblem(
            f"numbers cannot be typed for {skill}", remedy=f"type them for {', '.join(able)}"
        )
    all_options = options_at(skill, check_options(skill, options or {}), 0)
    money = money_of(currency)
    settings = {**all_options, "currency": money}
    item = generator.read(text, settings)
    chance = Chance(f"{skill} typed {text}")
    return generator.task(
        Request(skill, item, chance.below(1_000), chance, vocabulary, settings, money, method)
    )


def check_count(
    skill: str, count: int, options: Mapping[str, Given] | None = None, *, currency: object = "usd"
) -> int:
    """Return how many tasks are asked for, if the skill has so many different ones.

    Raises:
        LessonProblem: it has fewer, or there is no such skill or option.

    Example:
        >>> check_count("time.read_hour", 12)
        12
        >>> check_count("time.read_hour", 13)
        Traceback (most recent call last):
        manipulatives.lessons.problem.LessonProblem: time.read_hour has only 12 different ...
    """
    with at("count"):
        check_whole(count, 0, 10_000)
    generator = GENERATORS[skill_called(skill).id]
    given = check_options(skill, options or {})
    wanted = Counter(
        tuple(options_at(skill, given, place).items()) for place in range(max(count, 1))
    )
    for values, many in wanted.items():
        most = len(generator.items({**dict(values), "currency": money_of(currency)}))
        if min(many, count) > most:
            raise too_few(skill, most, many, dict(values), listed=len(wanted) > 1)
    return count


def too_few(
    skill: str, most: int, many: int, options: Mapping[str, Any], *, listed: bool
) -> LessonProblem:
    """Return the problem that a skill has fewer tasks than wanted.

    Example:
        >>> str(too_few("time.read_hour", 12, 13, {}, listed=False))
        'time.read_hour has only 12 different tasks with these options, not 13; ask for 12 ...'
    """
    these = quoted(options) if listed else "these options"
    return LessonProblem(
        f"{skill} has only {most} different tasks with {these}, not {many}",
        remedy=f"ask for {most} or fewer" if most else "choose other options",
    )
