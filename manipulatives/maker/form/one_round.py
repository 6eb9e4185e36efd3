"""One round in the form: what it is called, how long it takes, how hard it is, and its tasks."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import ipywidgets as w

from manipulatives.lessons import editing
from manipulatives.lessons.catalogue.skills import ORDERS, SKILLS
from manipulatives.lessons.lesson import LONGEST, MOST_TASKS, SHORTEST
from manipulatives.lessons.strands.counting.steps import NAMES
from manipulatives.lessons.tasks.make import GENERATORS
from manipulatives.maker.form import fields
from manipulatives.maker.form.option_words import name_of, value_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from manipulatives.lessons.lesson import Round
    from manipulatives.lessons.tasks.task import Task
    from manipulatives.maker.state import MakerState

PATTERN = "a pattern, task by task"
_PATTERN = object()
# A dropdown shows None as a choice that was not made.
_AS_THE_CLASS = ""


class RoundForm:
    """What can be set in the chosen round.

    Args:
        state: of the lesson maker.
    """

    def __init__(self, state: MakerState) -> None:
        self._state, self._observer = state, fields.PausableObserver()
        self.title = fields.text("Title")
        self.tasks = fields.number("Tasks", 1, MOST_TASKS)
        self.seconds = fields.number("Seconds", SHORTEST, LONGEST)
        self.count = fields.choice("Count aloud", [("", _AS_THE_CLASS)])
        self.options = w.VBox([])
        self.options.add_class("maker-options")
        self.again = fields.button(
            "Again: other numbers", self._again, hint="Draw other numbers for this round"
        )
        self.list = TaskList(state)
        self.box = fields.panel(
            "This round",
            "round",
            self.title,
            fields.row(self.tasks, self.seconds, self.count),
            self.options,
            fields.row(self.again),
            self.list.box,
        )
        self._shown: Any = None
        self._observer.observe(self.title, lambda title: self._set(title=title.strip() or None))
        self._observer.observe(self.tasks, lambda tasks: self._set(tasks=tasks))
        self._observer.observe(self.seconds, lambda seconds: self._set(seconds=seconds))
        self._observer.observe(
            self.count,
            lambda count: self._set(count_aloud=None if count == _AS_THE_CLASS else count),
        )
        state.on_change(self.show)

    def show(self) -> None:
        """Show the round as it is now."""
        one = self._state.round
        self.box.layout.display = "none" if one is None else None
        if one is None:
            self._shown = None
            return
        with self._observer.paused():
            self.title.value = one.title or ""
            self.title.placeholder = SKILLS[one.skill].name
            self.tasks.value = editing.tasks_of(one)
            self.seconds.value = editing.seconds_of(one)
            fields.set_options(self.count, _counts(one, self._state.settings.count_aloud))
            count = one.count_aloud
            self.count.value = _AS_THE_CLASS if count is None else count
            self._show_options(one)
        self.list.show(one, self._state.tasks)

    def _show_options(self, one: Round) -> None:
        """Show the options; the widgets stay as long as the options are the same."""
        count = editing.tasks_of(one)
        patterns = {name: isinstance(value, list) for name, value in one.options.items()}
        shape = (self._state.chosen, one.skill, sorted(patterns.items()), any(patterns.values()))
        known = (shape, count if any(patterns.values()) else 0)
        if known != self._shown:
            self._shown = known
            self.choices = {
                name: self._option(name, values, one.options.get(name), count)
                for name, values in (*SKILLS[one.skill].options.items(), ("order", ORDERS))
                if len(values) > 1
            }
            self.options.children = [each[0] for each in self.choices.values()]
        for name, (_, main, singles) in self.choices.items():
            usual = (*SKILLS[one.skill].options.get(name, ()), "any")[0]
            value = one.options.get(name, usual)
            if isinstance(value, list):
                main.value = _PATTERN
                for place, single in enumerate(singles):
                    single.value = value[min(place, len(value) - 1)]
            else:
                main.value = value

    def _option(
        self,
        name: str,
        values: Sequence[Any],
        value: Any,  # noqa: ANN401 - an option
        count: int,
    ) -> tuple[w.Widget, w.Dropdown, list[w.Dropdown]]:
        each = [(value_of(name, one), one) for one in values]
        more = [(PATTERN, _PATTERN)] if name != "order" else []
        main = fields.choice(name_of(name), [*each, *more])
        self._observer.observe(main, lambda new: self._set_option(name, new))
        if not isinstance(value, list):
            return main, main, []
        singles = [fields.choice(f"Task {place}", each) for place in range(1, count + 1)]
        for single in singles:
            self._observer.observe(
                single, lambda _: self._set_option(name, [one.value for one in singles])
            )
        pattern = fields.row(*singles)
        pattern.add_class("maker-pattern")
        return w.VBox([main, pattern]), main, singles

    def _set_option(self, name: str, value: Any) -> None:  # noqa: ANN401 - an option
        one = self._state.round
        if one is None:
            return
        if value is _PATTERN:
            values = SKILLS[one.skill].options[name]
            value = [one.options.get(name, values[0])] * editing.tasks_of(one)
        place = self._state.chosen
        self._state.change(
            lambda draft: draft.changed(editing.with_option(draft.lesson, place, name, value))
        )

    def _set(self, **what: Any) -> None:
        place = self._state.chosen
        self._state.change(
            lambda draft: draft.changed(editing.changed(draft.lesson, place, **what))
        )

    def _again(self) -> None:
        place = self._state.chosen
        self._state.change(lambda draft: draft.changed(editing.drawn_again(draft.lesson, place)))


def _counts(one: Round, usual: int) -> list[tuple[str, int | str]]:
    """Return the steps in which a class may count aloud when the board is wiped."""
    steps = dict.fromkeys([0, *NAMES, *([one.count_aloud] if one.count_aloud else [])])
    usually = (f"as the class ({_count(usual)})", _AS_THE_CLASS)
    return [usually, *((_count(step), step) for step in steps)]


def _count(step: int) -> str:
    return f"in {NAMES.get(step, f'{step}s')}" if step else "not at all"


class TaskList:
    """The tasks of the round, each drawn again or typed by hand.

    Args:
        state: of the lesson maker.
    """

    def __init__(self, state: MakerState) -> None:
        self._state = state
        self.rows: list[TaskRow] = []
        self.box = w.VBox([])
        self.box.add_class("maker-tasks")

    def show(self, one: Round, tasks: Sequence[Task]) -> None:
        """Show the tasks as they are now; the rows stay, and so does the focus."""
        while len(self.rows) < len(tasks):
            self.rows.append(TaskRow(self._state, len(self.rows)))
        for place, (row, task) in enumerate(zip(self.rows, tasks, strict=False)):
            row.show(task, one.instead[place] if place < len(one.instead) else "")
        rows = [row.box for row in self.rows[: len(tasks)]]
        if [*self.box.children] != rows:
            self.box.children = rows


class TaskRow:
    """One task.

    Args:
        state: of the lesson maker.
        place: of the task in its round, counted from 0.
    """

    def __init__(self, state: MakerState, place: int) -> None:
        self._state, self._place, self._observer = state, place, fields.PausableObserver()
        self.words = fields.words()
        self.typed = fields.text(f"Type task {place + 1}", hint="your own numbers")
        self.again = fields.button("Draw again", self._again, hint=f"Draw task {place + 1} again")
        self.box = w.HBox([self.words, self.typed, self.again])
        self.box.add_class("maker-task")
        self._observer.observe(self.typed, self._type)

    def show(self, task: Task, instead: str | int) -> None:
        """Show a task, and what was typed for it."""
        fields.set_text(self.words, f"{self._place + 1}. {task.prompt}", task.answer)
        can = GENERATORS[task.skill].read is not None
        self.typed.layout.display = None if can else "none"
        with self._observer.paused():
            self.typed.value = instead if isinstance(instead, str) else ""

    def _type(self, text: str) -> None:
        self._put(text.strip())

    def _again(self) -> None:
        """Draw the task again: the next one that is not asked in this round."""
        one = self._state.round
        if one is None:
            return
        before = one.instead[self._place] if self._place < len(one.instead) else ""
        self._put(before + 1 if isinstance(before, int) else 1)

    def _put(self, instead: str | int) -> None:
        place, task = self._state.chosen, self._place
        self._state.change(
            lambda draft: draft.changed(editing.with_task(draft.lesson, place, task, instead))
        )
