"""The worked steps of the counting strand, said and shown one after the other.

The numbers of a step are one of these acts:

* `find` and `start`: the `numbers` that are looked for, or with which a count starts;
* `count`: the numbers `counted`, `from` where, `by` which step and `to` where; `counted` has the
  number `from` too, where the class says it;
* `step`: one step of a count, `from` a number, `by` so much, `to` another; `border` is 10 or 100
  where the step leads into another ten or hundred;
* `units`: how `many` full tens or hundreds (`unit`, 10 or 100) a `number` has, and how many it has
  `now`, after one more or less;
* `between`: the `number` between `low` and `high`;
* `size`: the size of a step (`by`), seen `from` one number `to` the next;
* `ones`: how many `ones` a `number` has as its last digit; `parity`: whether the `number` is "even"
  or "odd" (`word`) because of its `ones`;
* `total`: how `many` there are: the number that was said last.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from manipulatives.lessons.strands.counting.charts import counted
from manipulatives.lessons.tasks.task import Numbers, Step
from manipulatives.maths.number.parity import next_of, parity

TEN = 10
HUNDRED = 100
NAMES = {1: "ones", 2: "twos", 3: "threes", 5: "fives", 10: "tens", 100: "hundreds"}
EVENS = range(0, TEN, 2)


def listed(numbers: Sequence[int]) -> str:
    """Return numbers with commas between them, as a class says them.

    Example:
        >>> listed([35, 40])
        '35, 40'
    """
    return ", ".join(map(str, numbers))


def counting_say(numbers: Sequence[int], by: int) -> str:
    """Return the sentence that a class counts.

    Example:
        >>> counting_say([35, 40], 5), counting_say([35, 34], -1)
        ('Count on in fives: 35, 40.', 'Count back in ones: 35, 34.')
    """
    return f"Count {'on' if by > 0 else 'back'} in {NAMES[abs(by)]}: {listed(numbers)}."


def count_of(numbers: Sequence[int], by: int, begin: int | None = None) -> Numbers:
    """Return the numbers of a step in which a class counts.

    Args:
        numbers: those that are said.
        by: the step; below 0 it goes back.
        begin: where the count starts; None for the first number that is said.

    Example:
        >>> count_of([35, 40], 5)
        {'act': 'count', 'from': 35, 'by': 5, 'to': 40, 'counted': [35, 40]}
        >>> count_of([1, 2], 1, begin=0)["from"]
        0
    """
    first = numbers[0] if begin is None else begin
    return {"act": "count", "from": first, "by": by, "to": numbers[-1], "counted": [*numbers]}


def step_of(at: int, by: int) -> Numbers:
    """Return the numbers of one step of a count.

    Example:
        >>> step_of(35, 5)
        {'act': 'step', 'from': 35, 'by': 5, 'to': 40}
    """
    return {"act": "step", "from": at, "by": by, "to": at + by}


def more_or_less(at: int, by: int) -> str:
    """Return the sentence that says one step.

    Example:
        >>> more_or_less(35, 5), more_or_less(35, -5)
        ('5 more than 35 is 40.', '5 less than 35 is 30.')
    """
    return f"{abs(by)} {'more' if by > 0 else 'less'} than {at} is {at + by}."


def next_steps(numbers: Sequence[int], by: int) -> tuple[Step, ...]:
    """Return how the number after a count is found.

    Args:
        numbers: those that were counted.
        by: the step; below 0 it goes back.

    Example:
        >>> for step in next_steps([37, 38, 39], 1):
        ...     print(step.say)
        Count on in ones: 37, 38, 39.
        39 is the last of its ten. 1 more than 39 is 40.
    """
    say = counting_say(numbers, by)
    count = Step(say=say, chant=listed(numbers), numbers=count_of(numbers, by))
    return (count, _last_step(numbers, by))


def step_steps(at: int, by: int) -> tuple[Step, ...]:
    """Return how the number one, ten or a hundred more or less is found.

    Example:
        >>> for step in step_steps(95, 10):
        ...     print(step.say)
        Find 95.
        95 has 9 tens. 1 ten more is 10 tens.
        10 more than 95 is 105.
    """
    steps = [Step(say=f"Find {at}.", chant=f"{at}", numbers={"act": "find", "numbers": [at]})]
    unit = abs(by)
    if unit > 1:
        place = NAMES[unit][:-1]
        many, now = at // unit, (at + by) // unit
        say = (
            f"{at} has {_some(many, place)}. "
            f"1 {place} {'more' if by > 0 else 'less'} is {_some(now, place)}."
        )
        numbers = {"act": "units", "number": at, "unit": unit, "many": many, "now": now}
        steps.append(Step(say=say, chant=_some(now, place), numbers=numbers))
    return (*steps, _last_step([at], by))


def between_steps(low: int, high: int) -> tuple[Step, ...]:
    """Return how the number between two is found.

    Example:
        >>> for step in between_steps(39, 41):
        ...     print(step.say)
        Find 39 and 41.
        Count on in ones: 39, 40, 41.
        40 is between 39 and 41.
    """
    middle = low + 1
    return (
        Step(
            say=f"Find {low} and {high}.",
            chant=f"{low}, {high}",
            numbers={"act": "find", "numbers": [low, high]},
        ),
        Step(
            say=counting_say([low, middle, high], 1),
            chant=listed([low, middle, high]),
            numbers=count_of([low, middle, high], 1),
        ),
        Step(
            say=f"{middle} is between {low} and {high}.",
            chant=f"{middle}",
            show=counted([low, middle, high]),
            answer=f"{middle}",
            numbers={"act": "between", "low": low, "high": high, "number": middle},
        ),
    )


def gap_steps(numbers: Sequence[int], gap: int, by: int) -> tuple[Step, ...]:
    """Return how the missing number of a count is found.

    Args:
        numbers: those of the count, all of them.
        gap: the place of the missing one, counted from 0.
        by: the step; below 0 it goes back.

    Example:
        >>> for step in gap_steps([35, 40, 45, 50], 2, 5):
        ...     print(step.say)
        From 35 to 40: each number is 5 more.
        5 more than 40 is 45.
        Count on in fives: 35, 40, 45, 50.
    """
    # Two neighbours that are both shown tell the size of a step.
    pair = next(place for place in range(len(numbers)) if gap not in (place, place + 1))
    way = "more" if by > 0 else "less"
    missing = numbers[gap]
    return (
        Step(
            say=f"From {numbers[pair]} to {numbers[pair + 1]}: each number is {abs(by)} {way}.",
            chant=f"{abs(by)} {way}",
            numbers={"act": "size", "from": numbers[pair], "to": numbers[pair + 1], "by": by},
        ),
        Step(
            say=more_or_less(numbers[gap - 1], by),
            chant=f"{missing}",
            show=counted(numbers),
            numbers=step_of(numbers[gap - 1], by),
        ),
        Step(
            say=counting_say(numbers, by),
            chant=listed(numbers),
            answer=f"{missing}",
            numbers=count_of(numbers, by),
        ),
    )


def tapping_steps(numbers: Sequence[int], by: int) -> tuple[Step, ...]:
    """Return how a count is tapped, from the first number to the last.

    Example:
        >>> for step in tapping_steps([35, 40, 45], 5):
        ...     print(step.say)
        Start at 35.
        5 more than 35 is 40.
        5 more than 40 is 45.
    """
    begin = {"act": "start", "numbers": [numbers[0]]}
    steps = [Step(say=f"Start at {numbers[0]}.", chant=f"{numbers[0]}", numbers=begin)]
    for place, number in enumerate(numbers[1:], start=1):
        say, show = more_or_less(number - by, by), counted(numbers[: place + 1])
        done = step_of(number - by, by)
        steps.append(Step(say=say, chant=f"{number}", show=show, numbers=done))
    return tuple(steps)


def writing_steps(blanks: Sequence[int], first: int) -> tuple[Step, ...]:
    """Return how blank cells are filled in.

    Args:
        blanks: the numbers that are missing, no two of them neighbours.
        first: the first number of the chart.

    Example:
        >>> for step in writing_steps([25, 35], 1):
        ...     print(step.say)
        1 more than 24 is 25.
        1 more than 34 is 35.
    """
    steps = []
    written: dict[str, str] = {}
    for blank in blanks:
        by = 1 if blank > first else -1
        written = {**written, f"{blank}": f"{blank}"}
        show: dict[str, Any] = {"chart": {"counted": [], "tapped": None, "written": written}}
        say, numbers = more_or_less(blank - by, by), step_of(blank - by, by)
        steps.append(Step(say=say, chant=f"{blank}", show=show, numbers=numbers))
    return tuple(steps)


def deciding_steps(number: int, row: dict[str, Any]) -> tuple[Step, ...]:
    """Return how even is told from odd.

    Args:
        number: the number.
        row: the trait that marks the even numbers in the row of the number.

    Example:
        >>> for step in deciding_steps(34, {}):
        ...     print(step.say)
        34 has 4 ones.
        Twos from zero end in 0, 2, 4, 6, 8.
        4 is one of them: 34 is even.
    """
    ones, word = number % TEN, parity(number)
    among = "one" if ones in EVENS else "none"
    return (
        Step(
            say=f"{number} has {_some(ones, 'one')}.",
            chant=_some(ones, "one"),
            numbers={"act": "ones", "number": number, "ones": ones},
        ),
        _twos(row),
        Step(
            say=f"{ones} is {among} of them: {number} is {word}.",
            chant=word,
            answer=word,
            numbers=_parity_of(number),
        ),
    )


def _twos(row: dict[str, Any]) -> Step:
    said = listed(EVENS)
    say = f"Twos from zero end in {said}."
    return Step(say=say, chant=said, show=row, numbers=count_of(EVENS, 2))


def _parity_of(number: int) -> Numbers:
    return {"act": "parity", "number": number, "ones": number % TEN, "word": parity(number)}


def next_parity_steps(number: int, wanted: str, row: dict[str, Any]) -> tuple[Step, ...]:
    """Return how the next even or odd number is found.

    Args:
        number: where to begin.
        wanted: "even" or "odd".
        row: the trait that marks the even numbers in the rows of both numbers.

    Example:
        >>> for step in next_parity_steps(14, "even", {}):
        ...     print(step.say)
        Twos from zero end in 0, 2, 4, 6, 8.
        15 is odd.
        16 is even.
    """
    end = next_of(number, wanted)
    steps = [_twos(row)]
    for one in range(number + 1, end + 1):
        word = parity(one)
        answer, said = f"{one}" if one == end else None, f"{one} is {word}"
        steps.append(Step(say=f"{said}.", chant=said, answer=answer, numbers=_parity_of(one)))
    return tuple(steps)


def _last_step(numbers: Sequence[int], by: int) -> Step:
    at = numbers[-1]
    say, done = more_or_less(at, by), step_of(at, by)
    for unit, name in ((HUNDRED, "hundred"), (TEN, "ten")):
        if by == 1 and at % unit == unit - 1:
            say = f"{at} is the last of its {name}. {say}"
            done["border"] = unit
            break
        if by == -1 and at % unit == 0:
            say = f"{at} is the first of its {name}. {say}"
            done["border"] = unit
            break
    now = f"{at + by}"
    show = counted([*numbers, at + by])
    return Step(say=say, chant=now, show=show, answer=now, numbers=done)


def _some(count: int, one: str) -> str:
    return f"{count} {one}{'' if count == 1 else 's'}"
