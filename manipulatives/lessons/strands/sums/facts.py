"""Worked steps of facts: hops on a number line in the way that is shortest."""

from __future__ import annotations

from collections.abc import Sequence

from manipulatives.lessons.strands.sums.acts import added
from manipulatives.lessons.strands.sums.line import Hop, counting_back, counting_on, counting_up
from manipulatives.lessons.strands.sums.tasks import answer_step, hop_steps
from manipulatives.lessons.tasks.generator import Request
from manipulatives.lessons.tasks.task import Step
from manipulatives.maths.columns.written_sum import ADD, SUBTRACT

TEN = 10


def adding_steps(request: Request) -> tuple[Step, ...]:
    """Return how two numbers are added: on from the larger one.

    Example:
        >>> from manipulatives.lessons.tasks.make import make_tasks
        >>> [task] = make_tasks("addition.facts_10", seed=1, count=1)
        >>> task.steps[-1].answer == task.answer
        True
    """
    first, second = request.item
    hops = counting_on(max(first, second), min(first, second), request.method)
    if first != second:
        hops[0] = hops[0]._replace(say=f"Start at the larger number, {max(first, second)}.")
    return _ended(request, hops, ADD)


def taking_steps(request: Request) -> tuple[Step, ...]:
    """Return how a number is taken away: back, or up to the first number where that is shorter.

    Example:
        >>> from manipulatives.lessons.tasks.make import make_tasks
        >>> [task] = make_tasks("subtraction.facts_10", seed=1, count=1)
        >>> task.steps[-1].answer == task.answer
        True
    """
    upper, lower = request.item
    left = upper - lower
    if lower <= left or left == 0:
        return _ended(request, counting_back(upper, lower, request.method), SUBTRACT)
    return _ended(request, counting_up(lower, upper, request.method), SUBTRACT)


def tens_more_steps(request: Request) -> tuple[Step, ...]:
    """Return how whole tens are added to a number: on from it in tens.

    Example:
        >>> from manipulatives.lessons.tasks.make import make_tasks
        >>> [task] = make_tasks("addition.two_digit_tens", seed=1, count=1)
        >>> task.steps[0].say == f"Start at {task.prompt.split()[0]}."
        True
    """
    first, tens = request.item
    return _ended(request, counting_on(first, tens, request.method), ADD)


def tens_less_steps(request: Request) -> tuple[Step, ...]:
    """Return how whole tens are taken away from a number: back from it in tens.

    Example:
        >>> from manipulatives.lessons.tasks.make import make_tasks
        >>> [task] = make_tasks("subtraction.two_digit_tens", seed=1, count=1)
        >>> task.steps[0].say == f"Start at {task.prompt.split()[0]}."
        True
    """
    first, tens = request.item
    return _ended(request, counting_back(first, tens, request.method), SUBTRACT)


def doubling_steps(request: Request) -> tuple[Step, ...]:
    """Return how a double is found, or from it its neighbour.

    Example:
        >>> from manipulatives.lessons.tasks.make import make_tasks
        >>> options = {"near": True}
        >>> [task] = make_tasks("addition.doubles", seed=1, count=1, options=options)
        >>> task.steps[0].say.startswith("Double ")
        True
    """
    small, double = min(request.item), 2 * min(request.item)
    more = max(request.item) - small
    been = tuple(dict.fromkeys((0, small, double)))
    hops = [Hop(f"Double {small}: {small} + {small}.", f"{double}", been, added([small, small]))]
    if more:
        say, end = f"{more} more: {double} + {more}.", double + more
        hops.append(Hop(say, f"{end}", (*been, end), added([double, more])))
    return _ended(request, hops, ADD)


def several_steps(request: Request) -> tuple[Step, ...]:
    """Return how three numbers are added: two that make ten first, or two that are equal.

    Example:
        >>> from manipulatives.lessons.tasks.make import make_tasks
        >>> options = {"ten": "yes"}
        >>> [task] = make_tasks("addition.three_numbers", seed=1, count=1, options=options)
        >>> task.steps[0].say.startswith("Look for ten: ")
        True
    """
    why, (first, second, third) = order_of(request.item)
    pair = first + second
    total = pair + third
    hops = [
        Hop(f"{why}: {first} + {second}.", f"{pair}", (first, pair), added([first, second])),
        Hop(f"Then {pair} + {third}.", f"{total}", (first, pair, total), added([pair, third])),
    ]
    return _ended(request, hops, ADD)


def order_of(numbers: Sequence[int]) -> tuple[str, list[int]]:
    """Return in which order three numbers are added best, and why.

    Example:
        >>> order_of((3, 5, 7)), order_of((4, 9, 4)), order_of((2, 5, 4))
        (('Look for ten', [3, 7, 5]), ('Look for doubles', [4, 4, 9]), ('Start large', [5, 4, 2]))
    """
    pairs = (((0, 1), 2), ((0, 2), 1), ((1, 2), 0))
    for (one, other), rest in pairs:
        if numbers[one] + numbers[other] == TEN:
            return "Look for ten", [numbers[one], numbers[other], numbers[rest]]
    for (one, other), rest in pairs:
        if numbers[one] == numbers[other]:
            return "Look for doubles", [numbers[one], numbers[other], numbers[rest]]
    return "Start large", sorted(numbers, reverse=True)


def _ended(request: Request, hops: list[Hop], operation: str) -> tuple[Step, ...]:
    numbers = request.item
    answer = sum(numbers) if operation == ADD else numbers[0] - numbers[1]
    return hop_steps(hops, answer_step(operation, numbers, answer, request.vocabulary))
