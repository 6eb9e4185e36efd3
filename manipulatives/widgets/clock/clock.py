"""The clock as a widget: what it shows, and how its hands may be moved."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

import traitlets

from manipulatives.drawings.clock import clock_drawing
from manipulatives.drawings.svg import svg_of
from manipulatives.maths.time.day import HALF_DAY
from manipulatives.maths.time.dial import check_dial, dial_at, dial_facts, hour_passed, time_shown
from manipulatives.maths.vocabulary import VOCABULARIES
from manipulatives.widgets.manipulative import Manipulative, value_errors_as_trait_errors
from manipulatives.words.clock_digits import in_digits, parse_time
from manipulatives.words.dial_hints import why_no_time

if TYPE_CHECKING:
    from traitlets.utils.bunch import Bunch

SNAPS = (60, 30, 15, 5, 1)

# What a twelve-hour clock shows says nothing of the half of the day.
_TWELVE_HOUR = re.compile(r"\s*([1-9]|1[0-2]):[0-5][0-9]\s*")


class Clock(Manipulative, folder="clock", state="dial", takes=("time",)):
    """A clock with two hands that a child takes hold of, by finger, mouse, pen or keys.

    The hands are geared like those of a real clock: the hour hand goes on with the minute hand,
    past twelve the hour changes, and between 11:59 and 12:00 the half of the day. In the mode
    "free" each hand is moved alone, as a child does who sets a time; then no clock may be able to
    show what they say, `time` is None, and `why_no_time` says which hand is wrong. When the gears
    take hold again, the hour hand goes to the nearest place that fits the minute hand.

    A hand is taken anywhere along its length and dragged, or tapped and then sent to where the
    face is tapped; or it is moved with the step buttons, or with keys:

    | key | the hand that has the focus |
    | --- | --- |
    | Right, Up | a step on; steps are as long as `snap`, and a step on from 12 begins a new turn |
    | Left, Down | a step back |
    | Shift with Right or Up | a larger step on: an hour for the hour hand; 5, 15, 30, 60 or 180
      minutes for the minute hand, with a snap of 1, 5, 15, 30 or 60 |
    | Shift with Left or Down | a larger step back |
    | Home | the minute hand to the 12 of this hour, the hour hand to the 12 of this half day |
    | End | the last step before the next 12 |
    | Escape | back to where the drag began |

    With `hour_drag` "steps" the geared hour hand goes by whole hours (larger steps are three
    hours) and the minute hand stays. PageUp and PageDown are not used: they turn the board.

    Args:
        time: what the clock shows at first, such as "4:35", "16:35", "4:35 pm" or "noon". Without
            a.m. or p.m. it is a time of the whole day, so "4:35" is in the morning.
        traits: any of the traits below by name; `dial` in place of `time` sets the hands apart.

    Raises:
        ValueError: `time` is no time of day.
        traitlets.TraitError: a trait is given what it cannot be.
        TypeError: there is no such trait, or both `time` and `dial` are given.

    Example:
        >>> clock = Clock(time="4:35", snap=15)
        >>> clock.time, clock.hour, clock.minute, clock.half
        ('4:35', 4, 35, 'am')
        >>> clock.dial = {"hour": 240, "minute": 35, "half": "am"}
        >>> clock.time is None, clock.why_no_time
        (True, 'The short hand belongs between 3 and 4, nearer 4.')
    """

    dial = traitlets.Dict(
        help="Where the hands stand: `hour`, the hour hand in minutes of its half day, 0 to 719; "
        "`minute`, the minute hand, 0 to 59; `half`, the half of the day, am or pm.",
    ).tag(sync=True)
    mode = traitlets.Enum(
        ("geared", "free"),
        "geared",
        help="geared: each hand moves the other, as in a real clock. free: each moves alone.",
    ).tag(sync=True)
    hour_drag = traitlets.Enum(
        ("turns", "steps"),
        "turns",
        help="What a geared hour hand does when it is moved. turns: it turns the minute hand. "
        "steps: it goes by whole hours and the minute hand stays.",
    ).tag(sync=True)
    snap = traitlets.Enum(
        SNAPS,
        5,
        help="Minutes between the places where a hand stays; a free hour hand counts its own, "
        "half a degree each.",
    ).tag(sync=True)
    movable = traitlets.Bool(
        True, help="Whether the hands can be moved; if not, the clock is a picture to read."
    ).tag(sync=True)
    numerals = traitlets.Bool(True, help="Whether the hours are written, 1 to 12.").tag(sync=True)
    ticks = traitlets.Bool(True, help="Whether every minute has its mark.").tag(sync=True)
    minute_numbers = traitlets.Bool(
        False, help="Whether the minutes are written around the dial, 0, 5, 10 to 55."
    ).tag(sync=True)
    digital = traitlets.Bool(False, help="Whether the time is shown in digits.").tag(sync=True)
    words = traitlets.Bool(False, help="Whether the time is shown in words.").tag(sync=True)
    sector = traitlets.Bool(
        False, help="Whether the dial is shaded from the last hour passed to the next."
    ).tag(sync=True)
    arc = traitlets.Bool(
        False,
        help="Whether the way of the minute hand from the 12 is shown in pieces of five minutes, "
        "with the minute numbers counted so far marked.",
    ).tag(sync=True)
    half_day = traitlets.Bool(
        False, help="Whether digits and words tell a.m. from p.m., and noon from midnight."
    ).tag(sync=True)
    vocabulary = traitlets.Enum(
        VOCABULARIES,
        "us",
        help="us: four thirty-five, p.m. uk: twenty-five to five, pm.",
    ).tag(sync=True)
    buttons = traitlets.Bool(
        True, help="Whether there are step buttons for both hands, undo and reset."
    ).tag(sync=True)
    panel = traitlets.Bool(
        True, help="Whether there are switches for what is shown, the snap and the gears."
    ).tag(sync=True)

    def __init__(self, time: str | None = None, **traits: Any) -> None:
        if time is not None:
            if "dial" in traits:
                raise TypeError("A Clock takes a time or a dial, not both: they may disagree.")
            traits["dial"] = dial_at(parse_time(time))
        super().__init__(**traits)

    @property
    def time(self) -> str | None:
        """What the clock shows, such as "4:35", or None when no clock could stand like that.

        It can be set to whatever the constructor takes. Digits of a twelve-hour clock, "1:00" to
        "12:59", leave the half of the day as it is.

        Raises:
            ValueError: set to what is no time of day.
        """
        shown = time_shown(self.dial)
        return None if shown is None else in_digits(shown)

    @time.setter
    def time(self, text: str) -> None:
        minute = parse_time(text)
        if _TWELVE_HOUR.fullmatch(text):
            minute = minute % HALF_DAY + (HALF_DAY if self.half == "pm" else 0)
        self.dial = dial_at(minute)

    @property
    def hour(self) -> int:
        """The numeral, 1 to 12, that the hour hand has reached or passed last."""
        return hour_passed(self.dial["hour"])

    @property
    def minute(self) -> int:
        """The minutes, 0 to 59, that the minute hand has gone since the 12."""
        return self.dial["minute"]

    @property
    def half(self) -> str:
        """The half of the day, "am" or "pm"."""
        return self.dial["half"]

    @property
    def facts(self) -> dict[str, int | str | bool | None]:
        """What is true of the dial, as goals and mistakes ask for it: see `dial_facts`."""
        return {**dial_facts(self.dial)}

    @property
    def why_no_time(self) -> str | None:
        """What is wrong with the hour hand in one sentence, or None when there is a time."""
        return why_no_time(self.dial)

    def still(self) -> str:
        """Return a picture of the clock as SVG text, for readers without a live host."""
        shown = ("numerals", "ticks", "minute_numbers", "sector", "arc")
        return svg_of(clock_drawing(self.dial, **{name: getattr(self, name) for name in shown}))

    @traitlets.default("dial")
    def _twelve(self) -> dict[str, Any]:
        return {**dial_at(0)}

    @traitlets.validate("dial")
    def _check_dial(self, proposal: Bunch) -> dict[str, Any]:
        with value_errors_as_trait_errors():
            return {**check_dial(proposal["value"])}

    @traitlets.validate("snap")
    def _check_snap(self, proposal: Bunch) -> int:
        # True and 1.0 are equal to 1, but the browser is not to get them.
        if type(proposal["value"]) is not int:
            raise traitlets.TraitError(
                f"The snap is {', '.join(map(str, SNAPS[:-1]))} or {SNAPS[-1]} minutes, "
                f"not {proposal['value']!r}."
            )
        return proposal["value"]

    @traitlets.observe("mode")
    def _mesh(self, change: Bunch) -> None:
        """The gears take hold: the hour hand goes to the nearest place that fits."""
        if change["new"] == "geared":
            meant = dial_facts(self.dial)["meant"]
            self.dial = dial_at(meant + (HALF_DAY if self.half == "pm" else 0))
