"""The round as a widget: where it stands, what is left of its time, and what was answered."""

from __future__ import annotations

from collections import Counter
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any

import anywidget
import traitlets

from manipulatives.lessons.problem import LessonProblem
from manipulatives.widgets.manipulative import KitWidget, Manipulative
from manipulatives.widgets.round.checks import (
    START,
    check_answers,
    check_place,
    check_setup,
    check_tasks,
    check_timer,
)
from manipulatives.widgets.round.wishing import answer_to

if TYPE_CHECKING:
    from collections.abc import Iterator

    from traitlets.utils.bunch import Bunch


class _Child(anywidget.WidgetTrait):
    """A reference to a manipulative of the kit."""

    def __init__(self) -> None:
        # It takes no help text as other traits do.
        super().__init__()
        self.help = "The manipulative that every task of the round is asked with, or None."

    def validate(self, obj: object, value: object) -> object:
        """Take a manipulative or nothing."""
        if value is not None and not isinstance(value, Manipulative):
            raise traitlets.TraitError(
                f"A round is asked with a manipulative such as a Clock, not {value!r}."
            )
        return super().validate(obj, value)


class Round(KitWidget, folder="round"):
    """Several questions of one skill, with a manipulative and a time allowance.

    A round is made by `play`. It shows the question and its manipulative side by side, or one
    below the other where there is little breadth. Every question is *asked*, *worked on*, *shown*
    step by step and *checked*: the button at the foot says what it does next, Back goes back
    exactly. Several may be asked side by side, as on a whiteboard; then any of them is chosen to
    be shown, and the answers are revealed one by one or all. At its end the class may count aloud
    while the board is *wiped*. A pupil answers on a keypad, by choosing, or with the manipulative
    itself, and is told in one sentence what to do next; whoever goes back from the steps finds the
    pupil's own work again. All of it happens in the browser, from the data in the traits: no kernel
    is needed. Another like this is taken from the twins of a task; only numbers that somebody types
    are made into a task by Python, while it is there.

    The timer is for practice. It counts while a question is worked on and rests while it is
    shown; it can be started, paused, stretched by 15 seconds, hidden and turned off, and when it
    has run out nothing is lost.

    Raises:
        traitlets.TraitError: a trait is given what it cannot be.

    Example:
        >>> from manipulatives.widgets.round import play
        >>> round = play("time.read_hour", tasks=2, seed=90213)
        >>> round.answers = [
        ...     {"task": 0, "given": "4:00", "tries": 2, "right": True, "rule": "swapped_hands"}
        ... ]
        >>> round.results["right"], round.results["rules"]
        (1, {'swapped_hands': 1})
    """

    manipulative = _Child().tag(sync=True)
    tasks = traitlets.List(
        help="The tasks as plain data, in order; `Task` says what each field is.",
    ).tag(sync=True)
    setup = traitlets.Dict(
        help="What holds for the whole round: `title`, `skill`, `seed`, `seconds` allowed (0 for "
        "no timer), `timer` shown, hidden or off, `vocabulary` us or uk, how many tasks are asked "
        "`together` (1 to 4), whether somebody's own numbers may be `typed`, `wipe`, the "
        "count-aloud at its end, as {'by': 5}, or None, `key` under which a page keeps where it "
        "is (empty: nowhere), and `base`, the traits of the manipulative that each task starts "
        "over.",
    ).tag(sync=True)
    place = traitlets.Dict(
        help="Where the round stands: `task` counted from 0, `step` how many worked steps are "
        "shown (or numbers were counted), `phase` ask, work, show, check or wipe.",
    ).tag(sync=True)
    timer = traitlets.Dict(
        help="The timer: `mode` shown, hidden or off, seconds `allowed` with all that was added, "
        "milliseconds `used` before it was started last, `since` when it runs (milliseconds "
        "since 1970, or None), and whether it is `held`, paused by hand. Empty until a browser "
        "shows the round.",
    ).tag(sync=True)
    ways = traitlets.Dict(
        help="How a task is made of numbers that somebody types: what `make_typed` takes beside "
        "skill, numbers and vocabulary, such as `currency` and `method`. It stays in Python.",
    )
    answers = traitlets.List(
        help="What was answered, at most once a task: `task` counted from 0, `given` last (a "
        "text, or what was true of the manipulative), how many `tries`, whether it was `right`, "
        "and the `rule` of the last mistake that was foreseen, or None.",
    ).tag(sync=True)

    def __init__(self, **traits: Any) -> None:
        """Make the round and listen to what the browser wishes."""
        super().__init__(**traits)
        self.on_msg(self._wished)

    @property
    def results(self) -> dict[str, Any]:
        """What the answers amount to.

        How many `tasks` there are; how many were `answered`, `right`, and right `at_once`; how
        many `tries` that took; and the `rules` of foreseen mistakes, each with how often. A rule
        is a possibility and no diagnosis: one answer is weak evidence.
        """
        answers = self.answers
        return {
            "tasks": len(self.tasks),
            "answered": len(answers),
            "right": sum(answer["right"] for answer in answers),
            "at_once": sum(answer["right"] and answer["tries"] == 1 for answer in answers),
            "tries": sum(answer["tries"] for answer in answers),
            "rules": dict(Counter(answer["rule"] for answer in answers if answer["rule"])),
        }

    def _repr_mimebundle_(self, **kwargs: Any) -> tuple[dict[str, Any], dict[str, Any]] | None:
        """Carry a still picture of the manipulative, for readers without a live host."""
        made = super()._repr_mimebundle_(**kwargs)
        picture = self.manipulative.still() if self.manipulative else None
        if made is None or picture is None:
            return made
        data, metadata = made
        return {**data, "image/svg+xml": picture}, metadata

    def _wished(self, _: object, message: object, __: object) -> None:
        """Answer the browser when a teacher typed numbers of her own."""
        if isinstance(message, dict) and message.get("kind") == "wish":
            ways = {"vocabulary": self.setup["vocabulary"], **self.ways}
            child = type(self.manipulative).__name__
            self.send(answer_to(message, self.setup["skill"], ways, child))

    @traitlets.default("setup")
    def _usual(self) -> dict[str, Any]:
        return check_setup({})

    @traitlets.default("place")
    def _start(self) -> dict[str, Any]:
        return {**START}

    @traitlets.validate("tasks")
    def _check_tasks(self, proposal: Bunch) -> list[dict[str, Any]]:
        with _said():
            return check_tasks(proposal["value"])

    @traitlets.validate("setup")
    def _check_setup(self, proposal: Bunch) -> dict[str, Any]:
        with _said():
            return check_setup(proposal["value"])

    @traitlets.validate("place")
    def _check_place(self, proposal: Bunch) -> dict[str, Any]:
        with _said():
            return check_place(proposal["value"], self.tasks, self.setup["wipe"])

    @traitlets.validate("timer")
    def _check_timer(self, proposal: Bunch) -> dict[str, Any]:
        with _said():
            return check_timer(proposal["value"])

    @traitlets.validate("answers")
    def _check_answers(self, proposal: Bunch) -> list[dict[str, Any]]:
        with _said():
            return check_answers(proposal["value"], self.tasks)

    @traitlets.observe("tasks")
    def _begin(self, change: Bunch) -> None:
        """Other questions begin at their beginning; what was answered belongs to the old ones."""
        if change["old"]:
            self.place = {**START}
            self.answers = []


@contextmanager
def _said() -> Iterator[None]:
    """Let traitlets know that a value will not do, in the words of the check."""
    try:
        yield
    except LessonProblem as problem:
        raise traitlets.TraitError(str(problem)) from problem
