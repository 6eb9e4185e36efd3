"""Worked steps of stories: first what happens, then hops on a line or blocks on two mats."""

from __future__ import annotations

from typing import Any

from manipulatives.lessons.strands.sums.asked import answered, equation, hop_steps
from manipulatives.lessons.strands.sums.blocks import mats
from manipulatives.lessons.strands.sums.line import Hop, counting_back, counting_on, counting_up
from manipulatives.lessons.tasks.task import Step
from manipulatives.maths.columns.written_sum import ADD, MINUS, SUBTRACT
from manipulatives.maths.number.place_names import some
from manipulatives.maths.number.place_value import BASE, Blocks, fewest

Numbers = tuple[int, int]


def add_to_steps(unknown: str, numbers: Numbers, method: str, words: str) -> tuple[Step, ...]:
    """Return how a story is worked out in which something is added.

    Args:
        unknown: "result", "change" or "start".
        numbers: the start and the change.
        method: how the class works.
        words: the vocabulary, "us" or "uk".

    Example:
        >>> [step.say for step in add_to_steps("change", (8, 5), "counting on", "us")]
        ['From 8 to 13: how many more?', 'Start at 8.', 'Count on to 13.', 'That is 5 steps.', ...
    """
    start, change = numbers
    now = start + change
    if unknown == "result":
        first = (f"{change} more {_come(change)} to {start}: add.", f"{start} + {change}")
        hops = _on(start, change, method)
    elif unknown == "change":
        first = (f"From {start} to {now}: how many more?", f"{start} + ? = {now}")
        hops = counting_up(start, now, method)
    else:
        first = (f"{change} came, now {now}: what was before?", f"? + {change} = {now}")
        hops = _less(now, change, method)
    answer = {"result": now, "change": change, "start": start}[unknown]
    return _on_line(first, hops, (ADD, numbers, now), answer, words)


def take_from_steps(unknown: str, numbers: Numbers, method: str, words: str) -> tuple[Step, ...]:
    """Return how a story is worked out in which something is taken away.

    Args:
        unknown: "result", "change" or "start".
        numbers: the start and the change.
        method: how the class works.
        words: the vocabulary, "us" or "uk".

    Example:
        >>> take_from_steps("start", (13, 5), "counting on", "us")[0].say
        '8 left and 5 gone: add.'
    """
    start, change = numbers
    left = start - change
    if unknown == "result":
        first = (f"{change} {_go(change)} from {start}: take away.", f"{start} {MINUS} {change}")
        hops = _less(start, change, method)
    elif unknown == "change":
        first = (f"From {start} down to {left}: how many went?", f"{start} {MINUS} ? = {left}")
        hops = counting_up(left, start, method)
    else:
        first = (f"{left} left and {change} gone: add.", f"? {MINUS} {change} = {left}")
        hops = _on(left, change, method)
    answer = {"result": left, "change": change, "start": start}[unknown]
    return _on_line(first, hops, (SUBTRACT, numbers, left), answer, words)


def compare_steps(
    unknown: str, wording: str, numbers: Numbers, method: str, words: str
) -> tuple[Step, ...]:
    """Return how a story is worked out in which two numbers are compared.

    Args:
        unknown: "difference", "bigger" or "smaller".
        wording: "more" or "fewer".
        numbers: the bigger and the smaller one.
        method: how the class works.
        words: the vocabulary, "us" or "uk".

    Example:
        >>> compare_steps("bigger", "fewer", (13, 8), "counting on", "us")[0].say
        '5 fewer here, so 5 more there: add.'
    """
    bigger, smaller = numbers
    more = bigger - smaller
    if unknown == "difference":
        say = f"From {smaller} up to {bigger}: how many {wording}?"
        first = (say, f"{smaller} + ? = {bigger}")
        hops = counting_up(smaller, bigger, method)
        return _on_line(first, hops, (SUBTRACT, numbers, more), more, words)
    if unknown == "bigger":
        say = f"{more} more than {smaller}: add."
        if wording == "fewer":
            say = f"{more} fewer here, so {more} more there: add."
        first = (say, f"{smaller} + {more}")
        sum_ = (ADD, (smaller, more), bigger)
        return _on_line(first, _on(smaller, more, method), sum_, bigger, words)
    say = f"{more} fewer than {bigger}: take away."
    if wording == "more":
        say = f"{more} more here, so {more} fewer there: take away."
    first = (say, f"{bigger} {MINUS} {more}")
    sum_ = (SUBTRACT, (bigger, more), smaller)
    return _on_line(first, _less(bigger, more, method), sum_, smaller, words)


