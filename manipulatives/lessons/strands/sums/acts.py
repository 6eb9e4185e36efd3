"""The numbers of steps in which something is added, taken away, hopped or regrouped."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from manipulatives.lessons.tasks.task import Numbers
from manipulatives.maths.columns.written_sum import ADD

TEN = 10


def added(terms: Sequence[int], **more: Any) -> Numbers:
    """Return the numbers of a step in which terms are added.

    Example:
        >>> added([8, 5])
        {'act': 'add', 'terms': [8, 5], 'total': 13}
    """
    return {"act": "add", "terms": [*terms], "total": sum(terms), **more}


def worked_out(operation: str, numbers: Sequence[int], **more: Any) -> Numbers:
    """Return the numbers of a step in which a sum or a difference is worked out.

    Example:
        >>> worked_out("-", [13, 5], place="ones")
        {'act': 'take', 'from': 13, 'take': 5, 'left': 8, 'place': 'ones'}
    """
    if operation == ADD:
        return added(numbers, **more)
    upper, lower = numbers
    return {"act": "take", "from": upper, "take": lower, "left": upper - lower, **more}


def hopped(start: int, by: int, **more: Any) -> Numbers:
    """Return the numbers of a hop; below 0 it goes back.

    Example:
        >>> hopped(8, -3)
        {'act': 'hop', 'from': 8, 'by': -3, 'to': 5}
    """
    return {"act": "hop", "from": start, "by": by, "to": start + by, **more}


def bridged(start: int, *parts: int) -> Numbers:
    """Return the numbers of two hops, the first of them to a full ten; below 0 they go back.

    Example:
        >>> bridged(8, 2, 5)
        {'act': 'bridge', 'from': 8, 'by': 7, 'parts': [2, 5], 'ten': 10, 'to': 15}
    """
    first, second = parts
    ten = start + first
    return {
        "act": "bridge",
        "from": start,
        "by": first + second,
        "parts": [first, second],
        "ten": ten,
        "to": ten + second,
    }


def stayed(number: int) -> Numbers:
    """Return the numbers of a step in which 0 is counted on or back.

    Example:
        >>> stayed(8)
        {'act': 'stay', 'number': 8}
    """
    return {"act": "stay", "number": number}


def started(number: int) -> Numbers:
    """Return the numbers of a step with which a count or a row of hops starts.

    Example:
        >>> started(8)
        {'act': 'start', 'numbers': [8]}
    """
    return {"act": "start", "numbers": [number]}


def regrouped(place: str, into: str, *, count: int, left: int, **more: int) -> Numbers:
    """Return the numbers of a step in which things of one place become things of another.

    Args:
        place: what becomes something else, such as "ones".
        into: what it becomes, one place larger or smaller.
        count: how many of them.
        left: how many of them are left.
        more: `gives`, how many come of it, and `now`, how many the other place has then.

    Example:
        >>> regrouped("ones", "tens", count=10, left=3, gives=1)
        {'act': 'regroup', 'place': 'ones', 'count': 10, 'into': 'tens', 'left': 3, 'gives': 1}
    """
    return {"act": "regroup", "place": place, "count": count, "into": into, "left": left, **more}
