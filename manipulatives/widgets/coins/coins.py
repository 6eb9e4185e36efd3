"""The coin tray as a widget: what it shows, and which coins there are to take."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

import traitlets

from manipulatives.drawings.coins import coins_drawing
from manipulatives.drawings.svg import svg_of
from manipulatives.maths.money.coins import currency
from manipulatives.maths.money.places import next_place
from manipulatives.maths.money.tray import (
    check_coins,
    check_purse,
    check_tray,
    left_in,
    traded,
    trades,
    tray_facts,
    tray_of,
)
from manipulatives.widgets.coins.photographs import check_photographs
from manipulatives.widgets.manipulative import Manipulative, value_errors_as_trait_errors
from manipulatives.words.money import WRITINGS

if TYPE_CHECKING:
    from traitlets.utils.bunch import Bunch


class Given(traitlets.Any):
    """A trait that a check of its own decides on, even where None is given."""

    allow_none = False


class CoinTray(Manipulative, folder="coins", state="tray", takes=("coins",)):
    """A purse of coins and a mat to lay them on, by finger, mouse, pen or keys.

    A coin is dragged from the purse to the mat and about on it, or back into the purse; or it is
    tapped, and then the place is tapped where it goes. Coins stay where they were put, as near as
    all of them can be read. Buttons line them up (the largest worth first), sweep the tray clean,
    undo all steps and go back to the beginning. With `trade`, coins of the tray are tapped and
    become the one coin that they are worth, or one coin becomes smaller ones; what comes from a
    trade comes from the purse.

    | key | what it does |
    | --- | --- |
    | 1 to 9 | a coin of the first, second, … kind in the purse goes onto the tray |
    | Tab | to each kind in the purse, to the tray, to the buttons |
    | Enter or Space on a kind in the purse | a coin of it goes onto the tray |
    | Right, Down; Left, Up on a coin of the tray | to the next coin; to the one before |
    | Home; End | to the coin of the largest worth; to the last |
    | Shift with an arrow | the coin goes 5 mm that way, or past the coins there |
    | Enter or Space on a coin of the tray | picks it for a trade or a tap; once more: lets it go |
    | Delete or Backspace | the coin goes back into the purse |
    | Escape | lets go of what is held or picked; it is where it was |

    PageUp and PageDown are not used: they turn the board.

    In tasks that ask for names set `worths` and `names` off and show at least two coins, since
    size is seen beside another. What a screen reader says of a coin then is its look alone. A drawn
    disc is no dime: real coins belong beside the screen, or `photographs` of them on it. Keep small
    coins from children who put things into their mouths.

    Args:
        coins: what lies on the tray at first, lined up: "25 10 10 1" or a list of coins.
        traits: any of the traits below by name; `tray` in place of `coins` gives the places too.

    Raises:
        ValueError: `coins` are none of the currency, or do not fit on the mat.
        traitlets.TraitError: a trait is given what it cannot be.
        TypeError: there is no such trait, or both `coins` and `tray` are given.

    Example:
        >>> tray = CoinTray("25 10 5 1")
        >>> tray.total, tray.facts["kinds"], tray.fewest
        (41, '25 10 5 1', True)
        >>> tray.add("10")
        >>> tray.total
        51
    """

    tray = traitlets.List(
        help="The coins on the mat, a later one above an earlier one: `coin`, its worth in digits, "
        "and where its middle is, `x` from the left and `y` from the top, in whole tenths of a "
        "millimetre. The mat is 140 mm wide and 140 mm high (0 to 1400).",
    ).tag(sync=True)
    currency = Given(
        "usd",
        help="usd, gbp, eur, cad, aud, nzd, or a dict with coins of your own (`maths.coins`). A "
        "new currency keeps coins and purse only if it has such coins.",
    ).tag(sync=True)
    purse = Given(
        help="The coins to take: a list, with no end of each, or a dict that says how many there "
        "are of each, those on the tray included. An empty list: no purse.",
    ).tag(sync=True)
    running_total = traitlets.Bool(
        True,
        help="Whether the total is shown: in free play and while making amounts is learnt, but "
        "not where adding up is the question.",
    ).tag(sync=True)
    writing = traitlets.Enum(
        WRITINGS,
        "mixed",
        help="How the total is written. mixed: $1 and 41¢. small: 141¢. decimal: $1.41.",
    ).tag(sync=True)
    worths = traitlets.Bool(True, help="Whether its worth is on each coin.").tag(sync=True)
    names = traitlets.Bool(
        False,
        help="Whether its name is on each coin that has room for it, else below it in the purse.",
    ).tag(sync=True)
    counts = Given(
        False,
        help="Whether the figures of counting on (25, 35, 40, 41) are below the coins; a number: "
        "below so many of them, the largest worth first.",
    ).tag(sync=True)
    photographs = traitlets.Dict(
        help="Your own photographs of coins in place of the drawn ones: files in the folder of the "
        'notebook by coin, {"10": "dime.jpg"}, cut so that the coin fills them.',
    ).tag(sync=True)
    trade = traitlets.Bool(
        False, help="Whether picked coins can be traded for others worth as much."
    ).tag(sync=True)
    movable = traitlets.Bool(
        True, help="Whether coins can be taken; if not, the tray is a picture to read."
    ).tag(sync=True)
    ring = traitlets.Unicode(
        help="A coin that is asked about: a line is drawn around all of its kind on the tray.",
    ).tag(sync=True)
    buttons = traitlets.Bool(
        True, help="Whether there are buttons to line up, sweep, undo and reset."
    ).tag(sync=True)
    panel = traitlets.Bool(True, help="Whether there are switches for what is shown.").tag(
        sync=True
    )

    def __init__(self, coins: object = None, **traits: Any) -> None:
        if coins is not None:
            if "tray" in traits:
                raise TypeError("A CoinTray takes coins or a tray, not both: they may disagree.")
            traits["tray"] = tray_of(coins, traits.get("currency", "usd"))
        super().__init__(**traits)

    @property
    def total(self) -> int:
        """What the coins on the tray are worth, in the smaller unit."""
        return int(self.facts["total"] or 0)

    @property
    def coins(self) -> list[str]:
        """The coins on the tray, the largest worth first.

        They can be set to whatever the constructor takes, and are lined up.

        Raises:
            ValueError: set to coins that the currency has not, or more than fit on the mat.
        """
        return check_coins([lying["coin"] for lying in self.tray], self.currency)

    @coins.setter
    def coins(self, coins: object) -> None:
        self.tray = tray_of(coins, self.currency)

    @property
    def fewest(self) -> bool:
        """Whether the total cannot be made with fewer of the coins that there are."""
        return bool(self.facts["fewest"])

    @property
    def left(self) -> dict[str, int | None]:
        """How many of each coin are still in the purse, None where there is no end."""
        return left_in(self.purse, self.tray)

    @property
    def facts(self) -> dict[str, int | str | bool | None]:
        """What is true of the coins, as goals and mistakes ask for it: see `tray_facts`."""
        return tray_facts(self.tray, self.currency, self.purse)

    def add(self, coin: object) -> None:
        """Lay one more coin onto the tray.

        Raises:
            ValueError: the currency has no such coin, none is left in the purse, or the tray is
                full.
        """
        (key,) = check_coins([coin], self.currency)
        if self.left.get(key, 0) == 0:
            raise ValueError(f"There is no coin {key} in the purse.")
        lying = next_place(key, self.tray, currency(self.currency))
        if lying is None:
            raise ValueError("The tray is full.")
        self.tray = [*self.tray, lying]

    def take(self, coin: object) -> None:
        """Take a coin from the tray, the one that was laid last.

        Raises:
            ValueError: no such coin lies on the tray.
        """
        (key,) = check_coins([coin], self.currency)
        places = [place for place, lying in enumerate(self.tray) if lying["coin"] == key]
        if not places:
            raise ValueError(f"There is no coin {key} on the tray.")
        self.tray = [lying for place, lying in enumerate(self.tray) if place != places[-1]]

    def sweep(self) -> None:
        """Take all coins from the tray."""
        self.tray = []

    def line_up(self) -> None:
        """Lay the coins in rows, the largest worth first.

        Raises:
            ValueError: the mat has no room for that.
        """
        self.tray = tray_of(self.coins, self.currency)

    def exchange(self, given: object, taken: object) -> None:
        """Trade coins of the tray for coins worth as much.

        Args:
            given: coins that lie on the tray: "10 10 5".
            taken: what they become: "25".

        Raises:
            ValueError: they do not lie there, are not worth the same, are not in the purse, or the
                tray has no room.
        """
        away, into = check_coins(given, self.currency), check_coins(taken, self.currency)
        if into not in trades(away, self.left, self.currency):
            raise ValueError(f"{' '.join(away)} cannot be traded for {' '.join(into)} here.")
        places: list[int] = []
        for key in away:
            free = [
                place
                for place, lying in enumerate(self.tray)
                if lying["coin"] == key and place not in places
            ]
            if not free:
                raise ValueError(f"There are not so many coins {key} on the tray.")
            places.append(free[0])
        after = traded(self.tray, places, into, self.currency)
        if after is None:
            raise ValueError("There is no room on the tray.")
        self.tray = after

    def still(self) -> str:
        """Return a picture of the tray as SVG text, for readers without a live host."""
        shown = {name: getattr(self, name) for name in ("worths", "names", "counts", "ring")}
        return svg_of(coins_drawing(self.tray, self.currency, **shown))

    @traitlets.default("purse")
    def _usual_purse(self) -> list[str]:
        return list(check_purse(None, self.currency))

    @traitlets.validate("tray")
    def _check_tray(self, proposal: Bunch) -> list[dict[str, Any]]:
        with value_errors_as_trait_errors():
            return [{**lying} for lying in check_tray(proposal["value"], self.currency)]

    @traitlets.validate("currency")
    def _check_currency(self, proposal: Bunch) -> object:
        with value_errors_as_trait_errors():
            given = proposal["value"]
            checked = currency(given)
            return checked.to_data() if isinstance(given, Mapping) else given

    @traitlets.validate("purse")
    def _check_purse(self, proposal: Bunch) -> object:
        with value_errors_as_trait_errors():
            return check_purse(proposal["value"], self.currency)

    @traitlets.validate("photographs")
    def _check_photographs(self, proposal: Bunch) -> dict[str, str]:
        with value_errors_as_trait_errors():
            return check_photographs(proposal["value"], self.currency)

    @traitlets.validate("counts")
    def _check_counts(self, proposal: Bunch) -> bool | int:
        given = proposal["value"]
        if isinstance(given, (bool, int)) and given >= 0:
            return given
        raise traitlets.TraitError(f"Counts are True, False or a number of coins, not {given!r}.")

    @traitlets.validate("ring")
    def _check_ring(self, proposal: Bunch) -> str:
        with value_errors_as_trait_errors():
            return _check_ring(proposal["value"], self.currency)

    @traitlets.observe("currency")
    def _change_money(self, _: Bunch) -> None:
        """Empty what the new currency has no coins for."""
        for name, check, instead in (
            ("tray", check_tray, []),
            ("purse", check_purse, None),
            ("photographs", check_photographs, {}),
            ("ring", _check_ring, ""),
        ):
            try:
                check(getattr(self, name), self.currency)
            except ValueError:
                setattr(self, name, instead)


def _check_ring(given: object, money: object) -> str:
    return currency(money).coin(given).key if given else ""
