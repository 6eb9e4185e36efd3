"""Runs the procedures of mistakes in sums, stories and statements, from their numbers alone.

Nothing of the kit is used: written sums are worked on digits, wrong in the one way that is named.
"""

from __future__ import annotations


def wrong_of(numbers):
    """Run the procedure of a mistake and return what comes out, None where nobody can say."""
    numbers = {key: value for key, value in numbers.items() if key != "wrong"}
    given = {"begin": numbers.pop("from")} if "from" in numbers else {}
    acts = {"add": wrong_sum, "take": wrong_difference, "answer": wrong_number, "lay": wrong_whole,
            "judge": wrong_judgement}  # fmt: skip
    wrong = acts[numbers.pop("act")](**given, **numbers)
    # Nobody writes a number below 0.
    return None if isinstance(wrong, int) and wrong < 0 else wrong


def column(number, at):
    """The digit of a number in a column, counted from the ones, or None."""
    digits = str(number)
    return int(digits[-1 - at]) if at < len(digits) else None


def columns_of(numbers):
    """The digits of each column that are written, the ones first."""
    width = max(len(str(number)) for number in numbers)
    rows = [[column(number, at) for number in numbers] for at in range(width)]
    return [[digit for digit in row if digit is not None] for row in rows]


# Additions


def wrong_sum(terms, **does):
    """What comes out of an addition that is done in another way."""
    [(what, how)] = does.items()
    right = sum(terms)
    if what == "operation":
        return max(terms) - (right - max(terms))
    if what == "start_counted":
        # The first number counted is where the count starts, so one hop is missing.
        return terms[0] + sum(terms[1:]) - 1
    if what == "digits":
        return sum(int(digit) for number in terms for digit in str(number))
    laid = columns_of(terms)
    if what == "lined_up":
        rows = [str(number) for number in terms]
        places = range(max(map(len, rows)))
        laid = [[int(row[at]) for row in rows if at < len(row)] for at in places][::-1]
    if what == "small_number":
        small = [number for number in terms if number < 10]
        if small and len(small) < len(terms):
            laid = [laid[0], *([*digits, *small] for digits in laid[1:])]
    if what == "begins":
        laid = laid[::-1]
    written, carry = [], 0
    for at, digits in enumerate(laid):
        total = carry + _made_of(digits, how if what == "zero" else "")
        if at == len(laid) - 1:
            written.append(total)
        else:
            digit, carry = _split(total, carry, len(laid[at + 1]), what, how)
            written.append(digit)
    return int("".join(map(str, written if what == "begins" else written[::-1])))


def _made_of(digits, zero):
    if 0 in digits and len(digits) > 1 and zero == "makes zero":
        return 0
    return sum(digits) + (zero == "counts as one" and 0 in digits and sum(digits) > 0)


def _split(total, carried, digits_next, what, how):
    """What is written of the total of a column, and what is carried on."""
    tens, ones = total // 10, total % 10
    if what == "written":
        if how == "whole total":
            return total, 0
        return (tens, ones) if tens else (ones, 0)
    if what == "carry":
        tens = {
            "left out": 0,
            "added again": carried + tens,
            "always 1": 1,
            "lost over a gap": 0 if digits_next == 1 else tens,
        }[how]
    return ones, tens


# Subtractions


def wrong_difference(begin, take, **does):
    """What comes out of a subtraction that is done in another way."""
    [(what, how)] = does.items()
    if what == "operation":
        return begin + take
    if what == "start_counted":
        # The first number counted is where the count starts, so one hop is missing.
        return begin - (take - 1)
    return _Wrong(begin, take, what, how).result()


class _CannotGoOnError(Exception):
    """Nobody can say what is written now."""