def put_together_steps(unknown: str, numbers: Numbers, method: str, words: str) -> tuple[Step, ...]:
    """Return how a story is worked out in which two parts make a whole.

    Args:
        unknown: "total", "addend" or "both".
        numbers: both parts.
        method: how the class works.
        words: the vocabulary, "us" or "uk".

    Example:
        >>> for step in put_together_steps("total", (8, 5), "counting on", "us"):
        ...     print(step.say, "-", step.chant)
        8 and 5 together: add. - 8 + 5
        8 ones + 5 ones. - 13 ones
        10 ones are 1 ten. - 1 ten and 3 ones
        8 + 5 = 13. - thirteen
    """
    first, second = numbers
    total = first + second
    say = equation(ADD, numbers, total)
    if unknown == "both":
        return (
            Step(f"Put {first} on one mat.", f"{first}", _mat(fewest(first), {})),
            Step(
                f"The other {second} {_go(second)} here.",
                f"{second}",
                _mat(fewest(first), fewest(second)),
            ),
            answered(say, total, words),
        )
    if unknown == "addend":
        chant = f"{first} + ? = {total}"
        begin = Step(f"{first} and the others make {total}.", chant, _mat(fewest(first), fewest(0)))
        hops = [
            Step(hop.say, hop.chant, _mat(fewest(first), fewest(hop.been[-1] - first)))
            for hop in counting_up(first, total, method)
        ]
        return (begin, *hops, answered(say, second, words))
    both = fewest(first), fewest(second)
    begin = Step(f"{first} and {second} together: add.", f"{first} + {second}", _mat(*both))
    return (begin, *_joined(*both), answered(say, total, words))


def _joined(first: Blocks, second: Blocks) -> list[Step]:
    """Put the blocks of both mats on one, place by place, and trade ten ones for a ten."""
    steps, left, right = [], dict(first), dict(second)
    for place in ("ones", "tens"):
        one, other = first[place], second[place]
        left[place], right[place] = one + other, 0
        if one or other:
            say = f"{some(one, place)} + {some(other, place)}."
            steps.append(Step(say, some(one + other, place), _mat(left, right)))
    for place, above in (("ones", "tens"), ("tens", "hundreds")):
        if left[place] >= BASE:
            left[place] -= BASE
            left[above] += 1
            chant = f"{some(left[above], above)} and {some(left[place], place)}"
            steps.append(
                Step(f"{some(BASE, place)} are {some(1, above)}.", chant, _mat(left, right))
            )
    return steps


def _come(count: int) -> str:
    return "comes" if count == 1 else "come"


def _go(count: int) -> str:
    return "goes" if count == 1 else "go"


def _mat(first: Blocks, second: Blocks) -> dict[str, Any]:
    return {"mat": mats(first, second)}


def _on(start: int, by: int, method: str) -> list[Hop]:
    """Count on from the larger number; the order of an addition is free."""
    return counting_on(max(start, by), min(start, by), method)


def _less(upper: int, lower: int, method: str) -> list[Hop]:
    """Take away: back, or up to the first number where that is shorter."""
    if lower <= upper - lower:
        return counting_back(upper, lower, method)
    return counting_up(lower, upper, method)


def _on_line(
    first: tuple[str, str],
    hops: list[Hop],
    sum_: tuple[str, Numbers, int],
    answer: int,
    words: str,
) -> tuple[Step, ...]:
    say, chant = first
    return (Step(say, chant), *hop_steps(hops, answered(equation(*sum_), answer, words)))
