"""Works out the steps and mistakes of place value again, from the digits of the number alone.

Nothing of the kit is used; numbers are written out with num2words. Where a number is not so, or its
sentence says another one, it raises AssertionError.
"""

from __future__ import annotations

import re
from itertools import permutations

from num2words import num2words

from support.sentences import check_length

PLACES = ("ones", "tens", "hundreds", "thousands")
WORTH = {place: 10**at for at, place in enumerate(PLACES)}


def in_words(number, vocabulary):
    words = num2words(number).replace(",", "")
    return words if vocabulary == "uk" else words.replace(" and ", " ")


def integers(text):
    return [int(number) for number in re.findall(r"\d+", text)]


def some(count, place):
    return f"{count} {place[:-1] if count == 1 else place}"


def sign_of(one, other):
    return "<" if one < other else ">" if one > other else "="


class NumberOracle:
    """Follows the steps of one task about one number."""

    def __init__(self, number, vocabulary="us"):
        self.number, self.vocabulary = number, vocabulary
        self.digits = str(number)[::-1]
        self.laid = 0

    def follow(self, step):
        """Check one step."""
        check_length(step.say)
        self.step, self.said = step, integers(step.say)
        numbers = dict(step.numbers)
        given = {"begin": numbers.pop("from")} if "from" in numbers else {}
        getattr(self, f"_{numbers.pop('act')}")(**given, **numbers)

    def digit(self, place):
        """The digit of a place, 0 in front of the number."""
        at = PLACES.index(place)
        return int(self.digits[at]) if at < len(self.digits) else 0

    def _worth(self, place, digit, worth):
        # A ten is looked at by itself when the number is a ten and some ones.
        assert digit == self.digit(place)
        assert worth == sum(10 ** PLACES.index(place) for _ in range(digit))
        if digit:
            assert self.step.say == f"{some(digit, place)} {'is' if digit == 1 else 'are'} {worth}."
            assert self.step.chant == f"{worth}"
        else:
            assert re.search(rf"\bno {place}\b", self.step.say.lower())
            assert self.said in ([], [0])
            assert self.step.chant in {"0", f"no {place}"}

    def _stands(self, digit, place):
        assert digit == self.digit(place)
        assert self.step.say == f"The {digit} stands for {place}."
        assert self.step.chant == place

    def _regroup(self, place, count, into, left):
        assert PLACES.index(into) == PLACES.index(place) + 1
        assert count * WORTH[place] == WORTH[into] + left * WORTH[place]
        assert left < 10
        assert self.on_mat() == self.number
        assert self.step.chant == f"1 {into[:-1]}"
        assert self.step.say.startswith(f"{some(count, place)} are 1 {into[:-1]}")
        assert self.said == [count, 1, *([left] if " and " in self.step.say else [])]
        assert left == 0 or self.step.say.endswith(f"{some(left, place)}.")

    def _add(self, terms, total):
        assert sum(terms) == total == self.number
        assert terms == sorted(terms, reverse=True)
        assert 0 not in terms
        form = " + ".join(map(str, terms))
        if len(terms) == 1:
            assert self.step.say == f"We write {total}."
        else:
            assert self.step.say in (f"{form} = {total}.", f"{total} = {form}.")
        # Each term is a digit with its worth; so are a ten and some ones.
        assert all(len(str(term).rstrip("0")) == 1 for term in terms)
        assert self.step.answer in {str(total), form, str(terms[-1])}
        assert self.step.chant == self.step.answer

    def _part(self, part, place, digit):
        assert digit == self.digit(place)
        assert part == digit * WORTH[place]
        self.together(part)
        assert self.step.say == f"{part} is {some(digit, place)}."
        assert self.step.chant == f"{part}"

    def _lay(self, place, digit, so_far):
        assert digit == self.digit(place)
        self.laid += digit * WORTH[place]
        assert so_far == self.laid == self.on_mat()
        assert self.step.say == f"Put out {some(digit, place)}: {so_far}."
        assert self.step.chant == f"{so_far}"

    def _say(self, number):
        words = in_words(number, self.vocabulary)
        assert self.said == [number]
        assert self.step.chant in {words, f"{number}"}
        assert re.search(rf"(^|as |is ){re.escape(words)}( is \d+)?\.$", self.step.say.lower())
        if number == self.number:
            return
        # One part after the other is said: thousands, hundreds, and the rest in one word or two.
        rest = self.number % 100
        below = {rest} if rest < 20 else {rest - rest % 10, rest % 10}
        assert (
            number in {int(digit) * 10**at for at, digit in enumerate(self.digits[2:], 2)} | below
        )
        if "mat" in self.step.show:
            self.together(number)

    def together(self, part):
        """Put a part to those before it; the mat shows them together."""
        self.laid += part
        assert self.on_mat() == self.laid

    def on_mat(self):
        """The number that the blocks of the step show."""
        [blocks] = self.step.show["mat"]
        return sum(count * WORTH[place] for place, count in blocks.items())

    def _digits(self, number, digits):
        assert number == self.number
        assert digits == {PLACES[at]: int(digit) for at, digit in enumerate(self.digits)}
        named = [some(int(d), PLACES[at]) for at, d in enumerate(self.digits)][::-1]
        assert self.step.say == f"{number} is {', '.join(named)}."
        assert self.step.chant == ", ".join(named)

    def _count(self, begin, by, to, counted):
        assert (begin, by) == (10, 1)
        assert to == self.number
        assert counted == list(range(11, to + 1))
        assert self.step.chant == ", ".join(map(str, counted))
        assert self.said in ([10, to], [10, to - 10])
        if " more" in self.step.say:
            assert self.step.say.endswith(f"{some(to - 10, 'ones')} more.")


