"""The call that makes a round, as it stands in a lesson's notebook."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

from manipulatives.lessons.catalogue.skills import skill_called
from manipulatives.lessons.checks import check_one_of
from manipulatives.lessons.currency import Money, called, check_money
from manipulatives.lessons.lesson import Round as Planned
from manipulatives.lessons.problem import at
from manipulatives.lessons.settings import TIMERS, class_settings
from manipulatives.lessons.strands.sums.columns.methods import METHODS
from manipulatives.lessons.tasks.make import make_tasks
from manipulatives.maths.vocabulary import VOCABULARIES
from manipulatives.widgets.round.board.own_numbers.answer import can_be_typed
from manipulatives.widgets.round.board.widget import BoardRound
from manipulatives.widgets.round.children import manipulative_called

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from manipulatives.lessons.tasks.task import Task
    from manipulatives.widgets.manipulative import Manipulative


def play(
    skill: str,
    *,
    tasks: int | None = None,
    seconds: int | None = None,
    seed: int,
    title: str | None = None,
    vocabulary: str | None = None,
    currency: Money | None = None,
    method: str | None = None,
    timer: str | None = None,
    count_aloud: int | None = None,
    instead: Sequence[str | int] = (),
    **options: Any,
) -> BoardRound:
    """Make a round of a skill; the same call gives the same questions everywhere.

    The call takes plain values only, so that a lesson can be read from a notebook without running
    it. What is left out comes from the class settings of the folder (the file `class.toml`), or
    is what is usual for the skill.

    Args:
        skill: what is practised, as the catalogue names it, such as "time.read_five_minutes".
        tasks: how many questions, 1 to 40.
        seconds: the time allowance of the round, 10 to 3600.
        seed: decides which questions: any whole number from 0 to 999 999 999.
        title: what stands above the round; otherwise the skill's own name.
        vocabulary: "us" (four thirty-five) or "uk" (twenty-five to five).
        currency: whose coins are counted: "usd", "gbp", "eur", "cad", "aud" or "nzd", or a dict
            with coins of your own (`maths.coins.currency`).
        method: how written sums are worked: "counting on", "known facts", "bridging ten",
            "expanded columns" or "number line jumps".
        timer: "shown", "hidden" or "off". It is off unless call or class settings turn it on.
        count_aloud: by which number the class counts at the end, while the board is wiped: 1 to
            100, or 0 for not at all.
        instead: what is asked instead of the questions that the seed gives, one for each in order:
            numbers as somebody types them, such as "37 + 48"; how often the question was drawn
            again; or "" to leave it.
        options: what the skill lets a round set, such as `answer="choice"`.

    Returns:
        The round, which a notebook shows when the call is the last line of a cell.

    Raises:
        LessonProblem: a value is not allowed; the message says what is.

    Example:
        >>> round = play("time.read_five_minutes", tasks=3, seconds=120, seed=90213)
        >>> [task["answer"] for task in round.tasks]
        ['2:00', '9:25', '8:05']
    """
    planned = Planned(
        skill,
        seed,
        title=title,
        tasks=tasks,
        seconds=seconds,
        count_aloud=count_aloud,
        options=options,
        instead=instead,
    )
    settled = _settled(
        vocabulary=vocabulary,
        currency=currency,
        method=method,
        timer=timer,
        count_aloud=count_aloud,
    )
    words, coins, way = settled["vocabulary"], settled["currency"], settled["method"]
    count_aloud = settled["count_aloud"]
    usual = skill_called(skill)
    count = planned.tasks or usual.tasks
    made = make_tasks(
        skill,
        seed=seed,
        count=count,
        vocabulary=words,
        currency=coins,
        method=way,
        options=options,
        instead=planned.instead,
    )
    child = _child(
        usual.manipulative, {"panel": False, "vocabulary": words, "currency": coins, "method": way}
    )
    base = _base(child, made)
    # What belongs together may be impossible half-way: a chart from 901 to 1000 passes 901 to 100.
    with child.hold_trait_notifications():
        for name, value in made[0].start.items():
            setattr(child, name, value)
    set_options = [f"{name}={value}" for name, value in sorted(options.items())]
    if planned.instead:
        set_options.append(f"instead={[*planned.instead]}")
    return BoardRound(
        manipulative=child,
        tasks=[task.to_data() for task in made],
        settings={"currency": coins, "method": way, "options": options},
        setup={
            "title": planned.title or usual.name,
            "skill": skill,
            "options": options,
            "seed": seed,
            "seconds": planned.seconds or usual.seconds,
            "timer": settled["timer"],
            "vocabulary": words,
            "together": usual.together,
            "typed": can_be_typed(skill),
            "wipe": {"by": count_aloud} if count_aloud else None,
            "key": " ".join(
                [skill, str(seed), str(count), words, called(coins), way, *set_options]
            ),
            "base": base,
        },
    )


ALLOWED = {
    "vocabulary": VOCABULARIES,
    "method": METHODS,
    "timer": TIMERS,
}


def _settled(**given: Any) -> dict[str, Any]:
    """Return what was given, and for what was not what the class settings say."""
    settings = class_settings(Path()) if None in given.values() else None
    settled = {
        name: getattr(settings, name) if value is None else value for name, value in given.items()
    }
    with at("currency"):
        check_money(settled["currency"])
    for name, allowed in ALLOWED.items():
        with at(name):
            check_one_of(settled[name], allowed)
    return settled


def _child(name: str, settings: dict[str, Any]) -> Manipulative:
    """Return a manipulative with those of the settings that it knows."""
    kind = manipulative_called(name)
    known = kind.class_traits()
    return kind(**{trait: value for trait, value in settings.items() if trait in known})


def _base(child: Manipulative, tasks: Iterable[Task]) -> dict[str, Any]:
    """Return what each task starts over: every trait that any of them changes, as it is before.

    Without it a step that shows something could not be taken back. Its buttons are always among
    them: they make room where the round itself shows the steps.
    """
    tables = [
        table
        for task in tasks
        for one in (task, *task.twins)
        for table in (one.start, *(step.show for step in one.steps))
    ]
    names = {"buttons", "panel", "vocabulary"}.union(*tables)
    return {name: getattr(child, name) for name in sorted(names) if child.has_trait(name)}
