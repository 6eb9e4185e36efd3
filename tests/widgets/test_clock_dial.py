"""The clock's state and geometry in the browser's language, without a browser."""

from __future__ import annotations

import json
import math
from datetime import datetime, timedelta
from fractions import Fraction
from itertools import product

import pytest
from shapely import LineString, Point

from manipulatives.data import table
from manipulatives.maths.time.dial import dial_at, dial_facts
from manipulatives.words.dial_hints import why_no_time
from support.files import ROOT

CASES = ROOT / "tests" / "cases"
DIALS = json.loads((CASES / "dials.json").read_text("utf-8"))
DRAGS = json.loads((CASES / "clock_drags.json").read_text("utf-8"))
FACE = {
    part: {name: length if name == "gap" else length / 100 for name, length in lengths.items()}
    for part, lengths in table("clock_face").items()
}

MODULE = "clock/dial.js"
USUAL = {"mode": "geared", "hour_drag": "turns", "snap": 5}
SNAPS = (1, 5, 15, 30, 60)
LARGER = {1: 5, 5: 15, 15: 30, 30: 60, 60: 180}


def rules(**given):
    return {**USUAL, **given}


EVERY_RULE = [
    rules(mode=mode, hour_drag=hour_drag, snap=snap)
    for mode, hour_drag, snap in product(("geared", "free"), ("turns", "steps"), SNAPS)
]
SOME_DIALS = [
    *(dial_at(minute) for minute in (0, 1, 59, 65, 275, 277, 390, 655, 719, 720, 995, 1439)),
    {"hour": 240, "minute": 30, "half": "am"},
    {"hour": 719, "minute": 0, "half": "pm"},
    {"hour": 100, "minute": 7, "half": "pm"},
]


class Reference:
    """What hands do, worked out in another way: real dates, and a search among the places."""

    def __init__(self, dial, hand, rules):
        self.dial, self.hand, self.geared = dial, hand, rules["mode"] == "geared"
        by_hours = self.geared and hand == "hour" and rules["hour_drag"] == "steps"
        self.step = 60 if by_hours else rules["snap"]
        self.turn = 720 if hand == "hour" else 60
        meant = dial_facts(dial)["meant"] + (720 if dial["half"] == "pm" else 0)
        self.start = meant if self.geared else dial[hand]
        self.first = self.start if by_hours else 0

    def _places(self, low, high):
        return [at for at in range(low, high) if (at - self.first) % self.step == 0]

    def _at(self, place):
        if not self.geared:
            return {**self.dial, self.hand: place % self.turn}
        when = datetime(2024, 2, 28) + timedelta(minutes=place)  # noqa: DTZ001 - no zone on a dial
        return {
            "hour": when.hour % 12 * 60 + when.minute,
            "minute": when.minute,
            "half": when.strftime("%p").lower(),
        }

    def turned(self, degrees):
        """Return the dial after the hand was turned."""
        to = self.start + Fraction(degrees) / (6 if self.hand == "minute" else Fraction(1, 2))
        places = self._places(math.floor(to) - 60, math.ceil(to) + 61)
        nearest = min(places, key=lambda place: (abs(to - place), -place))
        stays = abs(to - self.start) <= abs(to - nearest)
        return self._at(self.start if stays else nearest)

    def keyed(self, key):
        """Return the dial after a key, or None."""
        larger = 60 if self.hand == "hour" and self.step < 60 else LARGER[self.step]
        round_begins = self.start // self.turn * self.turn
        around = self._places(round_begins, round_begins + self.turn)
        places = {
            "Right": min(self._places(self.start + 1, self.start + 61)),
            "Left": max(self._places(self.start - 60, self.start)),
            "Shift+Right": self.start + larger,
            "Shift+Left": self.start - larger,
            "Home": around[0],
            "End": around[-1],
        }
        way = key.replace("Arrow", "").replace("Up", "Right").replace("Down", "Left")
        return self._at(places[way]) if way in places and not key.startswith("Page") else None


def test_the_browser_satisfies_the_cases_of_dials(js):
    assert js(MODULE, "facts", [[case["dial"]] for case in DIALS]) == [
        case["facts"] for case in DIALS
    ]
    assert js("clock/describe.js", "whyNoTime", [[case["dial"]] for case in DIALS]) == [
        case["why"] for case in DIALS
    ]


def test_the_browser_knows_of_every_dial_what_python_does(js):
    dials = [
        {"hour": hour, "minute": minute, "half": "am"}
        for hour in range(720)
        for minute in range(60)
    ]
    calls = [[dial] for dial in dials]
    assert js(MODULE, "facts", calls) == [dial_facts(dial) for dial in dials]
    assert js("clock/describe.js", "whyNoTime", calls) == [why_no_time(dial) for dial in dials]


def test_the_browser_puts_the_hands_where_python_does(js):
    assert js(MODULE, "dialAt", [[minute] for minute in range(1440)]) == [
        dial_at(minute) for minute in range(1440)
    ]