class _Wrong:
    def __init__(self, upper, lower, what, how):
        self.printed = [int(digit) for digit in reversed(str(upper))]
        self.upper = list(self.printed)
        self.lower = [column(lower, at) for at in range(len(self.upper))]
        self.what, self.how, self.regrouped = what, how, False
        if what == "gap" and how == "last lower digit again":
            self.lower = [int(str(lower)[0]) if digit is None else digit for digit in self.lower]

    def is_(self, what, how):
        return (self.what, self.how) == (what, how)

    def result(self):
        ends = self.is_("gap", "left out")
        places = [at for at, digit in enumerate(self.lower) if digit is not None or not ends]
        try:
            digits = [self.digit(at) for at in places]
        except _CannotGoOnError:
            return None
        if min(digits) < 0 or max([0, *digits[:-1]]) > 9:
            return None
        return int("".join(map(str, reversed(digits))))

    def digit(self, at):
        """What is written in a column."""
        upper, under = self.upper[at], self.lower[at]
        lower = under or 0
        shortcuts = {
            ("too_small", "smaller from larger"): (upper < lower, lower - upper),
            ("too_small", "0"): (upper < lower, 0),
            ("zero_above", "lower digit"): (upper == 0 < lower, lower),
            ("zero_above", "0"): (upper == 0 < lower, 0),
            ("printed_zero_above", "lower digit"): (
                upper == self.printed[at] == 0 < lower,
                lower,
            ),
            ("zero_below", "0"): (under == 0, 0),
            ("equal_digits", "stay"): (under == upper, upper),
        }
        holds, written = shortcuts.get((self.what, self.how), (False, 0))
        if holds:
            return written
        if upper < lower:
            self.give(at + 1)
            self.regrouped = True
            is_one = self.what == "one_gains" and upper == self.printed[at] == 1
            return (int(self.how) if is_one else upper + 10) - lower
        if self.regrouped and self.what == "regroups" and at + 1 < len(self.upper):
            self.give(at + 1)
        return upper - lower

    def give(self, at):
        """Take one from a column for the one before it."""
        if at >= len(self.upper):
            raise _CannotGoOnError
        if not self.give_wrongly(at):
            if self.upper[at] == 0:
                self.upper[at] = 9
                self.give(at + 1)
            else:
                self.upper[at] -= 1

    def give_wrongly(self, at):
        """Take one in the wrong way that is named, if it applies here."""
        upper = self.upper
        match self.what:
            case "next_gives":
                place = len(upper) - 1 if self.how == "front place" else at
                upper[place] += {"nothing": 0, "one more": 1, "front place": -1}[self.how]
                if upper[place] < 0:
                    raise _CannotGoOnError
                return True
            case "one_gives" if upper[at] == 1:
                upper[at] = 9
                self.give(at + 1)
                return True
            case "equal_digits" if self.how == "give nothing" and self.lower[at] == upper[at]:
                self.give(at + 1)
                return True
            case "gap_gives":
                return self.lower[at] is None
            case "zero_gives":
                return self.zero_gives(at)
        return False

    def zero_gives(self, at):
        is_zero, ten = self.upper[at] == 0, self.upper[at + 1 :] == [1]
        match self.how:
            case "next gives, zero stays" if self.printed[at] == 0:
                self.give(at + 1)
            case "10" if is_zero:
                self.upper[at] = 10
                self.give(at + 1)
            case "lower digit" if is_zero:
                if not self.lower[at]:
                    raise _CannotGoOnError
                self.lower[at] -= 1
            case "nothing" if is_zero:
                pass
            case "9" | "9 unless in a leading 10" if is_zero and not (ten and len(self.how) > 1):
                self.upper[at] = 9
            case _:
                return False
        return True


# Stories, missing numbers and statements


def wrong_number(shown, right, **does):
    """What is answered instead of the right number."""
    [(what, how)] = does.items()
    if what == "more":
        return right + how
    if what == "number":
        return shown[0] if how == "first" else shown[1]
    assert what == "operation"
    return sum(shown) if how == "+" else max(shown) - min(shown)


def wrong_whole(whole, *, more=0, parts=""):
    """How many lie on two mats; all on one are as many as there should be."""
    assert bool(more) != (parts == "one")
    return whole + more


def wrong_judgement(form, numbers, **does):
    """How a statement is judged by who reads it in the wrong way that is named."""
    [(what, _)] = does.items()
    a, b, c, d = numbers
    if what == "sum":
        # Only a sum in front of the equal sign is taken for one.
        true = form != "sum last" and a + b == c
    elif what == "reads":
        true = a + b == c
    elif what == "order":
        true = form == "turned difference"
    else:
        near = {a + b - 1, a + b + 1}
        assert a + b - (c + d) in (-1, 0, 1)
        true = a + b != c + d and c + d in near
    return "true" if true else "false"
