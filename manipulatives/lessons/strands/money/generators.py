"""Tasks of the money strand, in the currency of the class."""

from __future__ import annotations

from collections.abc import Sequence

from manipulatives.lessons.strands.money import pools as money_pools
from manipulatives.lessons.strands.money.tasks import (
    counting as money_counting,
)
from manipulatives.lessons.strands.money.tasks import (
    naming as money_naming,
)
from manipulatives.lessons.strands.money.tasks import (
    paying as money_paying,
)
from manipulatives.lessons.strands.money.tasks import (
    typed as money_typed,
)
from manipulatives.lessons.tasks.generator import TaskGenerator


def _coin_in_ring(item: money_pools.Among) -> str:
    return item[0]


def _few_others(item: money_pools.Among) -> int:
    return len(item[1])


def _paid(item: money_pools.Sale) -> int:
    return item[1]


def _small_change(item: money_pools.Sale) -> tuple[int, int]:
    return item[1], item[1] - item[0]


def _ease_amount(amount: int) -> int:
    return amount


def _ease_group(group: Sequence[int]) -> tuple[int, int]:
    return len(group), sum(group)


GENERATORS = {
    "money.name_coins": TaskGenerator(
        items=money_pools.among_others,
        task=money_naming.name_coin,
        kind=_coin_in_ring,
        ease=_few_others,
    ),
    "money.coin_worth": TaskGenerator(
        items=money_pools.among_others,
        task=money_naming.worth_of_coin,
        kind=_coin_in_ring,
        ease=_few_others,
    ),
    "money.count_like": TaskGenerator(
        items=money_pools.alike,
        task=money_counting.count_alike,
        kind=money_counting.kind_alike,
        ease=money_counting.ease_alike,
    ),
    "money.count_mixed": TaskGenerator(
        items=money_pools.mixed,
        task=money_counting.count_mixed,
        kind=money_counting.kind_mixed,
        ease=money_counting.ease_mixed,
        read=money_typed.read_mixed,
    ),
    "money.make_amount": TaskGenerator(
        items=money_pools.amounts,
        task=money_paying.make_amount,
        ease=_ease_amount,
        read=money_typed.reads_amounts(money_pools.amounts),
    ),
    "money.another_way": TaskGenerator(
        items=money_pools.to_make_again,
        task=money_paying.another_way,
        ease=_ease_group,
        read=money_typed.read_to_make_again,
    ),
    "money.fewest_coins": TaskGenerator(
        items=money_pools.amounts_of_several,
        task=money_paying.fewest_coins,
        ease=_ease_amount,
        read=money_typed.reads_amounts(money_pools.amounts_of_several),
    ),
    "money.change": TaskGenerator(
        items=money_pools.sales,
        task=money_paying.change,
        kind=_paid,
        ease=_small_change,
        read=money_typed.read_sale,
    ),
}