@pytest.fixture(scope="module")
def after(js):
    """What the browser makes of the cases, in their order."""
    calls = {
        kind: [
            [case["dial"], case["hand"], case[by], rules(**case["rules"])] for case in DRAGS[kind]
        ]
        for kind, by in (("turns", "degrees"), ("keys", "key"))
    }
    return {
        "turns": js(MODULE, "turned", calls["turns"]),
        "keys": js(MODULE, "keyed", calls["keys"]),
    }


@pytest.mark.parametrize("index", range(len(DRAGS["turns"])))
def test_a_hand_turns_as_the_cases_say(after, index):
    case = DRAGS["turns"][index]
    reference = Reference(case["dial"], case["hand"], rules(**case["rules"]))
    assert reference.turned(case["degrees"]) == case["after"], case["about"]
    assert after["turns"][index] == case["after"], case["about"]


@pytest.mark.parametrize("index", range(len(DRAGS["keys"])))
def test_a_key_moves_a_hand_as_the_cases_say(after, index):
    case = DRAGS["keys"][index]
    reference = Reference(case["dial"], case["hand"], rules(**case["rules"]))
    assert reference.keyed(case["key"]) == case["after"], case["about"]
    assert after["keys"][index] == case["after"], case["about"]


def test_hands_turn_as_a_search_for_the_nearest_place_finds(js):
    degrees = [quarter / 4 for quarter in range(-3000, 3001, 331)]
    calls = [
        [dial, hand, turn, obeyed]
        for dial, hand, turn, obeyed in product(
            SOME_DIALS, ("hour", "minute"), [*degrees, 0, 15, -15, 3, 360, -360], EVERY_RULE
        )
    ]
    for call, after in zip(calls, js(MODULE, "turned", calls), strict=True):
        dial, hand, turn, obeyed = call
        assert after == Reference(dial, hand, obeyed).turned(turn), call


def test_keys_move_hands_as_a_search_for_the_next_place_finds(js):
    arrows = [f"Arrow{way}" for way in ("Right", "Up", "Left", "Down")]
    keys = [*arrows, *(f"Shift+{arrow}" for arrow in arrows), "Home", "End", "PageDown", "Enter"]
    calls = [
        [dial, hand, key, obeyed]
        for dial, hand, key, obeyed in product(SOME_DIALS, ("hour", "minute"), keys, EVERY_RULE)
    ]
    for call, after in zip(calls, js(MODULE, "keyed", calls), strict=True):
        dial, hand, key, obeyed = call
        assert after == Reference(dial, hand, obeyed).keyed(key), call


def test_a_geared_clock_shows_a_time_whatever_is_done_to_it(js):
    calls = [
        [dial, hand, turn, obeyed]
        for dial, hand, turn, obeyed in product(
            SOME_DIALS, ("hour", "minute"), (0, 1, -40, 777.5), EVERY_RULE
        )
        if obeyed["mode"] == "geared"
    ]
    assert all(after["hour"] % 60 == after["minute"] for after in js(MODULE, "turned", calls))


def test_step_buttons_come_near_enough_to_every_place(js):
    """A goal allows seven half degrees beside the place, about a finger's breadth."""
    free = rules(mode="free", snap=1)
    dials = [{"hour": hour, "minute": 0, "half": "am"} for hour in range(0, 720, 15)]
    pressed = js(MODULE, "pressed", [[dial, "hour", 1, free] for dial in dials])
    stops = [dial["hour"] for dial in pressed]
    assert stops == [*range(15, 720, 15), 0]
    for hour in range(720):
        assert min(abs((hour - stop + 360) % 720 - 360) for stop in stops) <= 7


def test_a_step_button_moves_a_hand(js):
    presses = [
        (rules(), "hour", 1, 335),
        (rules(hour_drag="steps"), "hour", -1, 215),
        (rules(), "minute", 1, 280),
        (rules(snap=15), "minute", -1, 270),
        (rules(mode="free"), "hour", 1, 285),
        (rules(mode="free", snap=60), "hour", -1, 240),
    ]
    dials = js(
        MODULE, "pressed", [[dial_at(275), hand, way, obeyed] for obeyed, hand, way, _ in presses]
    )
    assert [dial["hour"] for dial in dials] == [hour for *_, hour in presses]


def test_the_way_between_two_dials_is_the_shorter_one(js):
    calls = [[dial_at(715), dial_at(725)], [dial_at(5), dial_at(1435)], [dial_at(0), dial_at(720)]]
    assert js(MODULE, "minutesBetween", calls) == [10, -10, -720]


