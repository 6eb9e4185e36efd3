"""One coin, and one unit of money, as they are described."""

from __future__ import annotations

import math
from dataclasses import dataclass, fields
from typing import Any, Self

from manipulatives.maths.fields import fields_of, text_in
from manipulatives.maths.number.words import number_in_words
from manipulatives.maths.time.day import is_whole

METALS = ("copper", "silver", "gold")
EDGES = ("plain", "milled", "interrupted", "scalloped", "lettered", "grooved")
SMALLEST, LARGEST = 10.0, 40.0
MOST_WORTH = 100_000
MOST_SIDES = 13


@dataclass(frozen=True)
class Unit:
    """A unit of money.

    Attributes:
        sign: the sign beside a number of them: "¢", "p", "$".
        one: the name of one.
        many: the name of several.

    Raises:
        ValueError: one of them is no short text.

    Example:
        >>> Unit("p", "penny", "pence").counted(2)
        'two pence'
    """

    sign: str
    one: str
    many: str

    def __post_init__(self) -> None:
        for name in ("sign", "one", "many"):
            text_in(getattr(self, name), f'"{name}" of a unit')

    def counted(self, number: int, vocabulary: str = "us") -> str:
        """Return a number of them in words.

        Raises:
            ValueError: it is no whole number from 0 up, or no vocabulary of the kit.

        Example:
            >>> Unit("$", "dollar", "dollars").counted(1)
            'one dollar'
        """
        return f"{number_in_words(number, vocabulary)} {self.one if number == 1 else self.many}"

    def to_data(self) -> dict[str, str]:
        """Return the unit as JSON-able data.

        Example:
            >>> Unit("p", "penny", "pence").to_data()
            {'sign': 'p', 'one': 'penny', 'many': 'pence'}
        """
        return {"sign": self.sign, "one": self.one, "many": self.many}

    @classmethod
    def from_data(cls, data: object) -> Self:
        """Return the unit that a dict describes.

        Raises:
            ValueError: a field is missing, unknown or no short text.

        Example:
            >>> Unit.from_data({"sign": "p", "one": "penny", "many": "pence"}).many
            'pence'
        """
        return cls(**fields_of(data, "A unit", ("sign", "one", "many")))


@dataclass(frozen=True)
class Coin:
    """The worth and the look of a coin, without the picture on its face.

    Attributes:
        worth: in the smaller unit of its currency.
        name: of the coin.
        diameter: millimetres from edge to edge; from corner to corner if an even number of sides
            meet in them; the width, the same all around, if the number is odd.
        metal: "copper", "silver" or "gold" in colour; of its ring, if the middle is another.
        centre: the metal of its middle, or "" when it is all one.
        edge: "plain", "milled", "interrupted" (milled in parts), "scalloped", "lettered" or
            "grooved".
        sides: how many sides its outline has, 0 for a round coin. An odd number makes a curve of
            constant width, an even number a polygon.
        flats: millimetres across two opposite sides of an even number; None for straight ones.
        notches: how many notches there are around a round coin.
        many: the name of several, "dimes" or "two pound coins"; "" for the name and "coins".

    Raises:
        ValueError: one of these is not valid.

    Example:
        >>> Coin(10, "dime", 17.91, "silver", edge="milled").key
        '10'
    """

    worth: int
    name: str
    diameter: float
    metal: str
    centre: str = ""
    edge: str = "plain"
    sides: int = 0
    flats: float | None = None
    notches: int = 0
    many: str = ""

    def __post_init__(self) -> None:
        if not is_whole(self.worth, MOST_WORTH + 1) or self.worth == 0:
            raise _wrong("worth", f"a whole number from 1 to {MOST_WORTH}", self.worth)
        text_in(self.name, "The name of a coin")
        if self.many != "":
            text_in(self.many, 'The "many" of a coin')
        if not _is_length(self.diameter, SMALLEST, LARGEST):
            given = self.diameter
            raise _wrong("diameter", f"{SMALLEST:.0f} to {LARGEST:.0f} millimetres", given)
        for field, allowed in (("metal", METALS), ("centre", ("", *METALS)), ("edge", EDGES)):
            if getattr(self, field) not in allowed:
                raise _wrong(field, _either(allowed), getattr(self, field))
        self._check_outline()

    def _check_outline(self) -> None:
        if not is_whole(self.sides, MOST_SIDES + 1) or self.sides in (1, 2):
            raise _wrong("sides", f"0, or a whole number from 3 to {MOST_SIDES}", self.sides)
        if not is_whole(self.notches, MOST_SIDES + 1) or (self.notches and self.sides):
            allowed = f"0, or up to {MOST_SIDES} on a coin without sides"
            raise _wrong("notches", allowed, self.notches)
        if self.flats is None:
            return
        if self.sides == 0 or self.sides % 2:
            raise _wrong("flats", "left out unless its sides are an even number", self.flats)
        least = round(self.diameter * math.cos(math.pi / self.sides), 2) - 0.01
        if not _is_length(self.flats, least, self.diameter):
            raise _wrong("flats", f"{least:.2f} to {self.diameter} millimetres", self.flats)

    @property
    def key(self) -> str:
        """The key of the coin in a tray, a purse and a fact: its worth in digits.

        Example:
            >>> Coin(25, "quarter", 24.26, "silver").key
            '25'
        """
        return str(self.worth)

    def counted(self, number: int) -> str:
        """Return a number of such coins in words.

        Raises:
            ValueError: it is no whole number from 0 up.

        Example:
            >>> Coin(25, "quarter", 24.26, "silver", many="quarters").counted(2)
            'two quarters'
            >>> Coin(5, "five pence", 18.0, "silver").counted(1)
            'one five pence coin'
        """
        many = self.many or f"{self.name} coins"
        one = many[:-1] if many.endswith(" coins") else self.name
        return f"{number_in_words(number)} {one if number == 1 else many}"

    def to_data(self) -> dict[str, Any]:
        """Return the coin as JSON-able data.

        Example:
            >>> Coin.from_data(Coin(5, "nickel", 21.21, "silver").to_data()).name
            'nickel'
        """
        return {field.name: getattr(self, field.name) for field in fields(self)}

    @classmethod
    def from_data(cls, data: object, unit: Unit | None = None) -> Self:
        """Return the coin that a dict describes.

        Args:
            data: at least "worth", "diameter" and "metal".
            unit: the unit of its worth, for the name when there is none.

        Raises:
            ValueError: a field is missing, unknown or not valid.

        Example:
            >>> penny = Unit("p", "penny", "pence")
            >>> Coin.from_data({"worth": 2, "diameter": 25.9, "metal": "copper"}, penny).name
            'two pence'
        """
        optional = [field.name for field in fields(cls)]
        found = fields_of(data, "A coin", ("worth", "diameter", "metal"), optional[1:])
        if "name" not in found and unit is not None and is_whole(found["worth"], MOST_WORTH):
            found["name"] = unit.counted(found["worth"])
        found.setdefault("name", "")
        return cls(**found)


def _is_length(value: object, least: float, most: float) -> bool:
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        return False
    return least <= value <= most


def _either(words: tuple[str, ...]) -> str:
    return " or ".join(f'"{word}"' for word in words)


def _wrong(field: str, allowed: str, given: object) -> ValueError:
    return ValueError(f'The "{field}" of a coin is {allowed}, not {given!r}.')
