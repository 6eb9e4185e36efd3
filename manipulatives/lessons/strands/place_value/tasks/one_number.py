"""Tasks of the place value strand about one number: in blocks, digits, words and parts."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import permutations
from typing import Any

from manipulatives.lessons.strands.place_value.mistakes.rules import (
    BUILDING,
    EXPANDING,
    FROM_PARTS,
    FROM_PARTS_IN_ORDER,
    READING,
    READING_BLOCKS,
    WORDS,
)
from manipulatives.lessons.strands.place_value.pools import numbers
from manipulatives.lessons.strands.place_value.steps.one_number import (
    building_steps,
    expanding_steps,
    joining_steps,
    mat,
    reading_steps,
    saying_steps,
    words_steps,
)
from manipulatives.lessons.tasks.foreseen import done_with, foreseen
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.predicates import Predicate
from manipulatives.lessons.tasks.task import Mistake, Step, Task
from manipulatives.lessons.tasks.typed import typed_number
from manipulatives.maths.number.place_value import Blocks, expanded_form, fewest, parts_of
from manipulatives.maths.number.trades import trade_down, trades_of
from manipulatives.maths.number.words import number_in_words

TEN = 10
MOST_CHOICES = 4
LARGEST = 1000
# How far other choices are from the number, where few mistakes are foreseen.
NEAR = (1, -1, TEN, -TEN)
ONLY_SHOWN: dict[str, Any] = {"movable": False, "digits": False, "trades": "none", "buttons": False}


def columns(number: int) -> dict[str, int]:
    """Return the trait that gives a mat a column for each digit of a number, at least two.

    Example:
        >>> columns(7), columns(345)
        ({'places': 2}, {'places': 3})
    """
    return {"places": max(2, len(str(number)))}


def _typed(
    request: Request,
    number: int,
    prompt: str,
    start: Mapping[str, Any],
    *,
    steps: tuple[Step, ...],
    mistakes: tuple[Mistake, ...],
    kind: str,
) -> Task:
    """Return a task whose answer is a number that is typed."""
    return Task(
        skill=request.skill,
        kind=kind,
        prompt=prompt,
        say=prompt,
        manipulative="PlaceValueBlocks",
        start={**columns(number), **start},
        **typed_number(number, request.vocabulary),
        steps=steps,
        mistakes=mistakes,
    )


def _read(request: Request) -> Task:
    number = request.item
    blocks = _with_more(request) if request.options["pieces"] == "more" else fewest(number)
    found = [(rule, rule.wrong(number)) for rule in READING]
    of_blocks = [(rule, rule.wrong(blocks)) for rule in READING_BLOCKS]
    return _typed(
        request,
        number,
        "Which number do the blocks show?",
        {**mat(blocks), **ONLY_SHOWN},
        steps=reading_steps(blocks, number),
        mistakes=foreseen(
            [*of_blocks, *found],
            request.vocabulary,
            right=number,
            numbers=done_with("write", number=number, blocks=dict(blocks)),
        ),
        kind="read",
    )


def _with_more(request: Request) -> Blocks:
    """Return the blocks of a number with one of them broken into ten."""
    blocks = fewest(request.item)
    ways = [trade.place for trade in trades_of(blocks) if trade.way == "down"]
    return trade_down(blocks, request.chance.choose(ways))


def _read_items(options: Mapping[str, Any]) -> Sequence[int]:
    found = numbers(options["to"], options["zeros"])
    if options["pieces"] == "fewest":
        return found
    # A one does not break.
    return tuple(number for number in found if number >= TEN)


def _build(request: Request) -> Task:
    number, given = request.item, request.options["given"]
    spoken = number_in_words(number, request.vocabulary)
    shown = {"digits": f"{number}", "words": spoken, "expanded": expanded_form(number)}[given]
    prompt = f"Show {shown} with blocks."
    found = [(rule, rule.wrong(number)) for rule in BUILDING]
    return Task(
        skill=request.skill,
        kind="build",
        prompt=prompt,
        say=f"{prompt} Begin with the largest place.",
        manipulative="PlaceValueBlocks",
        start={**mat(fewest(0)), **columns(number), "digits": False, "trades": "any"},
        ask={"by": "manipulative"},
        goal=_shows(number),
        answer=f"{number}",
        spoken=spoken,
        steps=building_steps(number),
        mistakes=foreseen(
            found,
            request.vocabulary,
            right=number,
            when=_shows,
            numbers=done_with("write", number=number),
        ),
    )


def _shows(number: int) -> Predicate:
    return ["=", "number", number]


def _empty(number: int) -> dict[str, Any]:
    """Return the traits of an empty mat with columns for the number."""
    return {**mat(fewest(0)), **columns(number), "digits": False, "buttons": False}


def _read_words(request: Request) -> Task:
    number = request.item
    words = number_in_words(number, request.vocabulary)
    found = [(rule, rule.wrong(number)) for rule in WORDS]
    return _typed(
        request,
        number,
        f"Write in digits: {words}.",
        _empty(number),
        steps=words_steps(number, request.vocabulary),
        mistakes=foreseen(
            found,
            request.vocabulary,
            right=number,
            numbers=done_with("write", number=number),
        ),
        kind="words",
    )


def _choose_words(request: Request) -> Task:
    number, vocabulary = request.item, request.vocabulary

    def named(other: int) -> str:
        return number_in_words(other, vocabulary)

    found = [(rule, rule.wrong(number)) for rule in WORDS]
    wrong = _some_wrong(request, [one for _, one in found if one is not None])
    chosen = [(rule, one) for rule, one in found if one in wrong]
    words = named(number)
    prompt = f"Which words say {number}?"
    return Task(
        skill=request.skill,
        kind="words",
        prompt=prompt,
        say=prompt,
        manipulative="PlaceValueBlocks",
        start={**mat(fewest(number)), **columns(number), **ONLY_SHOWN},
        ask={
            "by": "choice",
            "choices": request.chance.shuffled([words, *(named(other) for other in wrong)]),
        },
        goal=["=", "answer", words],
        answer=words,
        spoken=words,
        steps=saying_steps(number, vocabulary),
        mistakes=foreseen(
            chosen,
            vocabulary,
            right=number,
            named=named,
            numbers=done_with("write", number=number),
        ),
    )


def _some_wrong(request: Request, foreseen_: Iterable[int]) -> list[int]:
    """Return other numbers for a choice: foreseen wrong ones first, then near ones."""
    likely = [other for other in dict.fromkeys(foreseen_) if 0 < other <= LARGEST]
    near = [request.item + by for by in NEAR if 0 < request.item + by <= LARGEST]
    others = [other for other in near if other not in likely]
    found = [*request.chance.shuffled(likely), *request.chance.shuffled(others)]
    return found[: MOST_CHOICES - 1]


def _expand(request: Request) -> Task:
    number = request.item
    form = expanded_form(number)
    prompt = f"Write {number} in expanded form."
    found = [(rule, rule.wrong(number)) for rule in EXPANDING]
    orders = [" + ".join(map(str, order)) for order in permutations(parts_of(fewest(number)))]
    return Task(
        skill=request.skill,
        kind="expand",
        prompt=prompt,
        say=f"{prompt} What is each digit worth?",
        manipulative="PlaceValueBlocks",
        start={**mat(fewest(number)), **columns(number), **ONLY_SHOWN},
        ask={"by": "keypad", "form": "sum"},
        # The parts may be added in any order.
        goal=["in", "answer", orders],
        answer=form,
        spoken=form,
        steps=expanding_steps(number),
        mistakes=foreseen(
            found, request.vocabulary, right=form, numbers=done_with("expand", number=number)
        ),
        parts=("Read it aloud.", "Then write what each digit is worth."),
    )


def _join(request: Request) -> Task:
    number = request.item
    parts = parts_of(fewest(number))
    if request.options["parts"] == "mixed":
        parts = list(request.chance.choose([*permutations(parts)][1:]))
    found = [(rule, rule.wrong(number)) for rule in FROM_PARTS]
    in_order = [(rule, rule.wrong(parts)) for rule in FROM_PARTS_IN_ORDER]
    return _typed(
        request,
        number,
        f"Which number is {' + '.join(map(str, parts))}?",
        _empty(number),
        steps=joining_steps(number),
        mistakes=foreseen(
            [*found, *in_order],
            request.vocabulary,
            right=number,
            numbers=done_with("write", number=number, parts=parts),
        ),
        kind="join",
    )


def _items(options: Mapping[str, Any]) -> Sequence[int]:
    return numbers(options["to"], options["zeros"])


def _items_of_parts(options: Mapping[str, Any]) -> Sequence[int]:
    return numbers(options["to"], options["zeros"], 2)


def _difficulty(number: int) -> int:
    return number


GENERATORS = {
    "place_value.read_blocks": TaskGenerator(items=_read_items, task=_read, difficulty=_difficulty),
    "place_value.build_number": TaskGenerator(items=_items, task=_build, difficulty=_difficulty),
    "place_value.read_words": TaskGenerator(items=_items, task=_read_words, difficulty=_difficulty),
    "place_value.choose_words": TaskGenerator(
        items=_items, task=_choose_words, difficulty=_difficulty
    ),
    "place_value.expanded_form": TaskGenerator(
        items=_items_of_parts, task=_expand, difficulty=_difficulty
    ),
    "place_value.from_expanded": TaskGenerator(
        items=_items_of_parts, task=_join, difficulty=_difficulty
    ),
}
