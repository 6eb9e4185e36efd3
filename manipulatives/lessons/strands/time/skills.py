"""The skills of the time strand, in the order in which they are learnt.

Hour, half hour, quarter hour, five minutes: Boulton-Lewis, Wilss and Mutch, 1997.
"""

from __future__ import annotations

from manipulatives.lessons.catalogue.skill import Option, Skill

Options = dict[str, tuple[Option, ...]]

READ: Options = {"answer": ("keypad", "choice")}
SET: Options = {
    "given": ("digits", "words"),
    "hands": ("free", "geared"),
    "step": (5, 15, 30, 60),
}
MOVE: Options = {"by": tuple(range(5, 65, 5)), "answer": ("keypad", "hands")}
# Intervals of time come in Grade 3 in the one and are compared in Year 2 in the other.
INTERVALS = ("CCSS 3.MD.A.1", "England Y2 measurement 6")

SKILLS = (
    Skill(
        id="time.read_hour",
        name="O'clock",
        title="Read to the hour",
        standards=("CCSS 1.MD.B.3", "England Y1 measurement 6"),
        limits="The twelve hours of a dial.",
        manipulative="Clock",
        tasks=6,
        seconds=120,
        words=("hour", "o'clock", "short hand", "long hand"),
        options=READ,
    ),
    Skill(
        id="time.read_half",
        name="Half past",
        title="Read to the half hour",
        standards=("CCSS 1.MD.B.3", "England Y1 measurement 6"),
        limits="The twelve half hours of a dial.",
        builds_on=("time.read_hour",),
        manipulative="Clock",
        tasks=6,
        seconds=150,
        words=("half past",),
        options=READ,
    ),
    Skill(
        id="time.read_quarter",
        name="Quarters",
        title="Read quarter past and to",
        standards=("CCSS 2.MD.C.7", "England Y2 measurement 7"),
        limits="The twenty-four quarter hours of a dial.",
        builds_on=("time.read_half",),
        manipulative="Clock",
        tasks=6,
        seconds=180,
        words=("quarter past", "quarter to"),
        options=READ,
    ),
    Skill(
        id="time.read_five_minutes",
        name="Minutes",
        title="Read to five minutes",
        standards=("CCSS 2.MD.C.7", "England Y2 measurement 7"),
        limits="The 144 times of a dial in steps of five minutes.",
        builds_on=("time.read_quarter", "counting.on_in_fives"),
        manipulative="Clock",
        tasks=5,
        seconds=180,
        words=("minute",),
        options=READ,
    ),
    Skill(
        id="time.set_hands",
        name="Set the clock",
        title="Set the hands to a time",
        standards=(
            "CCSS 1.MD.B.3",
            "CCSS 2.MD.C.7",
            "England Y1 measurement 6",
            "England Y2 measurement 7",
        ),
        limits="Times of a dial in steps of five, 15, 30 or 60 minutes.",
        builds_on=("time.read_hour",),
        manipulative="Clock",
        tasks=5,
        seconds=240,
        options=SET,
    ),
    Skill(
        id="time.later",
        name="Later",
        title="Find the time some minutes later",
        standards=INTERVALS,
        limits="5 to 60 minutes after a time in steps of five minutes.",
        builds_on=("time.read_five_minutes",),
        manipulative="Clock",
        tasks=5,
        seconds=240,
        words=("later", "after"),
        options=MOVE,
    ),
    Skill(
        id="time.earlier",
        name="Earlier",
        title="Find the time some minutes earlier",
        standards=INTERVALS,
        limits="5 to 60 minutes before a time in steps of five minutes.",
        builds_on=("time.later",),
        manipulative="Clock",
        tasks=5,
        seconds=240,
        words=("earlier", "before"),
        options=MOVE,
    ),
)
