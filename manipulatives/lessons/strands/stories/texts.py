"""The texts of one-step stories of Penny Cross, in short sentences.

Situations and the places of the unknown are those of Table 1 in the glossary of the Common Core
State Standards for Mathematics (2010): add to and take from with the result, the change or the
start unknown; put together and take apart with the total, an addend or both addends unknown;
compare with the difference, the bigger or the smaller number unknown, said with "more" or "fewer".
"""

from __future__ import annotations

from dataclasses import dataclass

from manipulatives.lessons.strands.penny_cross import GOODS, PEOPLE, Goods


@dataclass(frozen=True)
class Scene:
    """Who a story is about, and what.

    Attributes:
        who: one person.
        other: another one.
        goods: what they have.
    """

    who: str
    other: str
    goods: Goods


def scene(turn: int) -> Scene:
    """Return the scene of a turn; the next turns have others.

    Example:
        >>> scene(0).who, scene(0).goods.many
        ('Nell', 'buns')
    """
    people = len(PEOPLE)
    return Scene(PEOPLE[turn % people], PEOPLE[(turn + 4) % people], GOODS[turn % len(GOODS)])


def story_text(
    situation: str, unknown: str, wording: str, numbers: tuple[int, int], about: Scene
) -> str:
    """Return a story.

    Args:
        situation: "add to", "take from", "put together" or "compare".
        unknown: "result", "change", "start"; "total", "addend", "both"; "difference", "bigger",
            "smaller".
        wording: "more" or "fewer"; of comparisons alone.
        numbers: of add to the start and the change; of take from the same; of put together both
            parts; of compare the bigger and the smaller number.
        about: who and what it is about.

    Raises:
        KeyError: there is no such situation, or it has no such unknown.

    Example:
        >>> story_text("add to", "change", "", (8, 5), scene(0))
        'Nell has 8 buns. Nell bakes some more. Now Nell has 13. How many did Nell bake?'
    """
    return _TEXTS[situation](unknown, wording, numbers, about)


def _add_to(unknown: str, _: str, numbers: tuple[int, int], about: Scene) -> str:
    (start, change), who, goods = numbers, about.who, about.goods
    gets, get = goods.gets
    return {
        "result": f"{who} has {goods.some(start)}. {who} {gets} {change} more. "
        f"How many {goods.many} does {who} have now?",
        "change": f"{who} has {goods.some(start)}. {who} {gets} some more. "
        f"Now {who} has {start + change}. How many did {who} {get}?",
        "start": f"{who} has some {goods.many}. {who} {gets} {change} more. "
        f"Now {who} has {start + change}. How many were there at first?",
    }[unknown]


def _take_from(unknown: str, _: str, numbers: tuple[int, int], about: Scene) -> str:
    (start, change), who, goods = numbers, about.who, about.goods
    loses, lose = goods.loses
    left = start - change
    now = f"Now {left} {_is(left)} left."
    return {
        "result": f"{who} has {goods.some(start)}. {who} {loses} {change}. "
        f"How many {goods.many} are left?",
        "change": f"{who} has {goods.some(start)}. {who} {loses} some. {now} "
        f"How many did {who} {lose}?",
        "start": f"{who} has some {goods.many}. {who} {loses} {change}. {now} "
        "How many were there at first?",
    }[unknown]


def _put_together(unknown: str, _: str, numbers: tuple[int, int], about: Scene) -> str:
    (first, second), who, goods = numbers, about.who, about.goods
    total, (kind, other), places = first + second, goods.kinds, goods.places
    return {
        "total": f"{who} has {first} {kind} {_noun(goods, first)}. "
        f"{who} has {second} {other} {_noun(goods, second)} too. "
        f"How many {goods.many} does {who} have?",
        "addend": f"{who} has {goods.some(total)}. {first} {_is(first)} {kind}. "
        f"The others are {other}. How many {goods.many} are {other}?",
        "both": f"{who} has {goods.some(total)}. {who} puts some {places[0]}, some {places[1]}. "
        "How many may there be in each place?",
    }[unknown]


def _compare(unknown: str, wording: str, numbers: tuple[int, int], about: Scene) -> str:
    (bigger, smaller), who, other, goods = numbers, about.who, about.other, about.goods
    more = bigger - smaller
    # The one who is named first has more.
    many = f"{who} has {goods.some(bigger)}."
    few = f"{other} has {goods.some(smaller)}."
    says = {
        "more": f"{who} has {more} more than {other}.",
        "fewer": f"{other} has {more} fewer than {who}.",
    }[wording]
    asks = {
        "more": f"How many more {goods.many} does {who} have?",
        "fewer": f"How many fewer {goods.many} does {other} have?",
    }[wording]
    return {
        "difference": f"{many} {few} {asks}",
        "bigger": f"{few} {says} How many {goods.many} does {who} have?",
        "smaller": f"{many} {says} How many {goods.many} does {other} have?",
    }[unknown]


def _is(count: int) -> str:
    return "is" if count == 1 else "are"


def _noun(goods: Goods, count: int) -> str:
    return goods.one if count == 1 else goods.many


_TEXTS = {
    "add to": _add_to,
    "take from": _take_from,
    "put together": _put_together,
    "compare": _compare,
}
