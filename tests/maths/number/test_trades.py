from __future__ import annotations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from manipulatives.maths.number.mats import mat_equation, mat_facts
from manipulatives.maths.number.place_value import (
    PLACES,
    WORTH,
    check_blocks,
    fewest,
    number_of,
    pieces_of,
    representations,
)
from manipulatives.maths.number.trades import (
    Trade,
    step_equation,
    trade_between,
    trade_down,
    trade_equation,
    trade_up,
    trades_of,
)
from support.blocks import blocks
from support.cases import cases

STEPS = cases("block_steps")


def done(some, trade):
    return (trade_up if trade.way == "up" else trade_down)(some, trade.place)


@given(blocks(), st.data())
def test_each_trade_changes_the_pieces_by_nine_and_never_the_value(some, data):
    trades = trades_of(some)
    assume(trades)
    trade = data.draw(st.sampled_from(trades))
    after = done(some, trade)
    assert number_of(after) == number_of(some)
    assert pieces_of(after) - pieces_of(some) == (-9 if trade.way == "up" else 9)
    assert trade_between(some, after) == trade


@given(blocks(), st.data())
def test_each_trade_can_be_traded_back(some, data):
    trades = trades_of(some)
    assume(trades)
    trade = data.draw(st.sampled_from(trades))
    after = done(some, trade)
    other = PLACES[PLACES.index(trade.place) + (-1 if trade.way == "up" else 1)]
    back = (trade_down if trade.way == "up" else trade_up)(after, other)
    assert back == some


@given(blocks())
def test_trading_up_for_as_long_as_one_can_leaves_the_fewest(some):
    number, steps = number_of(some), (pieces_of(some) - pieces_of(fewest(number_of(some)))) // 9
    # Some mats hold a thousand ones; go in the order that needs the fewest repetitions.
    assume(steps < 200)
    now = some
    for _ in range(steps):
        now = done(now, next(trade for trade in trades_of(now) if trade.way == "up"))
    assert now == fewest(number)
    assert [trade for trade in trades_of(now) if trade.way == "up"] == []


@pytest.mark.parametrize("number", [35, 100, 123, 210])
def test_trades_lead_from_any_blocks_of_a_number_to_all_the_others(number):
    every = {tuple(shown.values()) for shown in representations(number)}
    reached, waiting = set(), [fewest(number)]
    while waiting:
        shown = waiting.pop()
        if tuple(shown.values()) not in reached:
            reached.add(tuple(shown.values()))
            waiting += [done(shown, trade) for trade in trades_of(shown)]
    assert reached == every


@pytest.mark.parametrize("case", STEPS, ids=lambda case: case["about"])
def test_a_step_is_written_as_in_the_cases(case):
    assert mat_equation(case["before"], case["after"]) == case["equation"]
    if len(case["before"]) == len(case["after"]) == 1:
        trade = trade_between(case["before"][0], case["after"][0])
        assert (None if trade is None else list(trade)) == case["trade"]


@given(blocks(), blocks())
def test_both_sides_of_a_written_step_are_equal(before, after):
    for equation in step_equation(before, after).replace("\N{MINUS SIGN}", "-").split("; "):
        sides = [side for side in equation.split(" = ") if side]
        assert len({evaluated(side) for side in sides}) <= 1


def evaluated(side):
    """What a side of an equation is worth: blocks by their place, numbers by adding them."""
    words = side.split()
    if words[-1].isalpha():
        name = words[1] if words[1].endswith("s") else f"{words[1]}s"
        return int(words[0]) * WORTH[name]
    total, sign = 0, 1
    for word in words:
        if word in "+-":
            sign = 1 if word == "+" else -1
        else:
            total += sign * int(word)
    return total


@given(blocks(), blocks())
def test_two_trades_or_none_are_not_called_one(before, after):
    trade = trade_between(before, after)
    if trade is not None:
        assert number_of(before) == number_of(after)
        assert abs(pieces_of(before) - pieces_of(after)) == 9 * trade.times
        now = before
        for _ in range(trade.times):
            now = done(now, trade)
        assert now == after


def test_equations_are_in_the_words_of_a_lesson():
    assert trade_equation(Trade("ones", "up")) == "10 ones = 1 ten"
    assert trade_equation(Trade("tens", "up")) == "10 tens = 1 hundred"
    assert trade_equation(Trade("thousands", "down")) == "1 thousand = 10 hundreds"


@pytest.mark.parametrize(
    ("place", "trade", "why"),
    [
        ("ones", trade_up, "Ten ones become 1 ten; there are 9. Put more in first."),
        ("thousands", trade_up, "There is no place above the thousands; ten of them stay ten."),
        ("tens", trade_down, "There are no tens to break. Trade for one first."),
        ("ones", trade_down, "There is no place below the ones; a one does not break."),
    ],
)
def test_a_trade_that_cannot_be_says_why(place, trade, why):
    with pytest.raises(ValueError, match=r"\w+") as refused:
        trade({"ones": 9}, place)
    assert str(refused.value) == why


@pytest.mark.parametrize("trade", [Trade("thousands", "up"), Trade("ones", "down")])
def test_there_is_no_equation_of_a_trade_that_there_is_not(trade):
    with pytest.raises(ValueError, match="There is no trade of"):
        trade_equation(trade)


def test_nothing_is_traded_into_a_place_that_is_not_there():
    some = {"tens": 12, "ones": 12}
    assert trades_of(some, 2) == [Trade("ones", "up"), Trade("tens", "down")]
    assert trades_of(some, 3)[-1] == Trade("tens", "up")
    assert trades_of(some, 1) == []


def test_a_trade_leaves_the_blocks_it_was_given_alone():
    some = check_blocks({"tens": 2, "ones": 15})
    trade_up(some, "ones")
    assert some == check_blocks({"tens": 2, "ones": 15})


@given(blocks(4999), blocks(4999))
def test_the_equation_of_putting_together_adds_the_two_numbers(first, second):
    assume(any(first.values()) and any(second.values()))
    both = {place: first[place] + second[place] for place in PLACES}
    one, other = number_of(first), number_of(second)
    assert mat_equation([first, second], [both, {}]) == f"{one} + {other} = {one + other}"
    assert mat_facts([both])["number"] == mat_facts([first, second])["sum"]
