"""The rounds of the lesson in the form: in order, moved, copied, taken out, added."""

from __future__ import annotations

from typing import TYPE_CHECKING

from manipulatives.lessons.advice import length_in_words
from manipulatives.lessons.catalogue.finding import AGES, skills_found, strands
from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.editing import seconds_of, tasks_of
from manipulatives.maker.form import fields
from manipulatives.maker.rows import Rows

if TYPE_CHECKING:
    from manipulatives.lessons.lesson import Round
    from manipulatives.maker.state import MakerState


class Rounds:
    """The list of rounds.

    Args:
        state: of the lesson maker.
    """

    def __init__(self, state: MakerState) -> None:
        self._state, self._observer = state, fields.PausableObserver()
        self.list = Rows(self._drag, label="Rounds of the lesson")
        self.up = fields.button("Up", self._up, hint="Move the chosen round up")
        self.down = fields.button("Down", self._down, hint="Move the chosen round down")
        self.copy = fields.button("Copy", self._copy, hint="Copy the chosen round")
        self.remove = fields.button("Take out", self._remove, hint="Take the chosen round out")
        self.length = fields.words()
        self.box = fields.panel(
            "Rounds",
            "rounds",
            self.list,
            fields.row(self.up, self.down, self.copy, self.remove),
            self.length,
        )
        self._observer.observe(self.list, state.choose, "chosen")
        state.on_change(self.show)

    def show(self) -> None:
        """Show the rounds as they are now."""
        state = self._state
        rounds = state.draft.lesson.rounds
        with self._observer.paused(), self.list.hold_sync():
            self.list.rows = [*map(_label, rounds)]
            self.list.chosen = state.chosen
        total = sum(map(seconds_of, rounds))
        count = f"{len(rounds)} round{'s' * (len(rounds) != 1)}"
        slot = f"the session has {state.minutes} min"
        fields.set_text(
            self.length, f"{count}, {length_in_words(total)}; {slot}." if rounds else ""
        )

    def _drag(self, place: int, to: int) -> None:
        self._state.change(lambda draft: draft.moved(place, to), chosen=to)

    def _up(self) -> None:
        self._move(-1)

    def _down(self) -> None:
        self._move(1)

    def _move(self, by: int) -> None:
        place, last = self._state.chosen, len(self._state.draft.lesson.rounds) - 1
        # The buttons are never disabled: the focus of whoever works by keys would be lost.
        if not 0 <= place + by <= last:
            self._tell(f"It is the {'first' if by < 0 else 'last'} round already." * (last >= 0))
            return
        self._drag(place, place + by)

    def _copy(self) -> None:
        place = self._state.chosen
        if self._state.round is None:
            self._tell("")
            return
        self._state.change(lambda draft: draft.copied(place), chosen=place + 1)

    def _remove(self) -> None:
        place = self._state.chosen
        if self._state.round is None:
            self._tell("")
            return
        self._state.change(lambda draft: draft.removed(place))

    def _tell(self, sentence: str) -> None:
        self._state.say(sentence or "There is no round yet.")
        self._state.notify()


class Catalogue:
    """The skills to choose from.

    Args:
        state: of the lesson maker.
    """

    def __init__(self, state: MakerState) -> None:
        self._state, self._observer = state, fields.PausableObserver()
        self.search = fields.text("Search", hint="a word, or a standard", at_once=True)
        names = [("all strands", ""), *strands().items()]
        self.strand = fields.choice("Strand", names)
        self.age = fields.choice("Age", [("all ages", 0), *AGES.items()])
        self.list = fields.listing("Skills", 9)
        self.about = fields.words()
        self.add = fields.button("Add this skill as a round", self._add, main=True)
        self.box = fields.panel(
            "Skills",
            "skills",
            self.search,
            fields.row(self.strand, self.age),
            self.list,
            self.about,
            fields.row(self.add),
        )
        for each in (self.search, self.strand, self.age):
            self._observer.observe(each, lambda _: self.find())
        self._observer.observe(self.list, lambda _: self._tell())
        self.find()

    def find(self) -> None:
        """Show the skills that the search finds."""
        strand, age = self.strand.value or None, self.age.value or None
        found = skills_found(self.search.value, strand=strand, age=age)
        chosen = self.list.value
        with self._observer.paused():
            names = [(f"{each.title} ({each.strand.replace('_', ' ')})", each.id) for each in found]
            fields.set_options(self.list, names)
            ids = [each.id for each in found]
            self.list.value = chosen if chosen in ids else next(iter(ids), None)
        self._tell()

    def _tell(self) -> None:
        skill = SKILLS.get(self.list.value or "")
        self.add.disabled = skill is None
        if skill is None:
            fields.set_text(self.about, "No skill is like that. Try another word.")
            return
        fields.set_text(self.about, f"{skill.limits} Serves {', '.join(skill.standards)}.")

    def _add(self) -> None:
        skill = self.list.value
        if skill:
            end = len(self._state.draft.lesson.rounds)
            self._state.change(lambda draft: draft.with_round(skill), chosen=end)


def _label(one: Round) -> str:
    skill = SKILLS[one.skill]
    count = tasks_of(one)
    name = one.title or skill.title
    tasks = f"{count} task{'s' * (count != 1)}"
    return f"{name}: {tasks}, {length_in_words(seconds_of(one))}"
