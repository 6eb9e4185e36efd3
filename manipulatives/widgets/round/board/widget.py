"""The round at a board: where it stands, what is left of its time, and what was answered."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Any

import traitlets

from manipulatives.widgets.round.board.checks import START, check_answers, check_place
from manipulatives.widgets.round.board.own_numbers.answer import answer_to
from manipulatives.widgets.round.core.widget import RoundWidget, problems_as_trait_errors

if TYPE_CHECKING:
    from traitlets.utils.bunch import Bunch


class BoardRound(RoundWidget, folder="board"):
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

    place = traitlets.Dict(
        help="Where the round stands: `task` counted from 0, `step` how many worked steps are "
        "shown (or numbers were counted), `phase` ask, work, show, check or wipe.",
    ).tag(sync=True)
    answers = traitlets.List(
        help="What was answered, at most once a task: `task` counted from 0, `given` last (a "
        "text, or what was true of the manipulative), how many `tries`, whether it was `right`, "
        "and the `rule` of the last mistake that was foreseen, or None.",
    ).tag(sync=True)
    python = traitlets.Bool(
        default_value=True,
        help="Whether Python can be asked for questions with numbers of the teacher's own. A page "
        "that is opened without Python says no.",
    ).tag(sync=True)
    settings = traitlets.Dict(
        help="How a task is made of numbers that somebody types: what `make_typed` takes beside "
        "skill, numbers and vocabulary, such as `currency` and `method`. It stays in Python.",
    )

    def __init__(self, **traits: Any) -> None:
        """Make the round and listen for numbers that are typed in the browser."""
        super().__init__(**traits)
        self.on_msg(self._typed)

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

    def _typed(self, _: object, message: object, __: object) -> None:
        """Answer the browser when a teacher typed numbers of her own."""
        if isinstance(message, dict) and message.get("kind") == "typed":
            settings = {"vocabulary": self.setup["vocabulary"], **self.settings}
            child = type(self.manipulative).__name__
            self.send(answer_to(message, self.setup["skill"], settings, child))

    @traitlets.default("place")
    def _start(self) -> dict[str, Any]:
        return {**START}

    @traitlets.validate("place")
    def _check_place(self, proposal: Bunch) -> dict[str, Any]:
        with problems_as_trait_errors():
            return check_place(proposal["value"], self.tasks, self.setup["wipe"])

    @traitlets.validate("answers")
    def _check_answers(self, proposal: Bunch) -> list[dict[str, Any]]:
        with problems_as_trait_errors():
            return check_answers(proposal["value"], self.tasks)

    @traitlets.observe("tasks")
    def _begin(self, change: Bunch) -> None:
        """Other questions begin at their beginning; what was answered belongs to the old ones."""
        if change["old"]:
            self.place = {**START}
            self.answers = []
