"""The single faults of a written subtraction, each one small function on digits.

A fault of *writing* returns the digit of a column without any taking, or None to go on as usual. A
fault of *taking* changes the column that one is taken from, and returns whether that was all.
Columns are counted from 0, the ones.
"""

from __future__ import annotations

from manipulatives.maths.columns.faulty_subtraction import (
    CannotGoOnError,
    Fault,
    Paper,
    Procedure,
    Take,
    Write,
    take_one,
)

NINE = 9
TEN = 10


def _larger_minus_smaller(paper: Paper, at: int) -> int | None:
    missing = paper.lower[at] - paper.upper[at]
    return missing if missing > 0 else None


def _zero_when_short(paper: Paper, at: int) -> int | None:
    return 0 if paper.upper[at] < paper.lower[at] else None


def _zero_shows_lower(paper: Paper, at: int) -> int | None:
    return paper.lower[at] if paper.upper[at] == 0 < paper.lower[at] else None


def _printed_zero_shows_lower(paper: Paper, at: int) -> int | None:
    return paper.lower[at] if paper.printed[at] == paper.upper[at] == 0 < paper.lower[at] else None


def _zero_stays_zero(paper: Paper, at: int) -> int | None:
    return 0 if paper.upper[at] == 0 < paper.lower[at] else None


def _minus_zero_is_zero(paper: Paper, at: int) -> int | None:
    return 0 if at < paper.reach and paper.lower[at] == 0 else None


def _equal_digits_stay(paper: Paper, at: int) -> int | None:
    same = at < paper.reach and paper.upper[at] == paper.lower[at]
    return paper.upper[at] if same else None


def _gives_nothing(_way: Procedure, _paper: Paper, _at: int) -> bool:
    return True


def _grows(_way: Procedure, paper: Paper, at: int) -> bool:
    paper.upper[at] += 1
    return True


def _front_gives(_way: Procedure, paper: Paper, _at: int) -> bool:
    paper.upper[-1] -= 1
    if paper.upper[-1] < 0:
        raise CannotGoOnError
    return True


def _zero_turns_nine(_way: Procedure, paper: Paper, at: int) -> bool:
    if paper.upper[at] == 0:
        paper.upper[at] = NINE
        return True
    return False


def _zero_turns_nine_unless_ten(way: Procedure, paper: Paper, at: int) -> bool:
    in_ten = at + 2 == len(paper.upper) and paper.upper[at + 1] == 1
    return not in_ten and _zero_turns_nine(way, paper, at)


def _zero_turns_ten(way: Procedure, paper: Paper, at: int) -> bool:
    if paper.upper[at] == 0:
        paper.upper[at] = TEN
        way.take(paper, at + 1)
        return True
    return False


def _zero_passed_over(way: Procedure, paper: Paper, at: int) -> bool:
    if paper.printed[at] == 0:
        way.take(paper, at + 1)
        return True
    return False


def _zero_gives_nothing(_way: Procedure, paper: Paper, at: int) -> bool:
    return paper.upper[at] == 0


def _lower_digit_gives(_way: Procedure, paper: Paper, at: int) -> bool:
    if paper.upper[at] > 0:
        return False
    if paper.lower[at] == 0:
        raise CannotGoOnError
    paper.lower[at] -= 1
    return True


def _one_turns_nine(way: Procedure, paper: Paper, at: int) -> bool:
    if paper.upper[at] == 1:
        paper.upper[at] = 0
        return take_one(way, paper, at)
    return False


def _equal_digits_passed_over(way: Procedure, paper: Paper, at: int) -> bool:
    if at < paper.reach and paper.upper[at] == paper.lower[at]:
        way.take(paper, at + 1)
        return True
    return False


def _gap_gives_nothing(_way: Procedure, paper: Paper, at: int) -> bool:
    return at >= paper.reach


def _one_turns_ten(paper: Paper, at: int) -> int | None:
    return TEN if paper.printed[at] == paper.upper[at] == 1 else None


def _ends_with_lower(paper: Paper) -> None:
    paper.columns = paper.reach


def _repeats_lower(paper: Paper) -> None:
    for at in range(paper.reach, len(paper.lower)):
        paper.lower[at] = paper.lower[paper.reach - 1]
    paper.reach = len(paper.lower)


def _writing(**functions: Write) -> dict[str, Fault]:
    return {name: Fault(write=function) for name, function in functions.items()}


def _taking(**functions: Take) -> dict[str, Fault]:
    return {name: Fault(take=function) for name, function in functions.items()}


# From general to specific: if two faults change the same step, the more specific one is used.
FAULTS: dict[str, Fault] = {
    # Of every column whose upper digit is too small.
    **_writing(
        larger_minus_smaller=_larger_minus_smaller,
        zero_when_too_small=_zero_when_short,
    ),
    **_taking(
        ten_for_nothing=_gives_nothing,
        next_place_grows=_grows,
        front_place_gives=_front_gives,
    ),
    "keeps_taking": Fault(always_takes=True),
    # Of zeros and other particular digits.
    **_taking(
        zero_turns_nine=_zero_turns_nine,
        zero_turns_nine_unless_ten=_zero_turns_nine_unless_ten,
        zero_turns_ten=_zero_turns_ten,
        zero_passed_over=_zero_passed_over,
        zero_gives_nothing=_zero_gives_nothing,
        lower_digit_gives=_lower_digit_gives,
        one_turns_nine=_one_turns_nine,
        equal_digits_passed_over=_equal_digits_passed_over,
        gap_gives_nothing=_gap_gives_nothing,
    ),
    "one_turns_ten": Fault(gain=_one_turns_ten),
    **_writing(
        zero_shows_lower_digit=_zero_shows_lower,
        printed_zero_shows_lower_digit=_printed_zero_shows_lower,
        zero_stays_zero=_zero_stays_zero,
        minus_zero_is_zero=_minus_zero_is_zero,
        equal_digits_stay=_equal_digits_stay,
    ),
    # Of the whole sum.
    "ends_with_lower_number": Fault(prepare=_ends_with_lower),
    "lower_digit_repeated": Fault(prepare=_repeats_lower),
    "added_instead": Fault(whole=lambda top, bottom: top + bottom),
    "start_counted_back": Fault(whole=lambda top, bottom: top - bottom + 1),
}
