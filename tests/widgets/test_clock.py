"""The clock as Python sees it, with no browser attached."""

from __future__ import annotations

import doctest
from xml.etree import ElementTree as ET

import pytest
import traitlets

import manipulatives.widgets.clock.clock
from manipulatives.maths.time.dial import dial_at, dial_facts
from manipulatives.widgets.clock import Clock

WRONG = {"hour": 240, "minute": 35, "half": "am"}


def test_the_examples_in_its_reference_are_true():
    failed, tried = doctest.testmod(manipulatives.widgets.clock.clock)
    assert tried > 0
    assert failed == 0


def test_a_new_clock_shows_twelve():
    clock = Clock()
    assert clock.time == "12:00"
    assert clock.half == "am"


@pytest.mark.parametrize(
    ("written", "dial"),
    [
        ("4:35", {"hour": 275, "minute": 35, "half": "am"}),
        ("04:35", {"hour": 275, "minute": 35, "half": "am"}),
        ("4:35 pm", {"hour": 275, "minute": 35, "half": "pm"}),
        ("4:35 p.m.", {"hour": 275, "minute": 35, "half": "pm"}),
        ("16:35", {"hour": 275, "minute": 35, "half": "pm"}),
        ("12:30", {"hour": 30, "minute": 30, "half": "pm"}),
        ("noon", {"hour": 0, "minute": 0, "half": "pm"}),
        ("midnight", {"hour": 0, "minute": 0, "half": "am"}),
    ],
)
def test_a_time_is_written_as_people_write_it(written, dial):
    assert Clock(time=written).dial == dial
    assert Clock(written).dial == dial


