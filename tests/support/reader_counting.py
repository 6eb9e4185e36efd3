"""Reads the worked steps of counting as a pupil would who checks every number in them.

The reader works everything out from what is said, and uses nothing of the kit. Where a sentence
says what is not so, or has a form it does not know, it raises AssertionError.
"""

from __future__ import annotations

import re
from itertools import pairwise

STEPS = {"ones": 1, "twos": 2, "threes": 3, "fives": 5, "tens": 10, "hundreds": 100}
UNITS = {"ten": 10, "hundred": 100}


def integers(text):
    return [int(number) for number in re.findall(r"\d+", text)]


def _count(way, name, row):
    numbers = integers(row)
    by = STEPS[name] if way == "on" else -STEPS[name]
    assert len(numbers) > 1
    assert all(after - before == by for before, after in pairwise(numbers))


def _step(amount, word, at, result):
    by = int(amount) if word == "more" else -int(amount)
    assert int(at) + by == int(result)


def _last_of(at, unit):
    assert (int(at) + 1) % UNITS[unit] == 0


def _first_of(at, unit):
    assert int(at) % UNITS[unit] == 0


def _has(at, many, unit, ending):
    assert int(at) // UNITS.get(unit, 1) == int(many)
    assert (int(many) == 1) == (not ending)


def _has_ones(number, many, ending):
    assert int(number[-1]) == int(many)
    assert (int(many) == 1) == (not ending)


def _one_more(unit, word, many, again, ending):
    assert unit == again
    assert (int(many) == 1) == (not ending)
    assert word in ("more", "less")


def _between(middle, low, high):
    assert int(low) < int(middle) < int(high)
    assert int(high) - int(low) == 2


def _each(first, second, amount, word):
    assert int(second) - int(first) == (int(amount) if word == "more" else -int(amount))


def _twos(row):
    assert integers(row) == [number for number in range(10) if number / 2 == number // 2]


def _among(ones, among, number, parity):
    assert number[-1] == ones
    is_even = ones in "02468"
    assert (among == "one") == is_even
    assert (parity == "even") == is_even


def _parity(number, parity):
    assert (parity == "even") == (int(number) / 2 == int(number) // 2)


def _how_many(said, verb, many):
    assert said == many
    assert (verb == "is") == (many == "1")


def _true(*_):
    """The sentence asks to do something and claims nothing."""


FORMS = {
    r"Count (on|back) in (\w+): ([\d, ]+)\.": _count,
    r"(\d+) (more|less) than (\d+) is (\d+)\.": _step,
    r"(\d+) is the last of its (ten|hundred)\.": _last_of,
    r"(\d+) is the first of its (ten|hundred)\.": _first_of,
    r"(\d+) has (\d+) (ten|hundred)(s?)\.": _has,
    r"(\d+) has (\d+) one(s?)\.": _has_ones,
    r"1 (ten|hundred) (more|less) is (\d+) (ten|hundred)(s?)\.": _one_more,
    r"Find (\d+)\.": _true,
    r"Find (\d+) and (\d+)\.": _true,
    r"Start at (\d+)\.": _true,
    r"(\d+) is between (\d+) and (\d+)\.": _between,
    r"From (\d+) to (\d+): each number is (\d+) (more|less)\.": _each,
    r"Twos from zero end in ([\d, ]+)\.": _twos,
    r"(\d) is (one|none) of them: (\d+) is (even|odd)\.": _among,
    r"(\d+) is (even|odd)\.": _parity,
    r"Count one by one\.": _true,
    r"Put out one by one and count\.": _true,
    r"(\d+) was said last: there (is|are) (\d+)\.": _how_many,
}


def read(say):
    """Check every sentence of a step."""
    sentences = re.findall(r"[^.]+\.", say)
    assert "".join(sentences) == say
    before = ""
    for sentence in map(str.strip, sentences):
        assert len(sentence.split()) <= 10, sentence
        for form, check in FORMS.items():
            match = re.fullmatch(form, sentence)
            if match:
                check(*match.groups())
                break
        else:
            raise AssertionError(f"What does {sentence!r} mean?")
        if sentence.startswith("1 ") and " has " in before:
            # "95 has 9 tens." "1 ten more is 10 tens."
            many, now = integers(before)[1], integers(sentence)[1]
            assert now - many == (1 if " more " in sentence else -1)
            assert (" ten" in before) == (" ten" in sentence)
        before = sentence
