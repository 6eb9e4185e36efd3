"""Tasks of the money strand, in the currency of the class."""

from __future__ import annotations

from collections.abc import Sequence

from manipulatives.lessons.strands.money import pools
from manipulatives.lessons.strands.money.tasks import counting, naming, paying, typed
from manipulatives.lessons.tasks.generator import TaskGenerator


def _coin_in_ring(item: pools.Among) -> str:
    return item[0]


def _few_others(item: pools.Among) -> int:
    return len(item[1])


def _paid(item: pools.Sale) -> int:
    return item[1]


def _small_change(item: pools.Sale) -> tuple[int, int]:
    return item[1], item[1] - item[0]


def _difficulty_amount(amount: int) -> int:
    return amount


def _difficulty_group(group: Sequence[int]) -> tuple[int, int]:
    return len(group), sum(group)


GENERATORS = {
    "money.name_coins": TaskGenerator(
        items=pools.among_others,
        task=naming.name_coin,
        kind=_coin_in_ring,
        difficulty=_few_others,
    ),
    "money.coin_worth": TaskGenerator(
        items=pools.among_others,
        task=naming.worth_of_coin,
        kind=_coin_in_ring,
        difficulty=_few_others,
    ),
    "money.count_like": TaskGenerator(
        items=pools.alike,
        task=counting.count_alike,
        kind=counting.kind_alike,
        difficulty=counting.difficulty_alike,
    ),
    "money.count_mixed": TaskGenerator(
        items=pools.mixed,
        task=counting.count_mixed,
        kind=counting.kind_mixed,
        difficulty=counting.difficulty_mixed,
        read=typed.read_mixed,
    ),
    "money.make_amount": TaskGenerator(
        items=pools.amounts,
        task=paying.make_amount,
        difficulty=_difficulty_amount,
        read=typed.reads_amounts(pools.amounts),
    ),
    "money.another_way": TaskGenerator(
        items=pools.to_make_again,
        task=paying.another_way,
        difficulty=_difficulty_group,
        read=typed.read_to_make_again,
    ),
    "money.fewest_coins": TaskGenerator(
        items=pools.amounts_of_several,
        task=paying.fewest_coins,
        difficulty=_difficulty_amount,
        read=typed.reads_amounts(pools.amounts_of_several),
    ),
    "money.change": TaskGenerator(
        items=pools.sales,
        task=paying.change,
        kind=_paid,
        difficulty=_small_change,
        read=typed.read_sale,
    ),
}
