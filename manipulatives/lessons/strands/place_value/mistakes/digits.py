"""Foreseeable errors of reading and writing numbers by their places, as pure functions.

That 345 is written as 300405 or 30045, as it is said; that 305 loses its zero; that fourteen turns
into 41 or forty: all common knowledge of teachers. The rules are our exact statements, from no
published table.
"""

from __future__ import annotations

from collections.abc import Sequence

from manipulatives.maths.number.place_value import Blocks, expanded_form, fewest, parts_of

TEN = 10
HUNDRED = 100
TEENS = range(13, 20)


def digit_sum(number: int) -> int:
    """Return the sum of the digits.

    Example:
        >>> digit_sum(345)
        12
    """
    return sum(map(int, str(number)))


def digits_added(number: int) -> int | None:
    """Return what is written when the blocks are counted, or the digits added.

    Returns:
        The wrong answer, or None where the error does not show; this holds for all rules below.

    Example:
        >>> digits_added(345), digits_added(5)
        (12, None)
    """
    return _unless(number, digit_sum(number))


def parts_beside(number: int) -> int | None:
    """Return what is written when the worth of each digit is put beside the others.

    Example:
        >>> parts_beside(345), parts_beside(305), parts_beside(40)
        (300405, 3005, None)
    """
    return _unless(number, _joined(parts_of(fewest(number))))


def said_literally(number: int) -> int | None:
    """Return what is written when each part of the words becomes digits: "300" and "45".

    Example:
        >>> said_literally(345), said_literally(45), said_literally(300)
        (30045, None, None)
    """
    hundreds, rest = divmod(number, HUNDRED)
    return _joined([hundreds * HUNDRED, rest]) if hundreds and rest else None


def zero_left_out(number: int) -> int | None:
    """Return what is written when the zeros of empty places are left out.

    Example:
        >>> zero_left_out(305), zero_left_out(340), zero_left_out(345)
        (35, 34, None)
    """
    digits = str(number).replace("0", "")
    return _unless(number, int(digits)) if digits else None


def teen_reversed(number: int) -> int | None:
    """Return what is written when the ones of a teen number come first, as they are said.

    Example:
        >>> teen_reversed(14), teen_reversed(314), teen_reversed(24)
        (41, 341, None)
    """
    return _swapped(number) if number % HUNDRED in TEENS else None


def tens_ones_swapped(number: int) -> int | None:
    """Return what is written when tens and ones change places; for teens see `teen_reversed`.

    Example:
        >>> tens_ones_swapped(345), tens_ones_swapped(305), tens_ones_swapped(14)
        (354, 350, None)
    """
    if number < TEN or number % HUNDRED in TEENS:
        return None
    return _unless(number, _swapped(number))


def from_the_right(number: int) -> int | None:
    """Return what is written when a three-digit number is read from its ones.

    Example:
        >>> from_the_right(345), from_the_right(340), from_the_right(34)
        (543, None, None)
    """
    if number < HUNDRED or number % TEN == 0:
        return None
    return _unless(number, int(str(number)[::-1]))


def teen_for_ty(number: int) -> int | None:
    """Return what is written when a teen number sounds like a number of tens, or the other way.

    Example:
        >>> teen_for_ty(14), teen_for_ty(40), teen_for_ty(340), teen_for_ty(24)
        (40, 14, 314, None)
    """
    hundreds, rest = divmod(number, HUNDRED)
    if rest in TEENS:
        return hundreds * HUNDRED + rest % TEN * TEN
    if rest % TEN == 0 and TEN + rest // TEN in TEENS:
        return hundreds * HUNDRED + TEN + rest // TEN
    return None


def counts_beside(blocks: Blocks) -> int | None:
    """Return what is written when the counts of places are put side by side, above nine too.

    Example:
        >>> counts_beside({"tens": 2, "ones": 15}), counts_beside({"tens": 10, "ones": 0})
        (215, 100)
        >>> counts_beside(fewest(345))
    """
    counts = list(blocks.values())
    return _joined(counts) if any(count >= TEN for count in counts) else None


def ten_counted_too(number: int) -> int | None:
    """Return how many ones there are beside the ten when the count begins with the ten itself.

    Example:
        >>> ten_counted_too(14)
        5
    """
    return number % TEN + 1


def whole_teen(number: int) -> int | None:
    """Return what is said when the ten is not taken off.

    Example:
        >>> whole_teen(14)
        14
    """
    return number


def digits_without_place(number: int) -> str | None:
    """Return the expanded form with digits instead of what they are worth.

    Example:
        >>> digits_without_place(345), digits_without_place(305)
        ('3 + 4 + 5', '3 + 5')
    """
    return " + ".join(digit for digit in str(number) if digit != "0")


def zero_as_part(number: int) -> str | None:
    """Return the expanded form with parts that are zero.

    Example:
        >>> zero_as_part(305), zero_as_part(345)
        ('300 + 0 + 5', None)
    """
    return expanded_form(number, zeros=True) if "0" in str(number) else None


def place_closed_up(number: int) -> str | None:
    """Return the expanded form of a number that has lost its zeros.

    Example:
        >>> place_closed_up(305), place_closed_up(345)
        ('30 + 5', None)
    """
    closed = zero_left_out(number)
    return None if closed is None else expanded_form(closed)


def plus_left_out(number: int) -> str | None:
    """Return the parts with no plus between them.

    Example:
        >>> plus_left_out(345)
        '300405'
    """
    beside = parts_beside(number)
    return None if beside is None else str(beside)


def as_they_come(parts: Sequence[int]) -> int | None:
    """Return what is written when the digits are taken from the parts in the order given.

    Example:
        >>> as_they_come([40, 300, 5]), as_they_come([300, 40, 5]), as_they_come([5, 300])
        (435, None, 53)
    """
    return _unless(sum(parts), int("".join(str(part)[0] for part in parts)))


def digit_alone(number: int, place: int) -> int | None:
    """Return what a digit is worth by itself.

    Args:
        number: the number.
        place: 0 for its ones, 1 for its tens, 2 for its hundreds.

    Example:
        >>> digit_alone(345, 1), digit_alone(345, 0)
        (4, None)
    """
    return _digit(number, place) if place else None


def place_above(number: int, place: int) -> int | None:
    """Return what a digit would be worth one place further left.

    Example:
        >>> place_above(345, 1)
        400
    """
    return _digit(number, place) * int(TEN ** (place + 1))


def place_below(number: int, place: int) -> int | None:
    """Return what a digit would be worth one place further right.

    Example:
        >>> place_below(345, 2), place_below(345, 1)
        (30, None)
    """
    return _digit(number, place) * int(TEN ** (place - 1)) if place > 1 else None


def rest_with_it(number: int, place: int) -> int | None:
    """Return the number that begins with a digit.

    Example:
        >>> rest_with_it(345, 1), rest_with_it(345, 0)
        (45, None)
    """
    unit = int(TEN**place)
    return _unless(_digit(number, place) * unit, number % (unit * TEN))


def _joined(parts: Sequence[int]) -> int:
    return int("".join(map(str, parts)))


def _swapped(number: int) -> int:
    tens, ones = divmod(number % HUNDRED, TEN)
    return number - number % HUNDRED + ones * TEN + tens


def _digit(number: int, place: int) -> int:
    return number // int(TEN**place) % TEN


def _unless(right: int, wrong: int) -> int | None:
    return None if wrong == right else wrong
