"""The steps of tasks about one number: read, laid out, said, written and taken apart."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Any

from manipulatives.lessons.tasks.task import Numbers, Step
from manipulatives.maths.number.place_names import some
from manipulatives.maths.number.place_value import (
    BASE,
    PLACES,
    WORTH,
    Blocks,
    expanded_form,
    fewest,
    parts_of,
)
from manipulatives.maths.number.trades import trade_up
from manipulatives.maths.number.words import number_in_words

TWENTY = 20


def places_of(number: int) -> Iterator[tuple[str, int]]:
    """Yield the places of a number with its digits, the largest first.

    Example:
        >>> list(places_of(305))
        [('hundreds', 3), ('tens', 0), ('ones', 5)]
    """
    digits = str(number)
    yield from zip(PLACES[-len(digits) :], map(int, digits), strict=True)


def mat(blocks: Blocks) -> dict[str, Any]:
    """Return the trait that puts blocks on the mat.

    Example:
        >>> mat(fewest(5))
        {'mat': [{'thousands': 0, 'hundreds': 0, 'tens': 0, 'ones': 5}]}
    """
    return {"mat": [dict(blocks)]}


def reading_steps(blocks: Blocks, number: int) -> tuple[Step, ...]:
    """Return how a number is read from blocks.

    Args:
        blocks: those on the mat.
        number: what they show.

    Example:
        >>> for step in reading_steps(fewest(305), 305):
        ...     print(step.say)
        3 hundreds are 300.
        There are no tens: write 0.
        5 ones are 5.
        300 + 5 = 305.
    """
    steps = []
    now = blocks
    for place in reversed(PLACES):
        while now[place] >= BASE:
            larger = PLACES[PLACES.index(place) - 1]
            rest = now[place] - BASE
            say = f"{some(now[place], place)} are 1 {larger[:-1]} and {some(rest, place)}."
            numbers = regrouped(place, now[place])
            now = trade_up(now, place)
            show = mat(now)
            steps.append(Step(say=say, chant=f"1 {larger[:-1]}", show=show, numbers=numbers))
    steps += place_steps(number)
    return (*steps, _written(number, {"digits": True}))


def regrouped(place: str, count: int) -> Numbers:
    """Return the numbers of a step in which ten of a place become one of the next larger place.

    Example:
        >>> regrouped("ones", 15)
        {'act': 'regroup', 'place': 'ones', 'count': 15, 'into': 'tens', 'left': 5}
    """
    larger = PLACES[PLACES.index(place) - 1]
    return {"act": "regroup", "place": place, "count": count, "into": larger, "left": count - BASE}


def place_steps(number: int) -> list[Step]:
    """Return what the digit of each place is worth.

    Example:
        >>> [step.say for step in place_steps(40)]
        ['4 tens are 40.', 'There are no ones: write 0.']
    """
    return [_worth_step(place, digit) for place, digit in places_of(number)]


def _worth_step(place: str, digit: int) -> Step:
    numbers = worth_of(place, digit)
    if digit == 0:
        return Step(say=f"There are no {place}: write 0.", chant="0", numbers=numbers)
    worth = digit * WORTH[place]
    verb = "is" if digit == 1 else "are"
    say = f"{some(digit, place)} {verb} {worth}."
    return Step(say=say, chant=f"{worth}", numbers=numbers)


def worth_of(place: str, digit: int) -> Numbers:
    """Return the numbers of a step that says what a digit is worth.

    Example:
        >>> worth_of("tens", 4)
        {'act': 'worth', 'place': 'tens', 'digit': 4, 'worth': 40}
    """
    return {"act": "worth", "place": place, "digit": digit, "worth": digit * WORTH[place]}


def sum_of(terms: Sequence[int]) -> Numbers:
    """Return the numbers of a step in which terms are added.

    Example:
        >>> sum_of([300, 5])
        {'act': 'add', 'terms': [300, 5], 'total': 305}
    """
    return {"act": "add", "terms": [*terms], "total": sum(terms)}


def _written(number: int, show: dict[str, Any]) -> Step:
    """Return the last step, in which the parts of a number are added."""
    form = expanded_form(number)
    alone = form == str(number)
    say = f"We write {number}." if alone else f"{form} = {number}."
    numbers = sum_of(parts_of(fewest(number)))
    return Step(say=say, chant=f"{number}", show=show, answer=f"{number}", numbers=numbers)


def building_steps(number: int) -> tuple[Step, ...]:
    """Return how a number is laid out in blocks.

    Example:
        >>> for step in building_steps(305):
        ...     print(step.say)
        Put out 3 hundreds: 300.
        No tens: the place stays empty.
        Put out 5 ones: 305.
    """
    steps = []
    laid = fewest(0)
    so_far = 0
    for place, digit in places_of(number):
        if digit == 0:
            say, numbers = f"No {place}: the place stays empty.", worth_of(place, 0)
            steps.append(Step(say=say, chant=f"no {place}", numbers=numbers))
            continue
        laid = {**laid, place: digit}
        so_far += digit * WORTH[place]
        say = f"Put out {some(digit, place)}: {so_far}."
        numbers = {"act": "lay", "place": place, "digit": digit, "so_far": so_far}
        steps.append(Step(say=say, chant=f"{so_far}", show=mat(laid), numbers=numbers))
    return tuple(steps)


def words_parts(number: int, vocabulary: str) -> list[tuple[str, int]]:
    """Return the parts in which a number is said, each in words and as a number.

    Example:
        >>> words_parts(345, "us"), words_parts(314, "us")
        ([('three hundred', 300), ('forty', 40), ('five', 5)], [('three hundred', 300), ...])
    """
    above = [part for part in (number // 1000 * 1000, number % 1000 // 100 * 100) if part]
    rest = number % 100
    below = [rest] if 0 < rest < TWENTY else [rest // BASE * BASE, rest % BASE]
    return [(number_in_words(part, vocabulary), part) for part in (*above, *below) if part]


def words_steps(number: int, vocabulary: str) -> tuple[Step, ...]:
    """Return how a number in words is written in digits.

    Example:
        >>> for step in words_steps(305, "us"):
        ...     print(step.say)
        Three hundred is 300.
        Five is 5.
        There are no tens: write 0.
        300 + 5 = 305.
    """
    steps = []
    so_far = 0
    for words, worth in words_parts(number, vocabulary):
        so_far += worth
        say = f"{words.capitalize()} is {worth}."
        numbers = {"act": "say", "number": worth}
        steps.append(Step(say=say, chant=f"{worth}", show=mat(fewest(so_far)), numbers=numbers))
    steps += [_worth_step(place, 0) for place, digit in places_of(number) if digit == 0]
    return (*steps, _written(number, {"digits": True}))


def saying_steps(number: int, vocabulary: str) -> tuple[Step, ...]:
    """Return how a number in digits is said in words.

    Example:
        >>> for step in saying_steps(345, "uk"):
        ...     print(step.say)
        We say 300 as three hundred.
        We say 40 as forty.
        We say 5 as five.
        345 is three hundred and forty-five.
    """
    words = number_in_words(number, vocabulary)
    said_parts = words_parts(number, vocabulary)
    steps = [
        Step(say=f"We say {part} as {said}.", chant=said, numbers={"act": "say", "number": part})
        for said, part in said_parts
        if len(said_parts) > 1
    ]
    say, done = f"{number} is {words}.", {"act": "say", "number": number}
    last = Step(say=say, chant=words, show={"words": True}, answer=words, numbers=done)
    return (*steps, last)


def expanding_steps(number: int) -> tuple[Step, ...]:
    """Return how a number is written in expanded form.

    Example:
        >>> for step in expanding_steps(305):
        ...     print(step.say)
        3 hundreds are 300.
        No tens: nothing to add.
        5 ones are 5.
        305 = 300 + 5.
    """
    form = expanded_form(number)
    steps = [
        _worth_step(place, digit)
        if digit
        else Step(
            say=f"No {place}: nothing to add.", chant=f"no {place}", numbers=worth_of(place, 0)
        )
        for place, digit in places_of(number)
    ]
    say, done = f"{number} = {form}.", sum_of(parts_of(fewest(number)))
    last = Step(say=say, chant=form, show={"expanded": True}, answer=form, numbers=done)
    return (*steps, last)


def joining_steps(number: int) -> tuple[Step, ...]:
    """Return how a number is written that is given in parts.

    Example:
        >>> for step in joining_steps(305):
        ...     print(step.say)
        300 is 3 hundreds.
        5 is 5 ones.
        There are no tens: write 0.
        300 + 5 = 305.
    """
    steps = []
    so_far = 0
    for part in parts_of(fewest(number)):
        so_far += part
        place = next(name for name in PLACES if part >= WORTH[name])
        digit = part // WORTH[place]
        say = f"{part} is {some(digit, place)}."
        numbers = {"act": "part", "part": part, "place": place, "digit": digit}
        steps.append(Step(say=say, chant=f"{part}", show=mat(fewest(so_far)), numbers=numbers))
    steps += [_worth_step(place, 0) for place, digit in places_of(number) if digit == 0]
    return (*steps, _written(number, {"digits": True}))


def worth_steps(number: int, place: str) -> tuple[Step, ...]:
    """Return how a digit's worth is found.

    Example:
        >>> for step in worth_steps(345, "tens"):
        ...     print(step.say)
        345 is 3 hundreds, 4 tens, 5 ones.
        The 4 stands for tens.
        4 tens are 40.
    """
    digit = dict(places_of(number))[place]
    named = ", ".join(some(one, name) for name, one in places_of(number))
    last = _worth_step(place, digit)
    return (
        Step(
            say=f"{number} is {named}.",
            chant=named,
            show={"digits": True},
            numbers={"act": "digits", "number": number, "digits": dict(places_of(number))},
        ),
        Step(
            say=f"The {digit} stands for {place}.",
            chant=place,
            numbers={"act": "stands", "digit": digit, "place": place},
        ),
        replace(last, answer=last.chant),
    )