class PairOracle:
    """Follows the steps in which two numbers, or three, are compared."""

    def __init__(self, *numbers):
        self.pair, self.rest, self.numbers = list(numbers[:2]), numbers[2:], numbers
        self.begin()

    def begin(self):
        """Begin with the largest place of two numbers."""
        self.at = len(str(max(self.pair))) - 1
        self.sign = None

    def follow(self, step):
        """Check one step."""
        check_length(step.say)
        numbers = dict(step.numbers)
        act = numbers.pop("act")
        if act == "compare" and "digits" in numbers:
            self.place(step, **numbers)
        elif act == "compare":
            one, other = numbers["numbers"]
            assert [one, other] == self.pair
            assert numbers["sign"] == sign_of(one, other)
            assert self.sign == numbers["sign"] or (self.sign is None and self.at == -1)
            assert step.say == f"{one} {numbers['sign']} {other}."
        elif act == "keep":
            chosen, third = numbers["number"], numbers["with"]
            assert chosen in self.pair
            assert third in self.rest
            assert step.say == f"Keep {chosen} and compare it with {third}."
            self.pair = [chosen, third]
            self.begin()
        else:
            assert act == "end"
            row = sorted(self.numbers)
            assert numbers["number"] == row[-1 if numbers["which"] == "greatest" else 0]
            assert step.say == f"{numbers['number']} is the {numbers['which']}."
            assert step.chant == f"{numbers['number']}"

    def place(self, step, place, digits, sign):
        """Check what is said of one place."""
        assert self.sign is None, "it is decided already"
        assert place == PLACES[self.at]
        assert digits == [int(str(number).zfill(4)[-1 - self.at]) for number in self.pair]
        assert sign == sign_of(*digits)
        words = {"<": "{} is less than {}", ">": "{} is more than {}", "=": "{} and {} are equal"}
        assert step.say == f"{place.capitalize()}: {words[sign].format(*digits)}."
        self.sign = None if sign == "=" else sign
        self.at -= 1


KEYS = {
    "last digit": lambda number: number % 10,
    "first digit": lambda number: int(str(number)[0]),
    "digit sum": lambda number: sum(map(int, str(number))),
}


def wrong_of(numbers):
    """Run the procedure of a mistake and return what comes out."""
    does = {key: value for key, value in numbers.items() if key not in {"act", "wrong"}}
    return {
        "write": _wrong_number,
        "expand": _wrong_form,
        "take ten": _wrong_ones,
        "value": _wrong_worth,
        "compare": _wrong_sign,
        "order": _wrong_end,
    }[numbers["act"]](**does)


def _parts(number):
    return [int(d) * 10**at for at, d in enumerate(str(number)[::-1]) if d != "0"][::-1]


def _beside(parts):
    return int("".join(map(str, parts)))


def _wrong_number(number, **how):
    text = str(number)
    given = {
        key: how.pop(key) for key in ("blocks", "parts") if isinstance(how.get(key), dict | list)
    }
    [(what, which)] = how.items()
    hundreds, rest = number // 100 * 100, number % 100
    teens = {10 + n: 10 * n for n in range(3, 10)}
    heard = teens | {tens: teen for teen, tens in teens.items()}
    return {
        ("digits", "added"): lambda: sum(map(int, text)),
        ("digits", "swapped"): lambda: int(text[:-2] + text[-1] + text[-2]),
        ("digits", "from the right"): lambda: int(text[::-1]),
        ("parts", "beside"): lambda: _beside(_parts(number)),
        ("parts", "as said"): lambda: _beside([hundreds, rest]),
        ("zeros", "left out"): lambda: int(text.replace("0", "")),
        ("heard", "teen for ty"): lambda: hundreds + heard[rest],
        ("counts", "beside"): lambda: _beside(given["blocks"].values()),
        ("order", "as they come"): lambda: _beside(str(part)[0] for part in given["parts"]),
    }[what, which]()


def _wrong_form(number, **how):
    [(what, which)] = how.items()
    digits = str(number)
    with_zeros = [int(d) * 10**at for at, d in enumerate(digits[::-1])][::-1]
    return {
        ("each", "digit"): lambda: " + ".join(d for d in digits if d != "0"),
        ("zeros", "as parts"): lambda: " + ".join(map(str, with_zeros)),
        ("zeros", "left out"): lambda: " + ".join(map(str, _parts(digits.replace("0", "")))),
        ("parts", "beside"): lambda: f"{_beside(_parts(number))}",
    }[what, which]()


def _wrong_ones(number, *, takes=None, start_counted=False):
    if takes == "all":
        return number
    return len(range(10, number)) + start_counted


def _wrong_worth(number, place, *, worth=None, places=0):
    digit = str(number)[-1 - PLACES.index(place)]
    if worth == "digit":
        return int(digit)
    if worth == "rest":
        return int(str(number)[-1 - PLACES.index(place) :])
    return int(digit) * 10 ** (PLACES.index(place) + places)


def _wrong_sign(numbers, *, key=None, sign=None):
    right = sign_of(*numbers)
    if sign == "turned":
        return {"<": ">", ">": "<"}[right]
    return sign_of(*map(KEYS[key], numbers))


def _wrong_end(numbers, which, *, key=None, end=None):
    greatest = which == "greatest"
    if end == "other":
        return sorted(numbers)[0 if greatest else -1]
    # The one that comes out before both others by that key alone.
    [found] = {
        row[0]
        for row in permutations(numbers)
        if all((KEYS[key](row[0]) > KEYS[key](other)) if greatest else
               (KEYS[key](row[0]) < KEYS[key](other)) for other in row[1:])
    }  # fmt: skip
    return found
