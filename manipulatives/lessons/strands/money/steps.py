"""The worked steps of the money strand: coins are looked at, counted on, laid and traded.

Coins are counted from the largest worth down, each kind in a step of its own.

The numbers of a step are one of these acts; worths and totals are in the smaller unit:

* `colour`, `name` and `worth`: the `coin` that is looked at, called or valued;
* `compare`: how many other coins are `larger` and `smaller` than a `coin`, and its `sides`;
* `count`: the figures `counted` `from` one to the next, `by` a step that may be in the larger unit,
  or with the worths of the `coins`;
* `lay`: the worths of the `coins` that are laid, and the figures `counted` with them;
* `total`, `still` and `make`: what is there in all, with the figures `counted` on the way, if any;
* `trade`: the worths that go (`give`) and come (`take`); `fewest`: how many `coins` are needed;
* `start` and `change`: the figure `at` which the count up starts; the `parts` of the change and
  its `total`.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate, groupby

from manipulatives.lessons.strands.money.pools import Trade, coins_of, trade_for
from manipulatives.lessons.strands.money.tray import Tray, in_rows
from manipulatives.lessons.tasks.task import Numbers, Step
from manipulatives.maths.money.amounts import count_on, count_up
from manipulatives.maths.money.coin import Coin
from manipulatives.maths.money.coins import WORTH_OF_MAJOR, Money, currency
from manipulatives.maths.number.words import number_in_words
from manipulatives.words.money import amount_in_words, in_writing

COLOUR = {"us": "color", "uk": "colour"}
# So many numbers are said in one sentence at most.
MOST_SAID = 10
_NUMBERS = {number_in_words(number) for number in range(100)}


def naming_steps(
    coin: Coin, others: Sequence[str], money: Money, vocabulary: str, *, ask_worth: bool
) -> tuple[Step, ...]:
    """Return how a coin is known: by its colour, by its size beside others, by its sides.

    Example:
        >>> dime = currency("usd").coin("10")
        >>> for step in naming_steps(dime, ["25", "1"], "usd", "us", ask_worth=False):
        ...     print(step.say)
        Look at its color: silver.
        Larger coins here: 2. Smaller coins here: 0.
        It is called a dime.
    """
    beside = [currency(money).coin(key).diameter for key in others]
    larger = sum(other > coin.diameter for other in beside)
    size = f"Larger coins here: {larger}. Smaller coins here: {len(beside) - larger}."
    if coin.sides:
        size += f" Its sides: {coin.sides}."
    colour = coin.metal + (f" around {coin.centre}" if coin.centre else "")
    worth, words = in_writing(coin.worth, money), amount_in_words(coin.worth, money, vocabulary)
    steps = [
        Step(
            say=f"Look at its {COLOUR[vocabulary]}: {colour}.",
            chant=colour,
            numbers={"act": "colour", "coin": coin.worth},
        ),
        Step(
            say=size,
            numbers={
                "act": "compare",
                "coin": coin.worth,
                "larger": larger,
                "smaller": len(beside) - larger,
                "sides": coin.sides,
            },
        ),
        Step(
            say=f"It is called {with_article(coin)}.",
            chant=coin.name,
            show={"names": True},
            answer=None if ask_worth else coin.name,
            numbers={"act": "name", "coin": coin.worth},
        ),
    ]
    if ask_worth:
        steps.append(
            Step(
                say=f"It is worth {worth}.",
                chant=words,
                show={"worths": True},
                answer=worth,
                numbers={"act": "worth", "coin": coin.worth},
            )
        )
    return tuple(steps)


def with_article(coin: Coin) -> str:
    """Return what a coin is called in a sentence.

    Example:
        >>> with_article(currency("usd").coin("1")), with_article(currency("gbp").coin("1"))
        ('a penny', 'one penny')
    """
    return coin.name if coin.name.split()[0] in _NUMBERS else f"a {coin.name}"


def alike_steps(coin: Coin, many: int, money: Money, vocabulary: str) -> tuple[Step, ...]:
    """Return how coins of one kind are counted in its step.

    Example:
        >>> for step in alike_steps(currency("usd").coin("5"), 3, "usd", "us"):
        ...     print(step.say)
        Each coin is worth 5¢.
        Count 3 coins in steps of 5.
        5, 10, 15. That is 15¢.
    """
    units = currency(money)
    large = bool(units.major) and coin.worth >= WORTH_OF_MAJOR
    step = coin.worth // WORTH_OF_MAJOR if large else coin.worth
    counted = [step * count for count in range(1, many + 1)]
    figures, total = said(counted), coin.worth * many
    return (
        Step(
            say=f"Each coin is worth {in_writing(coin.worth, money)}.",
            chant=amount_in_words(coin.worth, money, vocabulary),
            numbers={"act": "worth", "coin": coin.worth},
        ),
        # Below the coins figures are in the smaller unit.
        Step(
            say=f"Count {many} coins in steps of {step}.",
            chant=figures,
            show={} if large else {"counts": True},
            numbers={"act": "count", "from": 0, "by": step, "counted": counted},
        ),
        Step(
            say=f"{figures}. That is {in_writing(total, money)}.",
            chant=amount_in_words(total, money, vocabulary),
            answer=str(step * many),
            numbers=_total("total", total, counted),
        ),
    )


def mixed_steps(group: Sequence[int], money: Money, vocabulary: str) -> tuple[Step, ...]:
    """Return how coins of several kinds are counted on.

    Example:
        >>> for step in mixed_steps((25, 10, 10, 1), "usd", "us"):
        ...     print(step.say)
        Begin with one quarter: 25.
        Two dimes: count on to 45.
        One penny: count on to 46.
        25, 35, 45, 46. That is 46¢.
    """
    steps, counted = [], 0
    for number, (coins, figures) in enumerate(by_kind(group, money)):
        worths = group[counted : counted + len(figures)]
        counted += len(figures)
        first = f"Begin with {coins}" if number == 0 else f"{capital(coins)}: count on to"
        say = f"{first}{':' if number == 0 else ''} {figures[-1]}."
        numbers = _counted("count", worths, figures)
        steps.append(Step(say=say, chant=said(figures), show={"counts": counted}, numbers=numbers))
    total, figures = sum(group), count_on(group)
    say = f"{said(figures)}. That is {in_writing(total, money)}."
    words = amount_in_words(total, money, vocabulary)
    numbers = _total("total", total, figures)
    return (*steps, Step(say=say, chant=words, answer=str(total), numbers=numbers))


def _counted(act: str, worths: Sequence[int], figures: Sequence[int]) -> Numbers:
    begin = figures[0] - worths[0]
    return {"act": act, "coins": [*worths], "from": begin, "counted": [*figures]}


def _total(act: str, total: int, figures: Sequence[int] = ()) -> Numbers:
    return {"act": act, "total": total, "counted": [*figures]}


def laying_steps(group: Sequence[int], money: Money, vocabulary: str) -> list[Step]:
    """Return how an amount is laid, the largest coins first.

    Example:
        >>> for step in laying_steps((25, 10, 10), "usd", "us"):
        ...     print(step.say)
        Lay one quarter: 25.
        Lay two dimes: 45.
        25, 35, 45. That is 45¢.
    """
    steps = laid_by_kind(group, money)
    figures, total = count_on(group), sum(group)
    figures = figures if len(figures) <= MOST_SAID else []
    said_all = f"{said(figures)}. " if figures else ""
    say = f"{said_all}That is {in_writing(total, money)}."
    words = amount_in_words(total, money, vocabulary)
    numbers = _total("total", total, figures)
    return [*steps, Step(say=say, chant=words, show={"counts": True}, numbers=numbers)]


def laid_by_kind(group: Sequence[int], money: Money, start: int = 0) -> list[Step]:
    """Return one step for each kind of coins that are laid, counted on from a start.

    Example:
        >>> [step.say for step in laid_by_kind((1, 10), "usd", 39)]
        ['Lay one penny: 40.', 'Lay one dime: 50.']
    """
    steps, laid = [], 0
    for coins, figures in by_kind(group, money, start):
        numbers = _counted("lay", group[laid : laid + len(figures)], figures)
        laid += len(figures)
        say, show = f"Lay {coins}: {figures[-1]}.", {"tray": in_rows(group[:laid], money)}
        steps.append(Step(say=say, chant=said(figures), show=show, numbers=numbers))
    return steps


def again_steps(group: Sequence[int], money: Money, vocabulary: str) -> tuple[Step, ...]:
    """Return how an amount is made in another way: by a trade.

    Example:
        >>> for step in again_steps((25, 10), "usd", "us"):
        ...     print(step.say)
        The coins make 35¢.
        Trade one quarter for two dimes and one nickel.
        10, 20, 30, 35. That is still 35¢.
    """
    trade = trade_for(tuple(group), money)
    if trade is None:
        raise ValueError(f"{group} cannot be traded for other coins.")
    after, total = traded_group(group, trade), in_writing(sum(group), money)
    words = amount_in_words(sum(group), money, vocabulary)
    given, taken = (_in_words(side, money) for side in trade)
    give, take = (sorted(map(int, side), reverse=True) for side in trade)
    tray: Tray = in_rows(after, money)
    figures = count_on(after)
    return (
        Step(
            say=f"The coins make {total}.",
            chant=words,
            show={"counts": True},
            numbers=_total("make", sum(group)),
        ),
        Step(
            say=f"Trade {given} for {taken}.",
            show={"tray": tray, "counts": False},
            numbers={"act": "trade", "give": give, "take": take},
        ),
        Step(
            say=f"{said(figures)}. That is still {total}.",
            chant=words,
            show={"counts": True},
            numbers=_total("still", sum(group), figures),
        ),
    )


def traded_group(group: Sequence[int], trade: Trade) -> list[int]:
    """Return a group of coins after a trade, the largest worth first.

    Example:
        >>> traded_group((25, 10), (("25",), ("10", "10", "5")))
        [10, 10, 10, 5]
    """
    after = list(group)
    for key in trade[0]:
        after.remove(int(key))
    return sorted([*after, *map(int, trade[1])], reverse=True)


def change_steps(price: int, paid: int, money: Money, vocabulary: str) -> tuple[Step, ...]:
    """Return how change is counted up from the price to what was paid.

    Example:
        >>> for step in change_steps(37, 50, "usd", "us"):
        ...     print(step.say)
        Start at 37.
        Lay three pennies: 40.
        Lay one dime: 50.
        3 + 10 = 13. The change is 13¢.
    """
    worths = [coin.worth for coin in coins_of(money) if coin.worth < WORTH_OF_MAJOR]
    coins = count_up(price, paid, worths) or ()
    parts = [sum(same) for _, same in groupby(coins)]
    total = paid - price
    adds = f"{' + '.join(map(str, parts))} = {total}. " if len(parts) > 1 else ""
    return (
        Step(say=f"Start at {price}.", chant=f"{price}", numbers={"act": "start", "at": price}),
        *laid_by_kind(coins, money, price),
        Step(
            say=f"{adds}The change is {in_writing(total, money)}.",
            chant=amount_in_words(total, money, vocabulary),
            answer=str(total),
            numbers={"act": "change", "parts": parts, "total": total},
        ),
    )


def by_kind(group: Sequence[int], money: Money, start: int = 0) -> list[tuple[str, list[int]]]:
    """Return coins kind by kind: how many there are in words, and the figures counted with them.

    Example:
        >>> by_kind((25, 10, 10), "usd")
        [('one quarter', [25]), ('two dimes', [35, 45])]
    """
    kinds, reached = [], start
    for worth, same in groupby(group):
        many = len(list(same))
        figures = list(accumulate([worth] * many, initial=reached))[1:]
        reached = figures[-1]
        kinds.append((counted(currency(money).coin(str(worth)), many, money), figures))
    return kinds


def counted(coin: Coin, many: int, money: Money) -> str:
    """Return a number of coins in words; those named after their worth are told by it.

    Example:
        >>> counted(currency("usd").coin("10"), 2, "usd")
        'two dimes'
        >>> counted(currency("gbp").coin("20"), 2, "gbp")
        'two 20p coins'
    """
    if coin.name.split()[0] not in _NUMBERS:
        return coin.counted(many)
    ending = "coin" if many == 1 else "coins"
    return f"{number_in_words(many)} {in_writing(coin.worth, money)} {ending}"


def _in_words(keys: Sequence[str], money: Money) -> str:
    group = sorted(map(int, keys), reverse=True)
    *most, last = [words for words, _ in by_kind(group, money)]
    return f"{', '.join(most)} and {last}" if most else last


def said(figures: Sequence[int]) -> str:
    """Return figures as they are said one after the other.

    Example:
        >>> said([25, 35, 40, 41])
        '25, 35, 40, 41'
    """
    return ", ".join(map(str, figures))


def capital(words: str) -> str:
    """Return words that begin a sentence.

    Example:
        >>> capital("two dimes")
        'Two dimes'
    """
    return words[:1].upper() + words[1:]
