from __future__ import annotations

import json
from itertools import product
from pathlib import Path

import pytest

from manipulatives.maths.time.day import DAY
from manipulatives.maths.vocabulary import VOCABULARIES
from manipulatives.words.clock import STYLES, in_words
from manipulatives.words.clock_digits import in_digits

CASES = json.loads((Path(__file__).parents[1] / "cases" / "times.json").read_text("utf-8"))
MODULE = "clock/words.js"


@pytest.mark.parametrize(
    ("vocabulary", "style", "half_day"),
    list(product(VOCABULARIES, (None, *STYLES), (False, True))),
)
def test_the_browser_says_every_minute_of_the_day_as_python_does(js, vocabulary, style, half_day):
    calls = [[minute, vocabulary, style, half_day] for minute in range(DAY)]
    assert js(MODULE, "inWords", calls) == [
        in_words(minute, vocabulary, style, half_day=half_day) for minute in range(DAY)
    ]


@pytest.mark.parametrize(("vocabulary", "half_day"), list(product(VOCABULARIES, (False, True))))
def test_the_browser_writes_every_minute_of_the_day_as_python_does(js, vocabulary, half_day):
    calls = [[minute, vocabulary, half_day] for minute in range(DAY)]
    assert js(MODULE, "inDigits", calls) == [
        in_digits(minute, vocabulary, half_day=half_day) for minute in range(DAY)
    ]


def test_what_is_left_out_means_the_same_in_both_languages(js):
    assert js(MODULE, "inDigits", [[275], [275, "uk"]]) == [in_digits(275), in_digits(275, "uk")]
    assert js(MODULE, "inWords", [[275], [275, "uk"]]) == [in_words(275), in_words(275, "uk")]


@pytest.mark.parametrize("vocabulary", VOCABULARIES)
def test_the_browser_satisfies_the_cases(js, vocabulary):
    minutes = [case["minute"] for case in CASES]
    digits = js(MODULE, "inDigits", [[minute, vocabulary, True] for minute in minutes])
    assert digits == [case[vocabulary]["digits"] for case in CASES]
    for style in STYLES:
        words = js(MODULE, "inWords", [[minute, vocabulary, style] for minute in minutes])
        assert words == [case[style] for case in CASES]
        words = js(MODULE, "inWords", [[minute, vocabulary, style, True] for minute in minutes])
        assert words == [case[vocabulary][style] for case in CASES]
