"""The skills of the money strand, in the order in which they are learnt."""

from __future__ import annotations

from manipulatives.lessons.catalogue.skill import Option, Skill

Options = dict[str, tuple[Option, ...]]

WORTHS: tuple[Option, ...] = ("shown", "hidden")
LAID: tuple[Option, ...] = ("in rows", "anywhere")
MOST: tuple[Option, ...] = (99, 20, 50)
COINS = ("CCSS 2.MD.C.8", "England Y1 measurement 3")
COUNTED = ("CCSS 2.MD.C.8", "England Y2 measurement 3")

SKILLS = (
    Skill(
        id="money.name_coins",
        name="Coins",
        title="Name coins",
        standards=COINS,
        limits="The usual coins of the currency, each beside one to three others.",
        manipulative="CoinTray",
        tasks=5,
        seconds=120,
        words=("coin", "size", "metal"),
    ),
    Skill(
        id="money.coin_worth",
        name="Worth of coins",
        title="Say what a coin is worth",
        standards=COINS,
        limits="The usual coins of the currency, each beside one to three others.",
        builds_on=("money.name_coins",),
        manipulative="CoinTray",
        tasks=5,
        seconds=120,
        words=("worth",),
    ),
    Skill(
        id="money.count_like",
        name="Coins of one kind",
        title="Count coins of one kind",
        standards=COUNTED,
        limits="2 to 10 coins of one kind, to 99 of the smaller unit or 20 of the larger.",
        builds_on=("money.coin_worth", "counting.on_in_fives", "counting.on_in_tens"),
        manipulative="CoinTray",
        tasks=5,
        seconds=180,
        words=("count on", "step"),
        options={"worths": WORTHS, "laid": LAID},
    ),
    Skill(
        id="money.count_mixed",
        name="Mixed coins",
        title="Count coins of several kinds",
        standards=COUNTED,
        limits="Up to 4, 6 or 8 coins of two kinds or more, to 99 of the smaller unit.",
        builds_on=("money.count_like",),
        manipulative="CoinTray",
        tasks=5,
        seconds=240,
        words=("count on", "altogether"),
        options={
            "kinds": ("any", 2, 3, 4),
            "most": (6, 4, 8),
            "worths": WORTHS,
            "laid": LAID,
        },
    ),
    Skill(
        id="money.make_amount",
        name="Pay",
        title="Make an amount",
        standards=COUNTED,
        limits="Amounts that coins can make, to 20, 50 or 99 of the smaller unit.",
        builds_on=("money.count_mixed",),
        manipulative="CoinTray",
        tasks=5,
        seconds=240,
        words=("cost", "pay"),
        options={"most": MOST, "total": ("shown", "hidden")},
    ),
    Skill(
        id="money.another_way",
        name="Another way",
        title="Make the same amount with other coins",
        standards=("CCSS 2.MD.C.8", "England Y2 measurement 4"),
        limits="1 to 5 coins that can be traded, to 99 of the smaller unit.",
        builds_on=("money.make_amount",),
        manipulative="CoinTray",
        tasks=4,
        seconds=240,
        words=("trade",),
    ),
    Skill(
        id="money.fewest_coins",
        name="Fewest coins",
        title="Make an amount with the fewest coins",
        standards=("CCSS 2.MD.C.8", "England Y2 measurement 4"),
        limits="Amounts of two coins or more, to 20, 50 or 99 of the smaller unit.",
        builds_on=("money.another_way",),
        manipulative="CoinTray",
        tasks=4,
        seconds=240,
        words=("fewest",),
        options={"most": MOST},
    ),
    Skill(
        id="money.change",
        name="Change",
        title="Give change by counting up",
        standards=("CCSS 2.MD.C.8", "England Y2 measurement 5"),
        limits="Change from 20, 50 or 100 of the smaller unit.",
        builds_on=("money.make_amount",),
        manipulative="CoinTray",
        tasks=4,
        seconds=240,
        words=("price", "change", "count up"),
        options={"paid": ("any", 20, 50, 100)},
    ),
)
