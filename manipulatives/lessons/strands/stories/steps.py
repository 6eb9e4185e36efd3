"""Worked steps of stories: first what happens, then hops on a line or blocks on two mats.

The acts of their numbers are those of `strands.sums`.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from manipulatives.lessons.strands.sums.acts import regrouped, worked_out
from manipulatives.lessons.strands.sums.blocks import mats
from manipulatives.lessons.strands.sums.line import Hop, counting_back, counting_on, counting_up
from manipulatives.lessons.strands.sums.tasks import answer_step, hop_steps
from manipulatives.lessons.tasks.task import Numbers, Step
from manipulatives.maths.columns.written_sum import ADD, MINUS, SUBTRACT
from manipulatives.maths.number.place_names import some
from manipulatives.maths.number.place_value import BASE, Blocks, fewest

Pair = tuple[int, int]


class Plan(NamedTuple):
    """How a story is worked out on a number line.

    Attributes:
        begin: the step that says what is to be done.
        hops: the hops that do it.
        operation: that of the sum which is said in the end.
        numbers: its numbers.
        answer: what was asked.
    """

    begin: Step
    hops: list[Hop]
    operation: str
    numbers: Pair
    answer: int


def story_steps(
    situation: str, item: tuple[str, str, int, int], method: str, vocabulary: str
) -> tuple[Step, ...]:
    """Return how a story is worked out.

    Args:
        situation: "add to", "take from", "put together" or "compare".
        item: what is unknown, the wording or "", and both numbers; see `texts.story_text`.
        method: how the class works.
        vocabulary: "us" or "uk".

    Example:
        >>> steps = story_steps("add to", ("change", "", 8, 5), "counting on", "us")
        >>> [step.say for step in steps]
        ['From 8 to 13: how many more?', 'Start at 8.', 'Count on to 13.', 'That is 5 steps.', ...
        >>> story_steps("take from", ("start", "", 13, 5), "counting on", "us")[0].say
        '8 left and 5 gone: add.'
        >>> story_steps("compare", ("bigger", "fewer", 13, 8), "counting on", "us")[0].say
        '5 fewer here, so 5 more there: add.'
    """
    unknown, wording, *pair = item
    numbers = (pair[0], pair[1])
    match situation:
        case "put together":
            return put_together_steps(unknown, numbers, method, vocabulary)
        case "add to":
            plan = _add_to(unknown, numbers, method)
        case "take from":
            plan = _take_from(unknown, numbers, method)
        case _:
            plan = _compare(unknown, wording, numbers, method)
    last = answer_step(plan.operation, plan.numbers, plan.answer, vocabulary)
    return (plan.begin, *hop_steps(plan.hops, last))


def _add_to(unknown: str, numbers: Pair, method: str) -> Plan:
    start, change = numbers
    now = start + change
    if unknown == "result":
        say = f"{change} more {_come(change)} to {start}: add."
        return Plan(_begin(say, ADD, start, change), _on(numbers, method), ADD, numbers, now)
    if unknown == "change":
        begin = _begin(f"From {start} to {now}: how many more?", ADD, start, None, now)
        return Plan(begin, counting_up(start, now, method), ADD, numbers, change)
    begin = _begin(f"{change} came, now {now}: what was before?", ADD, None, change, now)
    return Plan(begin, _less(now, change, method), ADD, numbers, start)


def _take_from(unknown: str, numbers: Pair, method: str) -> Plan:
    start, change = numbers
    left = start - change
    if unknown == "result":
        begin = _begin(f"{change} {_go(change)} from {start}: take away.", SUBTRACT, start, change)
        hops = _less(start, change, method)
    elif unknown == "change":
        say = f"From {start} down to {left}: how many went?"
        begin = _begin(say, SUBTRACT, start, None, left)
        hops = counting_up(left, start, method)
    else:
        begin = _begin(f"{left} left and {change} gone: add.", SUBTRACT, None, change, left)
        hops = _on((left, change), method)
    answer = {"result": left, "change": change, "start": start}[unknown]
    return Plan(begin, hops, SUBTRACT, numbers, answer)


def _compare(unknown: str, wording: str, numbers: Pair, method: str) -> Plan:
    bigger, smaller = numbers
    more = bigger - smaller
    if unknown == "difference":
        say = f"From {smaller} up to {bigger}: how many {wording}?"
        begin = _begin(say, ADD, smaller, None, bigger)
        return Plan(begin, counting_up(smaller, bigger, method), SUBTRACT, numbers, more)
    if unknown == "bigger":
        say = f"{more} more than {smaller}: add."
        if wording == "fewer":
            say = f"{more} fewer here, so {more} more there: add."
        begin, sum_ = _begin(say, ADD, smaller, more), (smaller, more)
        return Plan(begin, _on(sum_, method), ADD, sum_, bigger)
    say = f"{more} fewer than {bigger}: take away."
    if wording == "more":
        say = f"{more} more here, so {more} fewer there: take away."
    begin, hops = _begin(say, SUBTRACT, bigger, more), _less(bigger, more, method)
    return Plan(begin, hops, SUBTRACT, (bigger, more), smaller)


def put_together_steps(
    unknown: str, numbers: Pair, method: str, vocabulary: str
) -> tuple[Step, ...]:
    """Return how a story is worked out in which two parts make a whole.

    Args:
        unknown: "total", "addend" or "both".
        numbers: both parts.
        method: how the class works.
        vocabulary: "us" or "uk".

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
    left, right = fewest(first), fewest(second)
    if unknown == "both":
        last = answer_step(ADD, numbers, total, vocabulary)
        other = f"The other {second} {_go(second)} here."
        return (
            _laid(f"Put {first} on one mat.", first, first, _mat(left, {})),
            _laid(other, second, total, _mat(left, right)),
            last,
        )
    if unknown == "addend":
        say = f"{first} and the others make {total}."
        begin = _begin(say, ADD, first, None, total, show=_mat(left, fewest(0)))
        hops = [
            Step(hop.say, hop.chant, _mat(left, fewest(hop.been[-1] - first)), numbers=hop.numbers)
            for hop in counting_up(first, total, method)
        ]
        return (begin, *hops, answer_step(ADD, numbers, second, vocabulary))
    begin = _begin(f"{first} and {second} together: add.", ADD, *numbers, show=_mat(left, right))
    return (begin, *_joined(left, right), answer_step(ADD, numbers, total, vocabulary))


def _joined(first: Blocks, second: Blocks) -> list[Step]:
    """Put the blocks of both mats on one, place by place, and regroup ten ones as a ten."""
    steps, left, right = [], dict(first), dict(second)
    for place in ("ones", "tens"):
        one, other = first[place], second[place]
        left[place], right[place] = one + other, 0
        if one or other:
            say, chant = f"{some(one, place)} + {some(other, place)}.", some(one + other, place)
            numbers = worked_out(ADD, [one, other], place=place)
            steps.append(Step(say, chant, _mat(left, right), numbers=numbers))
    for place, above in (("ones", "tens"), ("tens", "hundreds")):
        if left[place] >= BASE:
            left[place] -= BASE
            left[above] += 1
            say = f"{some(BASE, place)} are {some(1, above)}."
            chant = f"{some(left[above], above)} and {some(left[place], place)}"
            counts = {"count": BASE, "left": left[place], "gives": 1, "now": left[above]}
            numbers = regrouped(place, above, **counts)
            steps.append(Step(say, chant, _mat(left, right), numbers=numbers))
    return steps


def _begin(
    say: str,
    operation: str,
    first: int | None,
    second: int | None,
    result: int | None = None,
    *,
    show: dict[str, Any] | None = None,
) -> Step:
    """Return the step that says what is to be done; the class says it as a sum or an equation."""
    numbers: Numbers = {"numbers": [first, second], "result": result}
    shown = ["?" if number is None else f"{number}" for number in (first, second)]
    chant = f" {'+' if operation == ADD else MINUS} ".join(shown)
    if result is not None:
        chant = f"{chant} = {result}"
    return Step(say, chant, show or {}, numbers={"act": "plan", "operation": operation, **numbers})


def _laid(say: str, number: int, so_far: int, show: dict[str, Any]) -> Step:
    numbers = {"act": "lay", "number": number, "so_far": so_far}
    return Step(say, f"{number}", show, numbers=numbers)


def _come(count: int) -> str:
    return "comes" if count == 1 else "come"


def _go(count: int) -> str:
    return "goes" if count == 1 else "go"


def _mat(first: Blocks, second: Blocks) -> dict[str, Any]:
    return {"mat": mats(first, second)}


def _on(numbers: Pair, method: str) -> list[Hop]:
    """Count on from the larger number; the order of an addition is free."""
    return counting_on(max(numbers), min(numbers), method)


def _less(upper: int, lower: int, method: str) -> list[Hop]:
    """Take away: back, or up to the first number where that is shorter."""
    if lower <= upper - lower:
        return counting_back(upper, lower, method)
    return counting_up(lower, upper, method)
