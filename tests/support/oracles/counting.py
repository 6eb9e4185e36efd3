"""Works out the steps and mistakes of counting again, from their numbers alone.

Nothing of the kit is used. Where a number is not so, or its sentence says another one, it raises
AssertionError.
"""

from __future__ import annotations

import re
from itertools import pairwise

from support.sentences import check_length

STEPS = {"ones": 1, "twos": 2, "threes": 3, "fives": 5, "tens": 10, "hundreds": 100}
NAMES = {10: "ten", 100: "hundred"}


def integers(text):
    return [int(number) for number in re.findall(r"\d+", text)]


def follow(step):
    """Check one step of a task."""
    check_length(step.say)
    numbers = dict(step.numbers)
    given = {"begin": numbers.pop("from")} if "from" in numbers else {}
    ACTS[numbers.pop("act")](step, integers(step.say), **given, **numbers)


def _named(step, numbers):
    assert step.chant == ", ".join(map(str, numbers))


def _find(step, said, numbers):
    assert said == numbers
    _named(step, numbers)


def _count(step, said, *, begin, by, to, counted):
    assert by != 0
    assert all(after - before == by for before, after in pairwise(counted))
    _named(step, counted)
    if "one by one" in step.say:
        assert counted == list(range(begin + 1, to + 1))
        assert (begin, by) == (0, 1)
        return
    assert (counted[0], counted[-1]) == (begin, to)
    if "zero" in step.say:
        assert (begin, by, to) == (0, 2, 8)
        assert said == counted
    else:
        way, name = re.match(r"Count (on|back) in (\w+): ", step.say).groups()
        assert by == (STEPS[name] if way == "on" else -STEPS[name])
        assert said == counted


def _step(step, said, *, begin, by, to, border=None):
    assert begin + by == to
    assert step.chant == f"{to}"
    assert said[-3:] == [abs(by), begin, to]
    assert (" more than " in step.say) == (by > 0)
    assert (" less than " in step.say) == (by < 0)
    if border is None:
        assert len(said) == 3
        return
    assert said[:-3] == [begin]
    assert f" of its {NAMES[border]}." in step.say
    assert abs(by) == 1
    assert begin // border != to // border
    assert ("last" in step.say) == (by > 0)
    assert ("first" in step.say) == (by < 0)


def _units(step, said, *, number, unit, many, now):
    assert many == len(range(unit, number + 1, unit))
    assert abs(now - many) == 1
    assert said == [number, many, 1, now]
    assert (" more " in step.say) == (now > many)
    assert step.chant == f"{now} {NAMES[unit]}{'' if now == 1 else 's'}"
    for count in (many, now):
        assert re.search(rf"\b{count} {NAMES[unit]}{'' if count == 1 else 's'}\.", step.say)


def _between(step, said, low, high, number):
    assert low < number < high
    assert high - low == 2
    assert said == [number, low, high]
    assert step.chant == f"{number}"


def _size(step, said, begin, to, by):
    assert begin + by == to
    assert said == [begin, to, abs(by)]
    assert step.chant == f"{abs(by)} {'more' if by > 0 else 'less'}"
    assert step.say.endswith(f"{step.chant}.")


def _ones(step, said, number, ones):
    assert ones == int(str(number)[-1])
    assert said == [number, ones]
    assert step.chant == f"{ones} one{'' if ones == 1 else 's'}"


def _parity(step, said, number, ones, word):
    assert ones == int(str(number)[-1])
    # Even numbers are two equal parts.
    assert word == ("even" if number // 2 + number // 2 == number else "odd")
    assert step.say.endswith(f"{number} is {word}.")
    assert set(said) <= {number, ones}
    if "of them" in step.say:
        assert (" one of them" in step.say) == (word == "even")
        assert (" none of them" in step.say) == (word == "odd")
    assert step.chant in {word, f"{number} is {word}"}


def _total(step, said, many):
    assert said == [many, many]
    assert (" is " in step.say) == (many == 1)
    assert step.chant == f"{many}"


ACTS = {
    "find": _find,
    "start": _find,
    "count": _count,
    "step": _step,
    "units": _units,
    "between": _between,
    "size": _size,
    "ones": _ones,
    "parity": _parity,
    "total": _total,
}


def wrong_of(numbers):
    """Run the procedure of a mistake and return what comes out, for each place it starts from."""
    does = {key: value for key, value in numbers.items() if key not in {"act", "wrong"}}
    act = numbers["act"]
    if act == "count":
        return len(range(does["many"])) + does["times"] - 1
    if act == "parity":
        return _wrong_parity(**does)
    if act == "next":
        return _wrong_next(**does)
    at, by = does.pop("at"), does.pop("by")
    if isinstance(at, list):
        return [_wrong_step(one, by, **does) for one in at]
    return _wrong_step(at, by, **does)


def _wrong_step(at, by, **does):
    """Take a step of a count in the wrong way that `does` names."""
    [(what, how)] = does.items()
    way, end = (1 if by > 0 else -1), at + by
    multiples = range(0, at + abs(by) + 1, abs(by))
    beyond = [number for number in multiples if (number > at if by > 0 else number < at)]
    tens = str(at // 10) if at >= 10 else ""
    return {
        "tens": lambda: end + 10 * way if how == "one left out" else int(f"{tens}{end % 10}"),
        "unit": lambda: at // 100 * 100 + 100 if how == 100 else at + how * way,
        "direction": lambda: at - by,
        "ends_at": lambda: beyond[0] if by > 0 else beyond[-1],
        "from": lambda: how + by,
        # The first step is said before moving.
        "start_counted": lambda: range(at, end, way)[-1],
        "more": lambda: end + how * way,
        "written": lambda: int(f"{tens}{at % 10 + 1}"),
    }[what]()


def _wrong_parity(number, *, digit=None, words=None):
    even = int(str(number)[0 if digit == "first" else -1]) in (0, 2, 4, 6, 8)
    if words == "swapped":
        even = not even
    return "even" if even else "odd"


def _wrong_next(number, wanted, *, on=0, direction=None):
    if direction == "back":
        return next(n for n in (number - 1, number - 2) if (n % 2 == 0) == (wanted == "even"))
    return number + on
