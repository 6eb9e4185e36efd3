"""A pattern of difficulty is met exactly, task by task, however the digits fall.

Carries and borrows are counted here from the digits, as they are defined: a column carries when
its digits and what is carried into it come to ten or more, and borrows when its upper digit, less
what was borrowed from it, is smaller than the lower one.
"""

from __future__ import annotations

import re

from manipulatives.lessons.tasks.chance import Chance
from manipulatives.lessons.tasks.make import make_tasks
from support.seeds import THOROUGH

ROUNDS = 10_000 if THOROUGH else 2_000
PLACES = ("ones", "tens", "hundreds")


def places_of(operation, upper, lower):
    """Which places are regrouped, the ones first."""
    found, over = [], 0
    for place in PLACES:
        above, below = upper % 10, lower % 10
        over = int(above + below + over >= 10 if operation == "+" else above - over < below)
        if over:
            found.append(place)
        upper, lower = upper // 10, lower // 10
    return found


def through_a_zero(upper, lower):
    """Whether a subtraction regroups from a ten that is zero."""
    return upper % 10 < lower % 10 and upper // 10 % 10 == 0


def asked_for(skill, upper, operation, lower):
    """The kind of difficulty that a sum has, as a round asks for it."""
    places = places_of(operation, upper, lower)
    if operation == "-" and "three" in skill and through_a_zero(upper, lower):
        return "zero"
    places = [place for place in places if place != "hundreds"] if "three" in skill else places
    return {(): "none", ("ones",): "ones", ("tens",): "tens", ("ones", "tens"): "both"}[(*places,)]


KINDS = {
    "addition.two_digit": ("none", "ones", "tens", "both"),
    "addition.three_digit": ("none", "ones", "tens", "both"),
    "subtraction.three_digit": ("none", "ones", "tens", "both", "zero"),
    "subtraction.two_digit": ("none", "ones"),
}


def test_rounds_have_exactly_the_pattern_that_was_asked_for():
    chance = Chance("patterns")
    for seed in range(ROUNDS):
        skill = chance.choose(list(KINDS))
        pattern = [chance.choose(KINDS[skill]) for _ in range(3)]
        tasks = make_tasks(skill, seed=seed, count=3, options={"regroup": pattern}, twins=0)
        for task, kind in zip(tasks, pattern, strict=True):
            upper, operation, lower = re.fullmatch(r"(\d+) ([+-]) (\d+)", task.prompt).groups()
            found = asked_for(skill, int(upper), operation, int(lower))
            assert found == kind, (skill, task.prompt, kind)
