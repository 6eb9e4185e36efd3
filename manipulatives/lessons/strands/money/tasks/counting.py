"""Tasks about what coins are worth together: of one kind, and of several."""

from __future__ import annotations

from collections.abc import Sequence

from manipulatives.lessons.strands.money.mistakes.coins import COUNTING
from manipulatives.lessons.strands.money.pools import Group, alike, mixed, small_worths
from manipulatives.lessons.strands.money.steps import alike_steps, mixed_steps
from manipulatives.lessons.strands.money.tasks.typed import read_mixed
from manipulatives.lessons.strands.money.tray import anywhere, in_rows, to_read
from manipulatives.lessons.tasks.foreseen import done_with, foreseen
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.task import Mistake, Task
from manipulatives.lessons.tasks.typed import typed_number
from manipulatives.maths.money.coin import Unit
from manipulatives.maths.money.coins import WORTH_OF_MAJOR, Currency, Money, currency
from manipulatives.words.money import amount_in_words


def count_alike(request: Request) -> Task:
    """Make a task that asks what coins of one kind are worth together."""
    item: tuple[str, int] = request.item
    (key, many), units = item, currency(request.currency)
    coin = units.coin(key)
    small = coin.worth in small_worths(request.currency)
    return _count(
        request,
        kind=key,
        group=(coin.worth,) * many,
        unit=units.minor if small else _major(units),
        scale=1 if small else WORTH_OF_MAJOR,
    )


def count_mixed(request: Request) -> Task:
    """Make a task that asks what coins of several kinds are worth together."""
    group: Group = request.item
    kind = f"{len(set(group))} kinds"
    return _count(request, kind, group, currency(request.currency).minor, 1)


def _major(units: Currency) -> Unit:
    return units.major or units.minor


def _count(request: Request, kind: str, group: Group, unit: Unit, scale: int) -> Task:
    money, total = request.currency, sum(group)
    if request.options["laid"] == "in rows":
        tray = in_rows(group, money)
    else:
        tray = anywhere([str(worth) for worth in request.chance.shuffled(group)], request.chance)
    prompt = f"How many {unit.many} are there?"
    alike = len(set(group)) == 1
    if alike:
        coin = currency(money).coin(str(group[0]))
        steps = alike_steps(coin, len(group), money, request.vocabulary)
    else:
        steps = mixed_steps(group, money, request.vocabulary)
    return Task(
        skill=request.skill,
        kind=kind,
        prompt=prompt,
        say=f"{prompt} Count on {'in its step' if alike else 'from the largest'}.",
        manipulative="CoinTray",
        start=to_read(tray, money, worths=request.options["worths"] == "shown"),
        **typed_number(
            total // scale,
            request.vocabulary,
            spoken=amount_in_words(total, money, request.vocabulary),
        ),
        steps=steps,
        mistakes=_mistakes(group, money, request.vocabulary, scale),
    )


def _mistakes(group: Group, money: Money, vocabulary: str, scale: int) -> tuple[Mistake, ...]:
    found = [(rule, _scaled(rule.id, rule.wrong(group, money), scale)) for rule in COUNTING]
    numbers = done_with("count", coins=[*group], unit=scale)
    return foreseen(found, vocabulary, right=sum(group) // scale, numbers=numbers)


def _scaled(rule: str, wrong: int | None, scale: int) -> int | None:
    """Return a wrong total in the unit that is asked for; a number of coins stays as it is."""
    if wrong is None or scale == 1 or rule == "coins_as_ones":
        return wrong
    whole, rest = divmod(wrong, scale)
    return None if rest else whole


def kind_alike(item: tuple[str, int]) -> str:
    """Return the kind of a task about coins of one kind.

    Example:
        >>> kind_alike(("5", 3))
        '5'
    """
    return item[0]


def difficulty_alike(item: tuple[str, int]) -> tuple[int, int]:
    """Return how hard it is to count coins of one kind: ones and tens are the easiest steps.

    Example:
        >>> difficulty_alike(("10", 3)) < difficulty_alike(("25", 2))
        True
    """
    worth = int(item[0])
    step = worth // WORTH_OF_MAJOR if worth >= WORTH_OF_MAJOR else worth
    order = {1: 0, 10: 1, 5: 2, 2: 3}
    return order.get(step, 4), item[1]


def kind_mixed(group: Sequence[int]) -> int:
    """Return the kind of a task about several kinds of coins: how many there are.

    Example:
        >>> kind_mixed((25, 10, 10))
        2
    """
    return len(set(group))


def difficulty_mixed(group: Sequence[int]) -> tuple[int, int, int]:
    """Return how hard it is to count several kinds of coins.

    Example:
        >>> difficulty_mixed((10, 1)) < difficulty_mixed((10, 5, 1))
        True
    """
    return len(set(group)), len(group), sum(group)


GENERATORS = {
    "money.count_like": TaskGenerator(
        items=alike, task=count_alike, kind=kind_alike, difficulty=difficulty_alike
    ),
    "money.count_mixed": TaskGenerator(
        items=mixed, task=count_mixed, kind=kind_mixed, difficulty=difficulty_mixed, read=read_mixed
    ),
}
