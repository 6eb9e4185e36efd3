"""The steps in which a number from 11 to 19 is made from ten and some ones, or taken apart."""

from __future__ import annotations

from manipulatives.lessons.strands.counting.steps import count_of, listed
from manipulatives.lessons.strands.place_value.steps.one_number import (
    mat,
    regrouped,
    sum_of,
    worth_of,
)
from manipulatives.lessons.tasks.task import Step
from manipulatives.maths.number.place_names import some
from manipulatives.maths.number.place_value import fewest

TEN = 10


def composing_steps(number: int) -> tuple[Step, ...]:
    """Return how a number is made from ten and some ones.

    Example:
        >>> for step in composing_steps(14):
        ...     print(step.say)
        1 ten is 10.
        Count on from 10: 4 ones more.
        10 + 4 = 14.
    """
    ones = number - TEN
    return (
        Step(say="1 ten is 10.", chant="10", numbers=worth_of("tens", 1)),
        _counted_on(f"Count on from 10: {some(ones, 'ones')} more.", number),
        _added(f"10 + {ones} = {number}.", number, answer=number),
    )


def decomposing_steps(number: int) -> tuple[Step, ...]:
    """Return how a number is taken apart into ten and some ones.

    Example:
        >>> for step in decomposing_steps(14):
        ...     print(step.say)
        10 ones are 1 ten.
        Count on from 10 to 14.
        14 = 10 + 4.
    """
    ones = number - TEN
    say, show = "10 ones are 1 ten.", mat(fewest(number))
    return (
        Step(say=say, chant="1 ten", show=show, numbers=regrouped("ones", TEN)),
        _counted_on(f"Count on from 10 to {number}.", number),
        _added(f"{number} = 10 + {ones}.", number, answer=ones),
    )


def _counted_on(say: str, number: int) -> Step:
    counted = [*range(TEN + 1, number + 1)]
    return Step(say=say, chant=listed(counted), numbers=count_of(counted, 1, begin=TEN))


def _added(say: str, number: int, *, answer: int) -> Step:
    done, digits = sum_of([TEN, number - TEN]), {"digits": True}
    return Step(say=say, chant=f"{answer}", show=digits, answer=f"{answer}", numbers=done)
