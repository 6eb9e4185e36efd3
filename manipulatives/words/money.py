"""Amounts of money in writing and in words, for each currency.

*Mixed* writing has both units, "$1 and 41¢", as children are taught before they know decimals
(common practice; Common Core State Standards 2.MD.C.8 asks for both signs, the programmes of study
for England, Year 2, for pounds and pence). *Small* counts the smaller unit alone, "141¢", and
*decimal* writes "$1.41".
"""

from __future__ import annotations

from manipulatives.maths.money.amounts import check_amount
from manipulatives.maths.money.coins import WORTH_OF_MAJOR, currency

WRITINGS = ("mixed", "small", "decimal")


def in_writing(amount: int, money: object = "usd", writing: str = "mixed") -> str:
    """Return an amount as it is written.

    Args:
        amount: in the smaller unit of the currency.
        money: a currency: a code or a teacher's own.
        writing: "mixed", "small" or "decimal"; where a currency has one unit, all are the same.

    Raises:
        ValueError: no amount, currency or writing of the kit.

    Example:
        >>> in_writing(141), in_writing(141, "gbp", "small"), in_writing(141, "eur", "decimal")
        ('$1 and 41¢', '141p', '€1.41')
        >>> in_writing(200), in_writing(41), in_writing(0)
        ('$2', '41¢', '0¢')
    """
    units = currency(money)
    if writing not in WRITINGS:
        allowed = ", ".join(f'"{one}"' for one in WRITINGS)
        raise ValueError(f"Amounts are written {allowed}, not {writing!r}.")
    small = f"{check_amount(amount)}{units.minor.sign}"
    if units.major is None or writing == "small":
        return small
    large, rest = divmod(amount, WORTH_OF_MAJOR)
    if writing == "decimal":
        return f"{units.major.sign}{large}.{rest:02}"
    if not large:
        return small
    return f"{units.major.sign}{large}" + (f" and {rest}{units.minor.sign}" if rest else "")


def amount_in_words(amount: int, money: object = "usd", vocabulary: str = "us") -> str:
    """Return an amount as it is said.

    Args:
        amount: in the smaller unit of the currency.
        money: a currency: a code or a teacher's own.
        vocabulary: "us" or "uk"; they differ in numbers from a hundred up.

    Raises:
        ValueError: no amount, currency or vocabulary of the kit.

    Example:
        >>> amount_in_words(141), amount_in_words(201, "gbp")
        ('one dollar and forty-one cents', 'two pounds and one penny')
    """
    units = currency(money)
    large, rest = divmod(check_amount(amount), WORTH_OF_MAJOR)
    if units.major is None or not large:
        return units.minor.counted(amount, vocabulary)
    words = units.major.counted(large, vocabulary)
    return f"{words} and {units.minor.counted(rest, vocabulary)}" if rest else words


def coins_in_words(keys: list[str], money: object = "usd") -> str:
    """Return which coins there are, by their names, the largest worth first.

    Raises:
        ValueError: no currency, or none of its coins.

    Example:
        >>> coins_in_words(["10", "25", "10"])
        'one quarter and two dimes'
        >>> coins_in_words([])
        'no coins'
    """
    units = currency(money)
    for key in keys:
        units.coin(key)
    groups = [coin.counted(keys.count(coin.key)) for coin in units.coins if coin.key in keys]
    if not groups:
        return "no coins"
    *most, last = groups
    return f"{', '.join(most)} and {last}" if most else last


def sign_on(key: str, money: object = "usd") -> str:
    """Return the worth as it is written on a coin's face.

    Coins of the larger unit have its sign; on the others there is only room for the number.

    Raises:
        ValueError: no currency, or none of its coins.

    Example:
        >>> sign_on("25"), sign_on("100"), sign_on("200", "gbp")
        ('25', '$1', '£2')
    """
    units = currency(money)
    worth = units.coin(key).worth
    large, rest = divmod(worth, WORTH_OF_MAJOR)
    return str(worth) if units.major is None or rest else f"{units.major.sign}{large}"