def test_the_parts_of_the_face_do_not_touch():
    """Numerals are as wide as two digits, and the font's digits are 0.6 wide and 0.7 tall."""
    numerals, minutes = FACE["numerals"], FACE["minute_numbers"]
    corner = math.hypot(0.6 * numerals["size"], 0.35 * numerals["size"])
    assert numerals["radius"] + corner < FACE["five_ticks"]["inner"] + 0.02
    assert numerals["radius"] - corner > FACE["hour"]["length"]
    assert (
        FACE["minute"]["grip"] + FACE["grip"]["radius"]
        < numerals["radius"] - 0.35 * (numerals["size"])
    )
    assert FACE["hour"]["length"] < FACE["minute"]["grip"] - FACE["grip"]["radius"] + 0.01
    assert minutes["radius"] - minutes["badge"] > FACE["rim"]["radius"] + FACE["rim"]["width"] / 2
    assert minutes["radius"] + minutes["badge"] <= FACE["field"]["numbered"]
    assert FACE["minute"]["width"] + 2 * FACE["minute"]["halo"] < FACE["hour"]["width"]


@pytest.mark.parametrize("hand", ["hour", "minute"])
def test_the_distance_to_a_hand_is_that_to_a_line(js, hand):
    tip = FACE[hand]["length"] * 100
    points = [(right, down) for right in range(-120, 121, 24) for down in range(-120, 121, 24)]
    dials = [dial_at(minute) for minute in (0, 65, 275, 500)]
    calls = [[dial, hand, {"x": x, "y": y}] for dial in dials for x, y in points]
    found = js("clock/face.js", "distances", calls)
    for (dial, _, point), distances in zip(calls, found, strict=True):
        turn = math.radians(dial["hour"] / 2 if hand == "hour" else dial["minute"] * 6)
        line = LineString([(0, 0), (tip * math.sin(turn), -tip * math.cos(turn))])
        assert distances["line"] == pytest.approx(line.distance(Point(point["x"], point["y"])))
        grip = FACE[hand]["grip"] * 100
        middle = Point(grip * math.sin(turn), -grip * math.cos(turn))
        assert distances["grip"] == pytest.approx(middle.distance(Point(point["x"], point["y"])))


def test_the_nearer_hand_is_taken_and_of_two_together_the_one_with_the_nearer_grip(js):
    touches = [
        (275, 137.5, 40, "hour"),
        (275, 210, 40, "minute"),
        (275, 150, 40, "hour"),
        (275, 195, 40, "minute"),
        (0, 0, 25, "hour"),
        (0, 0, 35, "hour"),
        (0, 0, 50, "minute"),
        (0, 0, 85, "minute"),
        (65, 32, 24, "hour"),
        (65, 30, 24, "hour"),
        (65, 30, 70, "minute"),
        (655, 328, 24, "hour"),
        (390, 195, 50, "hour"),
        (390, 180, 50, "minute"),
    ]
    points = js("clock/face.js", "around", [[turn, radius] for _, turn, radius, _ in touches])
    calls = [[dial_at(minute), point] for (minute, *_), point in zip(touches, points, strict=True)]
    assert js("clock/face.js", "nearerHand", calls) == [hand for *_, hand in touches]


def test_an_angle_is_found_again(js):
    degrees = [*range(-179, 181)]
    points = js("clock/face.js", "around", [[turn, 50] for turn in degrees])
    assert js("clock/face.js", "angleOf", [[point] for point in points]) == pytest.approx(degrees)


def test_the_way_between_two_angles_is_the_shorter_one(js):
    calls = [[350, 10], [10, 350], [0, 180], [90, 100], [720, 30], [-30, 30], [180, 0]]
    assert js("clock/face.js", "turnBetween", calls) == [20, -20, 180, 10, 30, 60, 180]


def test_the_arc_ends_at_the_minute_hand_in_pieces_of_five(js):
    half_gap = FACE["arc"]["gap"] / 12
    for minute, text in enumerate(js("clock/face.js", "arcDashes", [[at] for at in range(60)])):
        dashes = [float(dash) for dash in text.split()]
        assert len(dashes) % 2 == 0, "an odd number of dashes would be drawn in turns"
        assert len(dashes) // 2 == max(1, math.ceil(minute / 5))
        assert half_gap + sum(dashes[:-1]) == pytest.approx(minute or half_gap)
        assert dashes[-1] == 60


def test_the_short_hand_is_described_among_the_numerals(js):
    places = {
        0: "exactly on the 12",
        5: "between 12 and 1, nearer 12",
        240: "exactly on the 4",
        270: "halfway between 4 and 5",
        275: "between 4 and 5, nearer 5",
        695: "between 11 and 12, nearer 12",
    }
    assert js("clock/describe.js", "hourPlace", [[hour] for hour in places]) == [*places.values()]


def test_the_long_hand_is_described_among_the_marks(js):
    places = {
        0: "exactly on the 12",
        35: "exactly on the 7",
        1: "1 mark past the 12",
        37: "2 marks past the 7",
        59: "4 marks past the 11",
    }
    assert js("clock/describe.js", "minutePlace", [[at] for at in places]) == [*places.values()]