@pytest.mark.parametrize("minute", [0, 5, 65, 275, 719, 720, 995, 1439])
def test_readings_are_those_of_the_dial(minute):
    clock = Clock(dial=dial_at(minute))
    assert clock.hour == (minute // 60 % 12 or 12)
    assert clock.minute == minute % 60
    assert clock.time == f"{clock.hour}:{clock.minute:02}"
    assert clock.half == ("pm" if minute >= 720 else "am")
    assert clock.facts == dial_facts(clock.dial)
    assert clock.why_no_time is None


def test_hands_that_do_not_fit_show_no_time_and_say_why():
    clock = Clock(mode="free", dial=WRONG)
    assert clock.time is None
    assert clock.why_no_time == "The short hand belongs between 3 and 4, nearer 4."
    assert (clock.hour, clock.minute) == (4, 35)
    assert clock.facts["minutes"] is None
    assert clock.facts["lag"] == 25


def test_a_time_can_be_set():
    clock = Clock(mode="free", dial=WRONG)
    clock.time = "9:15"
    assert clock.dial == {"hour": 555, "minute": 15, "half": "am"}


@pytest.mark.parametrize("half", ["am", "pm"])
@pytest.mark.parametrize("shown", ["12:00", "12:30", "4:35", "11:59"])
def test_setting_the_time_that_it_shows_changes_nothing(half, shown):
    clock = Clock(time=f"{shown} {half}")
    before = clock.dial
    clock.time = clock.time
    assert clock.dial == before


@pytest.mark.parametrize(("written", "half"), [("4:35 am", "am"), ("0:35", "am"), ("noon", "pm")])
def test_a_half_of_the_day_that_is_written_is_set(written, half):
    clock = Clock(time="4:35 pm" if half == "am" else "4:35 am")
    clock.time = written
    assert clock.half == half


@pytest.mark.parametrize("written", ["25:00", "4:60", "half four", "", "435"])
def test_what_is_no_time_is_refused_and_leaves_the_clock_as_it_was(written):
    clock = Clock(time="4:35")
    with pytest.raises(ValueError, match="is no time of day") as error:
        clock.time = written
    assert repr(written) in str(error.value)
    assert clock.time == "4:35"
    with pytest.raises(ValueError, match="is no time of day"):
        Clock(time=written)


@pytest.mark.parametrize(
    ("name", "value", "allowed"),
    [
        ("dial", {"hour": 720, "minute": 0, "half": "am"}, "0 to 719"),
        ("dial", {"hour": 0, "minute": 60, "half": "am"}, "0 to 59"),
        ("dial", {"hour": 0, "minute": 0, "half": "AM"}, '"am" or "pm"'),
        ("dial", {"hour": 0, "minute": 0}, "half"),
        ("dial", {"hour": 0.0, "minute": 0, "half": "am"}, "whole numbers"),
        ("dial", "4:35", "dict"),
        ("snap", 7, r"\[60, 30, 15, 5, 1\]"),
        ("snap", True, "60, 30, 15, 5 or 1"),
        ("snap", 5.0, "60, 30, 15, 5 or 1"),
        ("mode", "loose", r"\['geared', 'free'\]"),
        ("hour_drag", "jumps", r"\['turns', 'steps'\]"),
        ("vocabulary", "fr", "'us'.*'uk'"),
        ("numerals", "yes", "boolean"),
        ("panel", None, "boolean"),
    ],
)
def test_a_wrong_value_is_refused_with_what_is_allowed_and_leaves_the_clock_as_it_was(
    name, value, allowed
):
    clock = Clock(time="4:35")
    before = clock.get_state()
    with pytest.raises(traitlets.TraitError, match=allowed) as error:
        setattr(clock, name, value)
    given = value["half"] if isinstance(value, dict) and "half" in value else value
    assert str(given) in str(error.value)
    assert clock.get_state() == before
    with pytest.raises(traitlets.TraitError, match=allowed):
        Clock(**{name: value})


def test_a_trait_that_does_not_exist_is_refused_by_name():
    with pytest.raises(TypeError, match=r"no .numeral.*numerals"):
        Clock(numeral=False)


def test_time_and_dial_together_are_refused():
    with pytest.raises(TypeError, match="not both"):
        Clock(time="4:35", dial=WRONG)


def test_the_dial_that_was_given_is_not_kept_itself():
    given = dict(WRONG)
    clock = Clock(dial=given)
    given["hour"] = 0
    assert clock.dial == WRONG


def test_gears_that_take_hold_again_bring_the_hour_hand_to_the_nearest_place():
    clock = Clock(mode="free", dial={"hour": 280, "minute": 35, "half": "pm"})
    clock.mode = "geared"
    assert clock.dial == {"hour": 275, "minute": 35, "half": "pm"}


def test_a_change_is_told_until_it_is_stopped():
    clock = Clock(time="4:35")
    told = []
    stop = clock.on_change(lambda each: told.append((each is clock, each.time)))
    clock.time = "5:00"
    clock.time = "5:00"
    clock.digital = True
    clock.set_state({"dial": dial_at(305)})
    assert told == [(True, "5:00"), (True, "5:05")]
    stop()
    clock.time = "6:00"
    stop()
    assert len(told) == 2


def test_what_a_browser_sends_is_checked_as_well():
    clock = Clock(time="4:35")
    with pytest.raises(traitlets.TraitError, match="0 to 719"):
        clock.set_state({"dial": {"hour": 9999, "minute": 0, "half": "am"}})
    assert clock.time == "4:35"


def test_every_key_of_its_table_is_in_the_reference():
    reference = Clock.__doc__
    for key in ("Right, Up", "Left, Down", "Shift with Right", "Home", "End", "Escape"):
        assert f"| {key}" in reference
    for name in Clock.class_own_traits():
        if not name.startswith("_"):
            assert Clock.class_traits()[name].help


def test_its_picture_is_a_drawing_of_the_same_dial():
    shown = ET.fromstring(Clock(time="4:35").still())  # noqa: S314 - it is our own text
    later = ET.fromstring(Clock(time="5:35").still())  # noqa: S314 - it is our own text
    assert shown.tag.endswith("svg")
    assert "between 4 and 5" in "".join(shown.itertext())
    assert "between 5 and 6" in "".join(later.itertext())


def test_its_picture_leaves_out_what_is_not_shown():
    plain = Clock(time="4:35", numerals=False, ticks=False)
    assert ">11<" not in plain.still()
    assert ">11<" in Clock(time="4:35").still()
    assert ">55<" in Clock(time="4:35", minute_numbers=True).still()


def test_its_bundle_has_a_view_and_a_picture():
    data, _ = Clock(time="4:35")._repr_mimebundle_()
    assert "application/vnd.jupyter.widget-view+json" in data
    assert data["image/svg+xml"].startswith("<svg")
