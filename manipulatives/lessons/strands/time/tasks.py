"""Tasks of the time strand: reading a clock, setting its hands, and moving them on or back.

The times are those of a dial in steps of five minutes, each as likely as the others.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from manipulatives.lessons.problem import LessonProblem, quoted
from manipulatives.lessons.strands.penny_cross import CLOCKS, EVENTS
from manipulatives.lessons.strands.time.mistakes.foreseen import (
    answers,
    moving_mistakes,
    reading_mistakes,
    setting_mistakes,
    shows,
)
from manipulatives.lessons.strands.time.steps import moving_steps, reading_steps, setting_steps
from manipulatives.lessons.tasks.generator import Request, TaskGenerator
from manipulatives.lessons.tasks.predicates import holds
from manipulatives.lessons.tasks.task import Task
from manipulatives.maths.time.day import HALF_DAY, HOUR, earlier, later
from manipulatives.maths.time.dial import Dial, dial_at, dial_facts
from manipulatives.words.clock import in_words
from manipulatives.words.clock_digits import in_digits, parse_time

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from manipulatives.lessons.tasks.task import Mistake

    MakeTask = Callable[[Request], Task]
    Read = Callable[[str, Mapping[str, Any]], int]

FIVE = 5
MOST_CHOICES = 4
FIVES = range(0, HALF_DAY, FIVE)
TYPED = {"by": "keypad", "form": "time"}
# The town is up from seven in the morning to seven in the evening.
MORNING = 7 * HOUR


def _read(request: Request) -> Task:
    minute = _by_day(request.item)
    mistakes = reading_mistakes(request.item, request.vocabulary)
    choice = request.options["answer"] == "choice"
    prompt = CLOCKS[request.turn % len(CLOCKS)]
    return Task(
        skill=request.skill,
        kind="read",
        prompt=prompt,
        say=f"{prompt} Short hand first, then the long hand.",
        manipulative="Clock",
        start=_start(dial_at(minute), request.vocabulary, mode="geared", movable=False),
        ask={"by": "choice", "choices": _choices(request, mistakes)} if choice else dict(TYPED),
        goal=answers(request.item),
        answer=in_digits(minute),
        spoken=in_words(minute, request.vocabulary),
        steps=reading_steps(minute, request.vocabulary),
        mistakes=mistakes,
    )


def _choices(request: Request, mistakes: Sequence[Mistake]) -> list[str]:
    wrong = [mistake.answer for mistake in mistakes if mistake.answer]
    picked = request.chance.sample(wrong, min(MOST_CHOICES - 1, len(wrong)))
    return request.chance.shuffled([in_digits(request.item), *picked])


def _set(request: Request) -> Task:
    minute, hands, given = _by_day(request.item), request.options["hands"], request.options["given"]
    mistakes = setting_mistakes(request.item, request.vocabulary, geared=hands == "geared")
    start = _elsewhere(request, mistakes)
    spoken = in_words(minute, request.vocabulary)
    event = EVENTS[request.turn % len(EVENTS)]
    prompt = f"{event.at(in_digits(minute) if given == 'digits' else spoken)} Set the clock."
    return Task(
        skill=request.skill,
        kind="set",
        prompt=prompt,
        say=f"{prompt} Long hand first, then the short hand.",
        manipulative="Clock",
        start=_start(start, request.vocabulary, mode=hands, movable=True),
        ask={"by": "manipulative"},
        goal=shows(request.item),
        answer=in_digits(minute),
        spoken=spoken,
        steps=setting_steps(start, minute, request.vocabulary, given=given),
        mistakes=mistakes,
    )


def _elsewhere(request: Request, mistakes: Sequence[Mistake]) -> Dial:
    """Return a dial with both hands elsewhere, and not as in a foreseen mistake."""
    hour, past = divmod(request.item, HOUR)
    half = dial_at(_by_day(request.item))["half"]
    dials = [
        Dial(hour=reading, minute=reading % HOUR, half=half)
        for reading in FIVES
        if reading // HOUR != hour and reading % HOUR != past
    ]
    return next(d for d in request.chance.shuffled(dials) if not _foreseen(d, mistakes))


def _foreseen(dial: Dial, mistakes: Sequence[Mistake]) -> bool:
    facts = dial_facts(dial)
    return any(holds(mistake.when, facts) for mistake in mistakes)


def _move(request: Request) -> Task:
    on, by = request.skill == "time.later", request.options["by"]
    hands = request.options["answer"] == "hands"
    start = _by_day(request.item)
    end = later(start, by) if on else earlier(start, by)
    reading = end % HALF_DAY
    event = EVENTS[request.turn % len(EVENTS)]
    happens = event.in_minutes(by) if on else event.minutes_ago(by)
    asks = "Set the clock." if hands else f"What time {'is' if on else 'was'} that?"
    prompt = f"{happens} {asks}"
    signed = by if on else -by
    return Task(
        skill=request.skill,
        kind="later" if on else "earlier",
        prompt=prompt,
        say=f"The clock shows the time now. {prompt}",
        manipulative="Clock",
        start=_start(dial_at(start), request.vocabulary, mode="geared", movable=True),
        ask={"by": "manipulative"} if hands else dict(TYPED),
        goal=shows(reading) if hands else answers(reading),
        answer=in_digits(end),
        spoken=in_words(end, request.vocabulary),
        steps=moving_steps(start, signed, request.vocabulary),
        mistakes=moving_mistakes(request.item, signed, request.vocabulary, hands=hands),
    )


def _start(dial: Dial, vocabulary: str, *, mode: str, movable: bool) -> dict[str, Any]:
    """Return the traits of the clock, with nothing shown that is asked or that steps will show."""
    return {
        "dial": dict(dial),
        "mode": mode,
        "movable": movable,
        "buttons": movable,
        "snap": FIVE,
        "digital": False,
        "words": False,
        "sector": False,
        "arc": False,
        "vocabulary": vocabulary,
    }


def _by_day(reading: int) -> int:
    return reading if reading >= MORNING else reading + HALF_DAY


def _typed(allowed: Callable[[Mapping[str, Any]], Sequence[int]]) -> Read:
    def read(text: str, options: Mapping[str, Any]) -> int:
        try:
            reading = parse_time(text) % HALF_DAY
        except ValueError as problem:
            raise LessonProblem(
                f"{quoted(text)} is no time", remedy='type it like "4:35"'
            ) from problem
        if reading not in allowed(options):
            raise LessonProblem(
                f"{quoted(text)} is no time that is asked here",
                remedy="type one of the times that the skill is about",
            )
        return reading

    return read


def kind_of_time(reading: int) -> str:
    """Return where the long hand is: on the hour, at half past, in the first half, in the second.

    Example:
        >>> kind_of_time(240), kind_of_time(270), kind_of_time(255), kind_of_time(275)
        ('hour', 'half', 'past', 'to')
    """
    past = reading % HOUR
    if past % (HOUR // 2) == 0:
        return "half" if past else "hour"
    return "past" if past < HOUR // 2 else "to"


def difficulty_of_time(reading: int) -> tuple[int, int]:
    """Return how hard a time is: hours, half hours and quarters come before other minutes.

    That order is the one in which times are learnt (Boulton-Lewis, Wilss and Mutch, 1997).

    Example:
        >>> sorted([275, 255, 270, 240, 250], key=difficulty_of_time)
        [240, 270, 255, 250, 275]
    """
    past = reading % HOUR
    if past % (HOUR // 4) == 0:
        return (0, 2, 1, 3)[past // (HOUR // 4)], past
    return 4, past


def _maker(allowed: Callable[[Mapping[str, Any]], Sequence[int]], task: MakeTask) -> TaskGenerator:
    return TaskGenerator(
        items=allowed,
        task=task,
        kind=kind_of_time,
        difficulty=difficulty_of_time,
        read=_typed(allowed),
    )


def _reads(readings: Sequence[int]) -> TaskGenerator:
    return _maker(lambda _: readings, _read)


def _steps(options: Mapping[str, Any]) -> Sequence[int]:
    return range(0, HALF_DAY, options["step"])


GENERATORS = {
    "time.read_hour": _reads(range(0, HALF_DAY, HOUR)),
    "time.read_half": _reads(range(HOUR // 2, HALF_DAY, HOUR)),
    "time.read_quarter": _reads(range(HOUR // 4, HALF_DAY, HOUR // 2)),
    "time.read_five_minutes": _reads(FIVES),
    "time.set_hands": _maker(_steps, _set),
    "time.later": _maker(lambda _: FIVES, _move),
    "time.earlier": _maker(lambda _: FIVES, _move),
}
