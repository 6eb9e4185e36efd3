"""The rounds of the lesson in the form: in order, moved, copied, taken out, added."""

from __future__ import annotations

from typing import TYPE_CHECKING

from manipulatives.lessons.advice import length_in_words
from manipulatives.lessons.catalogue.finding import AGES, skills_found, strands
from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.editing import seconds_of, tasks_of
from manipulatives.maker.form import fields as parts
from manipulatives.maker.rows import Rows

if TYPE_CHECKING:
    from manipulatives.lessons.lesson import Round
    from manipulatives.maker.state import Table


class Rounds:
    """The list of rounds.

    Args:
        table: what lies on the helper's table.
    """

    def __init__(self, table: Table) -> None:
        self._table, self._quiet = table, parts.Quiet()
        self.list = Rows(self._drag, label="Rounds of the lesson")
        self.up = parts.button("Up", self._up, hint="Move the chosen round up")
        self.down = parts.button("Down", self._down, hint="Move the chosen round down")
        self.copy = parts.button("Copy", self._copy, hint="Copy the chosen round")
        self.remove = parts.button("Take out", self._remove, hint="Take the chosen round out")
        self.length = parts.words()
        self.box = parts.panel(
            "Rounds",
            "rounds",
            self.list,
            parts.row(self.up, self.down, self.copy, self.remove),
            self.length,
        )
        self._quiet.on(self.list, table.choose, "chosen")
        table.watch(self.show)

    def show(self) -> None:
        """Show the rounds as they are now."""
        table = self._table
        rounds = table.draft.lesson.rounds
        with self._quiet.showing(), self.list.hold_sync():
            self.list.rows = [*map(_label, rounds)]
            self.list.chosen = table.chosen
        total = sum(map(seconds_of, rounds))
        count = f"{len(rounds)} round{'s' * (len(rounds) != 1)}"
        slot = f"the session has {table.minutes} min"
        parts.say(self.length, f"{count}, {length_in_words(total)}; {slot}." if rounds else "")

    def _drag(self, place: int, to: int) -> None:
        self._table.change(lambda draft: draft.moved(place, to), chosen=to)

    def _up(self) -> None:
        self._move(-1)

    def _down(self) -> None:
        self._move(1)

    def _move(self, by: int) -> None:
        place, last = self._table.chosen, len(self._table.draft.lesson.rounds) - 1
        # The buttons are never taken away: who works by keys would lose the place.
        if not 0 <= place + by <= last:
            self._tell(f"It is the {'first' if by < 0 else 'last'} round already." * (last >= 0))
            return
        self._drag(place, place + by)

    def _copy(self) -> None:
        place = self._table.chosen
        if self._table.round is None:
            self._tell("")
            return
        self._table.change(lambda draft: draft.copied(place), chosen=place + 1)

    def _remove(self) -> None:
        place = self._table.chosen
        if self._table.round is None:
            self._tell("")
            return
        self._table.change(lambda draft: draft.removed(place))

    def _tell(self, sentence: str) -> None:
        self._table.say(sentence or "There is no round yet.")
        self._table.show()


class Catalogue:
    """The skills to choose from.

    Args:
        table: what lies on the helper's table.
    """

    def __init__(self, table: Table) -> None:
        self._table, self._quiet = table, parts.Quiet()
        self.search = parts.text("Search", hint="a word, or a standard", at_once=True)
        names = [("all strands", ""), *strands().items()]
        self.strand = parts.choice("Strand", names)
        self.age = parts.choice("Age", [("all ages", 0), *AGES.items()])
        self.list = parts.listing("Skills", 9)
        self.about = parts.words()
        self.add = parts.button("Add this skill as a round", self._add, main=True)
        self.box = parts.panel(
            "Skills",
            "skills",
            self.search,
            parts.row(self.strand, self.age),
            self.list,
            self.about,
            parts.row(self.add),
        )
        for each in (self.search, self.strand, self.age):
            self._quiet.on(each, lambda _: self.find())
        self._quiet.on(self.list, lambda _: self._tell())
        self.find()

    def find(self) -> None:
        """Show the skills that the search finds."""
        strand, age = self.strand.value or None, self.age.value or None
        found = skills_found(self.search.value, strand=strand, age=age)
        chosen = self.list.value
        with self._quiet.showing():
            names = [(f"{each.title} ({each.strand.replace('_', ' ')})", each.id) for each in found]
            parts.options_are(self.list, names)
            ids = [each.id for each in found]
            self.list.value = chosen if chosen in ids else next(iter(ids), None)
        self._tell()

    def _tell(self) -> None:
        skill = SKILLS.get(self.list.value or "")
        self.add.disabled = skill is None
        if skill is None:
            parts.say(self.about, "No skill is like that. Try another word.")
            return
        parts.say(self.about, f"{skill.limits} Serves {', '.join(skill.standards)}.")

    def _add(self) -> None:
        skill = self.list.value
        if skill:
            end = len(self._table.draft.lesson.rounds)
            self._table.change(lambda draft: draft.with_round(skill), chosen=end)


def _label(one: Round) -> str:
    skill = SKILLS[one.skill]
    count = tasks_of(one)
    name = one.title or skill.title
    tasks = f"{count} task{'s' * (count != 1)}"
    return f"{name}: {tasks}, {length_in_words(seconds_of(one))}"
