"""Tasks about single coins: what they are called, and what they are worth."""

from __future__ import annotations

from manipulatives.lessons.strands.money.mistakes.coins import NAMING
from manipulatives.lessons.strands.money.pools import Among, among_others, coins_of
from manipulatives.lessons.strands.money.steps import naming_steps
from manipulatives.lessons.strands.money.tray import anywhere, to_read
from manipulatives.lessons.tasks.foreseen import done_with, foreseen
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.task import Task
from manipulatives.maths.money.coins import currency
from manipulatives.words.money import amount_in_words, in_writing

MOST_CHOICES = 4


def name_coin(request: Request) -> Task:
    """Make a task that asks what a coin is called."""
    return _about_coin(request, ask_worth=False)


def worth_of_coin(request: Request) -> Task:
    """Make a task that asks what a coin is worth."""
    return _about_coin(request, ask_worth=True)


def _about_coin(request: Request, *, ask_worth: bool) -> Task:
    item: Among = request.item
    (key, others), money = item, request.currency
    units = currency(money)
    coin = units.coin(key)

    def named(other: str) -> str:
        one = units.coin(other)
        return in_writing(one.worth, money) if ask_worth else one.name

    mistakes = foreseen(
        [(rule, rule.wrong(key, money)) for rule in NAMING],
        request.vocabulary,
        right=key,
        named=named,
        numbers=done_with("name", coin=key),
    )
    keys = [key, *others]
    start = to_read(anywhere(request.chance.shuffled(keys), request.chance), money, worths=False)
    wrong = [str(one.answer) for one in mistakes]
    other_names = [named(one.key) for one in coins_of(money) if one.key != key]
    fill = request.chance.shuffled([name for name in other_names if name not in wrong])
    choices = [named(key), *[*wrong, *fill][: MOST_CHOICES - 1]]
    prompt = f"What is the coin in the ring {'worth' if ask_worth else 'called'}?"
    look = "Look at its size and its metal."
    return Task(
        skill=request.skill,
        kind=key,
        prompt=prompt,
        say=f"{prompt} {look}",
        manipulative="CoinTray",
        start={**start, "ring": key},
        ask={"by": "choice", "choices": request.chance.shuffled(choices)},
        goal=["=", "answer", named(key)],
        answer=named(key),
        spoken=amount_in_words(coin.worth, money, request.vocabulary) if ask_worth else coin.name,
        steps=naming_steps(coin, others, money, request.vocabulary, ask_worth=ask_worth),
        mistakes=mistakes,
    )


def _coin(item: Among) -> str:
    return item[0]


def _count_of_others(item: Among) -> int:
    return len(item[1])


GENERATORS = {
    skill: TaskGenerator(items=among_others, task=task, kind=_coin, difficulty=_count_of_others)
    for skill, task in (("money.name_coins", name_coin), ("money.coin_worth", worth_of_coin))
}
