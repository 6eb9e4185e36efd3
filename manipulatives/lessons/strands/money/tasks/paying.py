"""Tasks about laying amounts: any way, another way, with the fewest coins, and as change."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Any

from manipulatives.lessons.strands.money import pools
from manipulatives.lessons.strands.money.mistakes.coins import COUNTING, NAMING
from manipulatives.lessons.strands.money.mistakes.paying import (
    AS_MANY_COINS,
    CHANGE,
    MORE_THAN_NEEDED,
    SAME_NUMBER,
)
from manipulatives.lessons.strands.money.pools import Group, Sale, paid_with, purse_of
from manipulatives.lessons.strands.money.steps import again_steps, change_steps, laying_steps
from manipulatives.lessons.strands.money.tasks.typed import (
    read_sale,
    read_to_make_again,
    reads_amounts,
)
from manipulatives.lessons.strands.money.tray import in_rows, to_lay
from manipulatives.lessons.tasks.foreseen import done_with, foreseen, mistake
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.predicates import Predicate
from manipulatives.lessons.tasks.rule import Rule
from manipulatives.lessons.tasks.task import Mistake, Step, Task
from manipulatives.lessons.tasks.typed import typed_number
from manipulatives.maths.money.coins import Money, currency
from manipulatives.words.money import amount_in_words, in_writing

GOODS = (
    "The bun",
    "The apple",
    "The candle",
    "The ribbon",
    "The cheese",
    "The whistle",
    "The card",
    "The ferry ticket",
)
# So many coins are laid at most before somebody notices.
MANY_COINS = 30
SLIPS = ("left_one_out", "counted_one_twice")


def make_amount(request: Request) -> Task:
    """Make a task in which an amount is laid."""
    amount, money = request.item, request.currency
    coins = paid_with(amount, money)
    prompt = f"{_costs(request, amount)} Pay it."
    return _laying(
        request,
        prompt=prompt,
        goal=["=", "total", amount],
        start=to_lay([], money, total=request.options["total"] == "shown"),
        steps=laying_steps(coins, money, request.vocabulary),
        mistakes=_wrong_totals(amount, coins, money, request.vocabulary),
    )


def fewest_coins(request: Request) -> Task:
    """Make a task in which an amount is laid with the fewest coins."""
    amount, money = request.item, request.currency
    coins = paid_with(amount, money)
    steps = laying_steps(coins, money, request.vocabulary)
    more: Predicate = ["and", ["=", "total", amount], ["=", "fewest", False]]
    return _laying(
        request,
        prompt=f"{_costs(request, amount)} Pay with the fewest coins.",
        goal=["and", ["=", "total", amount], ["=", "fewest", True]],
        start=to_lay([], money, total=True),
        steps=[
            *steps,
            Step(
                say=f"No way needs fewer than {len(coins)} coins.",
                numbers={"act": "fewest", "coins": len(coins)},
            ),
        ],
        mistakes=(
            mistake(
                [MORE_THAN_NEEDED],
                more,
                request.vocabulary,
                numbers={"act": "lay", "amount": amount, **MORE_THAN_NEEDED.does},
            ),
            *_wrong_totals(amount, coins, money, request.vocabulary),
        ),
    )


def another_way(request: Request) -> Task:
    """Make a task in which an amount that lies there is made with other coins."""
    group: Group = request.item
    money, amount = request.currency, sum(group)
    kinds = " ".join(map(str, group))
    # As many coins that are worth something else: a coin was traded for a coin.
    traded: Predicate = ["and", ["=", "count", len(group)], ["!=", "total", amount]]
    numbers = {"act": "lay", "coins": [*group], **SAME_NUMBER.does}
    swapped = [mistake([SAME_NUMBER], traded, request.vocabulary, numbers=numbers)]
    start = to_lay(in_rows(group, money), money, total=False)
    return _laying(
        request,
        prompt=f"Make {in_writing(amount, money)} with other coins.",
        goal=["and", ["=", "total", amount], ["!=", "kinds", kinds]],
        start={**start, "trade": True},
        steps=again_steps(group, money, request.vocabulary),
        mistakes=swapped,
    )


def _laying(
    request: Request,
    *,
    prompt: str,
    goal: Predicate,
    start: dict[str, Any],
    steps: Iterable[Step],
    mistakes: Iterable[Mistake],
) -> Task:
    item: int | Group = request.item
    amount = item if isinstance(item, int) else sum(item)
    return Task(
        skill=request.skill,
        kind="lay",
        prompt=prompt,
        say=f"{prompt} Count on as you lay the coins.",
        manipulative="CoinTray",
        start=start,
        ask={"by": "manipulative"},
        goal=goal,
        answer=in_writing(amount, request.currency),
        spoken=amount_in_words(amount, request.currency, request.vocabulary),
        steps=tuple(steps),
        mistakes=tuple(mistakes),
    )


def _costs(request: Request, amount: int) -> str:
    return f"{GOODS[request.turn % len(GOODS)]} costs {_small(amount, request.currency)}."


def _small(amount: int, money: Money) -> str:
    """Return an amount in the smaller unit alone: price and payment are of the same unit."""
    return in_writing(amount, money, "small")


def _wrong_totals(amount: int, coins: Group, money: Money, vocabulary: str) -> tuple[Mistake, ...]:
    slips = [(rule, rule.wrong(coins, money)) for rule in COUNTING if rule.id in SLIPS]
    as_many: Predicate = ["and", ["=", "count", amount], ["!=", "total", amount]]
    numbers = {"act": "lay", "amount": amount, **AS_MANY_COINS.does}
    by_number = (
        [mistake([AS_MANY_COINS], as_many, vocabulary, numbers=numbers)]
        if 1 < amount <= MANY_COINS
        else []
    )
    return (
        *_taken_for_others(amount, coins, money, vocabulary),
        *foreseen(
            slips,
            vocabulary,
            right=amount,
            named=lambda wrong: in_writing(wrong, money),
            when=lambda wrong: ["=", "total", wrong],
            numbers=done_with("count", coins=[*coins]),
        ),
        *by_number,
    )


def _taken_for_others(
    amount: int, coins: Group, money: Money, vocabulary: str
) -> Iterator[Mistake]:
    """Yield what is laid by someone who takes one coin for another."""
    laid: dict[Group, list[Rule[Any]]] = {}
    for rule in NAMING:
        others = [_laid_for(rule, worth, money) for worth in coins]
        if sum(others) != amount:
            laid.setdefault(tuple(sorted(others, reverse=True)), []).append(rule)
    for group, rules in laid.items():
        numbers = {"act": "lay", "coins": [*coins], **rules[0].does, "wrong": [*group]}
        yield mistake(rules, ["=", "kinds", " ".join(map(str, group))], vocabulary, numbers=numbers)


def _laid_for(rule: Rule[Any], worth: int, money: Money) -> int:
    """Return the coin that is laid for a worth when coins are taken for others."""
    for key in purse_of(money)[::-1]:
        if rule.wrong(key, money) == f"{worth}":
            return int(key)
    return worth


def change(request: Request) -> Task:
    """Make a task that asks what comes back."""
    sale: Sale = request.item
    (price, paid), money = sale, request.currency
    unit = currency(money).minor.many
    prompt = f"{_costs(request, price)} You pay {_small(paid, money)}."
    asks = f"How many {unit} come back?"
    back = paid - price
    return Task(
        skill=request.skill,
        kind=f"from {paid}",
        prompt=f"{prompt} {asks}",
        say=f"{prompt} {asks} Count up from the price.",
        manipulative="CoinTray",
        start=to_lay([], money, total=False),
        **typed_number(
            back,
            request.vocabulary,
            spoken=amount_in_words(back, money, request.vocabulary),
        ),
        steps=change_steps(price, paid, money, request.vocabulary),
        mistakes=foreseen(
            [(rule, rule.wrong(price, paid)) for rule in CHANGE],
            request.vocabulary,
            right=back,
            numbers=done_with("change", price=price, paid=paid),
        ),
    )


def _difficulty_of_amount(amount: int) -> int:
    return amount


def _difficulty_of_group(group: Sequence[int]) -> tuple[int, int]:
    return len(group), sum(group)


def _difficulty_of_sale(sale: Sale) -> tuple[int, int]:
    price, paid = sale
    return paid, paid - price


def _of_amounts(
    amounts: Callable[[Mapping[str, Any]], Sequence[int]], task: Callable[[Request], Task]
) -> TaskGenerator:
    return TaskGenerator(
        items=amounts, task=task, difficulty=_difficulty_of_amount, read=reads_amounts(amounts)
    )


GENERATORS = {
    "money.make_amount": _of_amounts(pools.amounts, make_amount),
    "money.another_way": TaskGenerator(
        items=pools.to_make_again,
        task=another_way,
        difficulty=_difficulty_of_group,
        read=read_to_make_again,
    ),
    "money.fewest_coins": _of_amounts(pools.amounts_of_several, fewest_coins),
    "money.change": TaskGenerator(
        items=pools.sales,
        task=change,
        kind=lambda sale: sale[1],
        difficulty=_difficulty_of_sale,
        read=read_sale,
    ),
}
