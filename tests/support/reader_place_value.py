# ruff: noqa: D102 - each method is named after the sentence that it understands
"""Reads the worked steps of place value as a pupil would who checks every number in them.

The reader knows the number that the task is about, in its own digits, and works everything else
out from what is said. It uses nothing of the kit. Where a sentence says what is not so, or has a
form it does not know, it raises AssertionError.
"""

from __future__ import annotations

import re

from num2words import num2words

WORTH = {"one": 1, "ten": 10, "hundred": 100, "thousand": 1000}
PLACES = ("ones", "tens", "hundreds", "thousands")
AMOUNT = r"(\d+) (one|ten|hundred|thousand)(s?)"


def in_words(number, vocabulary):
    words = num2words(number).replace(",", "")
    return words if vocabulary == "uk" else words.replace(" and ", " ")


def amounts(text):
    """Return the worth of each number of blocks that is named, and check one against many."""
    found = re.findall(AMOUNT, text)
    assert all((count == "1") == (not ending) for count, _, ending in found), text
    return [int(count) * WORTH[one] for count, one, _ in found]


class Reader:
    """Follows the steps of one task about one number."""

    def __init__(self, number, vocabulary="us"):
        self.number, self.vocabulary = number, vocabulary
        self.digits = str(number)[::-1]
        self.put_out = 0

    def read(self, say):
        """Check every sentence of a step."""
        assert len(say) <= 200
        for sentence in re.findall(r"[^.]+\.", say):
            text = sentence.strip()
            assert len(text.split()) <= 10, text
            for form, check in FORMS.items():
                match = re.fullmatch(form, text)
                if match:
                    check(self, text, *match.groups())
                    break
            else:
                raise AssertionError(f"What does {text!r} mean?")

    def digit(self, place):
        return self.digits[PLACES.index(place)]

    def traded(self, text, *_):
        whole, larger, rest = amounts(text)
        assert whole == larger + rest
        assert rest < larger

    def worth(self, text, *groups):
        (worth,) = amounts(text)
        assert worth == int(groups[-1])
        assert (" is " in text) == text.startswith("1 ")
        self.has_part(worth)

    def has_part(self, part):
        assert part in [int(digit) * 10**at for at, digit in enumerate(self.digits)]

    def empty(self, _, place):
        assert self.digit(place) == "0"

    def joined(self, _, parts, number):
        assert sum(map(int, parts.split(" + "))) == int(number) == self.number

    def expanded(self, _, number, parts):
        listed = [int(part) for part in parts.split(" + ")]
        assert 0 not in listed
        assert listed == sorted(listed, reverse=True)
        assert all(len(str(part).rstrip("0")) == 1 for part in listed)
        assert sum(listed) == int(number) == self.number

    def written(self, _, number):
        assert int(number) == self.number

    def laid(self, text, *groups):
        (worth,) = amounts(text.partition(":")[0])
        self.has_part(worth)
        self.put_out += worth
        assert self.put_out == int(groups[-1])

    def said_part(self, _, words, number):
        assert words.lower() == in_words(int(number), self.vocabulary)
        assert int(number) <= self.number

    def said_as(self, _, number, words):
        assert words == in_words(int(number), self.vocabulary)
        assert int(number) <= self.number

    def part_is(self, text, part, *_):
        (worth,) = amounts(text)
        assert worth == int(part)
        self.has_part(worth)

    def named(self, text, number, _):
        assert int(number) == self.number
        worths = [int(digit) * 10**at for at, digit in enumerate(self.digits)]
        assert amounts(text.partition(" is ")[2]) == worths[::-1]

    def stands_for(self, _, digit, place):
        assert self.digit(place) == digit

    def ten_ones(self, text):
        assert amounts(text) == [10, 10]

    def count_more(self, text, *_):
        (worth,) = amounts(text.partition(":")[2])
        assert 10 + worth == self.number

    def count_to(self, _, number):
        assert int(number) == self.number


FORMS = {
    rf"{AMOUNT} are 1 (?:ten|hundred|thousand) and {AMOUNT}\.": Reader.traded,
    r"10 ones are 1 ten\.": Reader.ten_ones,
    rf"{AMOUNT} (?:is|are) (\d+)\.": Reader.worth,
    r"There are no (\w+): write 0\.": Reader.empty,
    r"No (\w+): the place stays empty\.": Reader.empty,
    r"No (\w+): nothing to add\.": Reader.empty,
    r"((?:\d+ \+ )+\d+) = (\d+)\.": Reader.joined,
    r"(\d+) = ((?:\d+ \+ )+\d+)\.": Reader.expanded,
    r"We write (\d+)\.": Reader.written,
    rf"Put out {AMOUNT}: (\d+)\.": Reader.laid,
    r"We say (\d+) as ([a-z -]+)\.": Reader.said_as,
    rf"(\d+) is {AMOUNT}\.": Reader.part_is,
    r"(\d+) is (\d+ \w+(?:, \d+ \w+)+)\.": Reader.named,
    r"(\d+) is ([a-z -]+)\.": Reader.said_as,
    r"([A-Z][a-z -]+) is (\d+)\.": Reader.said_part,
    r"The (\d) stands for (\w+)\.": Reader.stands_for,
    rf"Count on from 10: {AMOUNT} more\.": Reader.count_more,
    r"Count on from 10 to (\d+)\.": Reader.count_to,
}


class Comparer:
    """Follows the steps in which two numbers, or three, are compared."""

    def __init__(self, *numbers):
        self.pair, self.rest = numbers[:2], numbers[2:]
        self.numbers = numbers
        self.begin()

    def begin(self):
        self.at = len(str(max(self.pair))) - 1
        self.sign = None

    def read(self, say):
        """Check a step."""
        assert len(say.split()) <= 10
        if match := re.fullmatch(r"(\w+): (\d) and (\d) are equal\.", say):
            self.digits(*match.groups())
            assert match[2] == match[3]
        elif match := re.fullmatch(r"(\w+): (\d) is (less|more) than (\d)\.", say):
            self.digits(match[1], match[2], match[4])
            self.sign = {"less": "<", "more": ">"}[match[3]]
            assert (int(match[2]) < int(match[4])) == (self.sign == "<")
            assert match[2] != match[4]
        elif match := re.fullmatch(r"(\d+) ([<=>]) (\d+)\.", say):
            assert (int(match[1]), int(match[3])) == self.pair
            order = [*self.pair] if match[2] == "<" else [*reversed(self.pair)]
            assert (order[0] < order[1]) == (match[2] != "=")
            assert self.sign == match[2] or (self.sign is None and self.at == -1)
        elif match := re.fullmatch(r"Keep (\d+) and compare it with (\d+)\.", say):
            assert int(match[1]) in self.pair
            assert int(match[2]) in self.rest
            self.pair = (int(match[1]), int(match[2]))
            self.begin()
        elif match := re.fullmatch(r"(\d+) is the (greatest|smallest)\.", say):
            ordered = sorted(self.numbers)
            assert int(match[1]) == ordered[-1 if match[2] == "greatest" else 0]
        else:
            raise AssertionError(f"What does {say!r} mean?")

    def digits(self, place, *digits):
        assert self.sign is None, "it is decided already"
        assert place == PLACES[self.at].capitalize()
        for number, digit in zip(self.pair, digits, strict=True):
            assert str(number).zfill(4)[-1 - self.at] == digit
        self.at -= 1
