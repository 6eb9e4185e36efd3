"""A task: one question with all that is needed to ask it, show it and judge an answer.

A task is plain data. It is made in Python, sent to the browser and stored in files; `to_data` and
`from_data` convert it to JSON-able data and back.

Steps and mistakes carry their numbers as data beside their sentences: a dict with an "act", such as
"count", and what it is done with, such as {"act": "count", "from": 10, "by": 10, "to": 40}. The
docstring of each strand's `steps` lists its acts. Tests read these numbers; screens do not, so
pages leave them out.
"""

from __future__ import annotations

from collections.abc import Callable
from copy import deepcopy
from dataclasses import dataclass, field
from typing import Any, Self

from manipulatives.lessons.checks import (
    check_fields,
    check_one_of,
    check_table,
    check_text,
    check_words,
)
from manipulatives.lessons.problem import LessonProblem, at, quoted
from manipulatives.lessons.tasks.answers import FORMS
from manipulatives.lessons.tasks.predicates import Predicate, check_predicate

LONGEST = 200
Numbers = dict[str, Any]
"""What is done, as data: the act and what it is done with, or {}."""


@dataclass(frozen=True)
class Step:
    """One step of the worked answer: what the teacher and the class say, and what is shown.

    Attributes:
        say: what the teacher says.
        chant: what the class says aloud, or ""; in data its name is "class".
        show: traits of the manipulative that change with this step, with their new values.
        answer: what is written down with this step, or None.
        numbers: what is done in this step, as data; {} where nothing is counted or worked out.

    Raises:
        LessonProblem: a field is not as said here.

    Example:
        >>> Step(say="Short hand first: it has passed the 4.", chant="4", show={"sector": True})
        Step(say='Short hand first: it has passed the 4.', chant='4', show={'sector': True}, ...
    """

    say: str
    chant: str = ""
    show: dict[str, Any] = field(default_factory=dict)
    answer: str | None = None
    numbers: Numbers = field(default_factory=dict)

    def __post_init__(self) -> None:
        _check_each(self, say=_check_long_text, chant=_check_text_or_empty, show=check_table)
        _check_each(self, answer=_check_text_or_none, numbers=_check_numbers)

    def to_data(self, *, numbers: bool = True) -> dict[str, Any]:
        """Return the step as JSON-able data, with or without its numbers.

        Example:
            >>> Step(say="Start at 4:35.").to_data()
            {'say': 'Start at 4:35.', 'class': '', 'show': {}}
        """
        data: dict[str, Any] = {"say": self.say, "class": self.chant, "show": deepcopy(self.show)}
        if self.answer is not None:
            data["answer"] = self.answer
        return _with_numbers(data, self.numbers if numbers else {})

    @classmethod
    def from_data(cls, data: object) -> Self:
        """Return the step that the data describe.

        Raises:
            LessonProblem: they describe no step.

        Example:
            >>> Step.from_data({"say": "Start at 4:35.", "class": "", "show": {}}).say
            'Start at 4:35.'
        """
        needed = ("say", "class", "show")
        fields = check_fields(data, allowed=(*needed, "answer", "numbers"), needed=needed)
        fields["chant"] = fields.pop("class")
        return cls(**deepcopy(fields))


@dataclass(frozen=True)
class Mistake:
    """A wrong answer that can be foreseen, and what it may mean.

    Attributes:
        rule: the id of the rule that leads to it; records store it.
        when: the predicate on the facts that is true when the mistake was made.
        pupil: what the pupil can do next, in at most ten words.
        teacher: what the mistake may mean; a possibility, never a verdict.
        answer: the wrong answer as it is written, or None when it shows only in the manipulative.
        numbers: the procedure that leads to the wrong answer, as data; {} where there is none.

    Raises:
        LessonProblem: a field is not as said here.

    Example:
        >>> Mistake(
        ...     "next_hour", ["=", "answer", "5:35"], "Look again.", "May have …", answer="5:35"
        ... ).to_data()["rule"]
        'next_hour'
    """

    rule: str
    when: Predicate
    pupil: str
    teacher: str
    answer: str | None = None
    numbers: Numbers = field(default_factory=dict)

    def __post_init__(self) -> None:
        _check_each(self, rule=check_text, when=check_predicate, pupil=check_words)
        _check_each(self, teacher=_check_long_text, answer=_check_text_or_none)
        _check_each(self, numbers=_check_numbers)

    def to_data(self, *, numbers: bool = True) -> dict[str, Any]:
        """Return the mistake as JSON-able data, with or without its numbers.

        Example:
            >>> mistake = Mistake("hour_only", ["=", "answer", "4:00"], "Look again.", "May have …")
            >>> mistake.to_data()["when"]
            ['=', 'answer', '4:00']
        """
        data = {
            "rule": self.rule,
            "when": deepcopy(self.when),
            "answer": self.answer,
            "pupil": self.pupil,
            "teacher": self.teacher,
        }
        return _with_numbers(data, self.numbers if numbers else {})

    @classmethod
    def from_data(cls, data: object) -> Self:
        """Return the mistake that the data describe.

        Raises:
            LessonProblem: they describe no mistake.

        Example:
            >>> mistake = Mistake("hour_only", ["=", "answer", "4:00"], "Look again.", "May have …")
            >>> Mistake.from_data(mistake.to_data()) == mistake
            True
        """
        needed = ("rule", "when", "answer", "pupil", "teacher")
        return cls(**deepcopy(check_fields(data, allowed=(*needed, "numbers"), needed=needed)))


@dataclass(frozen=True)
class Task:
    """One question.

    Attributes:
        skill: the id of its skill in the catalogue.
        kind: which kind of task of the skill it is, such as "read" or "set".
        prompt: what is asked, at most ten words.
        say: what the teacher says.
        manipulative: which manipulative it is asked with, such as "Clock".
        start: traits of the manipulative when the task begins.
        ask: how it is answered: {"by": "keypad", "form": "time"}, {"by": "choice",
            "choices": [...]} or {"by": "manipulative"}.
        goal: the predicate on the facts that is true when the task is solved.
        answer: the right answer, as it is written.
        spoken: the right answer in words.
        steps: the worked answer; applying them to the start one by one ends in the goal.
        mistakes: what can be foreseen to go wrong; the first one whose `when` is true counts.
        parts: short instructions, one after the other, where the question has several parts.
        twins: other tasks of the same difficulty, for "another like this".

    Raises:
        LessonProblem: a field is not as said here.

    Example:
        >>> from manipulatives.lessons.tasks.make import make_tasks
        >>> [task] = make_tasks("time.read_five_minutes", seed=90213, count=1)
        >>> Task.from_data(task.to_data()) == task
        True
    """

    skill: str
    kind: str
    prompt: str
    say: str
    manipulative: str
    start: dict[str, Any]
    ask: dict[str, Any]
    goal: Predicate
    answer: str
    spoken: str
    steps: tuple[Step, ...] = ()
    mistakes: tuple[Mistake, ...] = ()
    parts: tuple[str, ...] = ()
    twins: tuple[Task, ...] = ()

    def __post_init__(self) -> None:
        short = dict.fromkeys(("skill", "kind", "manipulative", "answer", "spoken"), check_text)
        _check_each(self, **short, prompt=check_words, say=_check_long_text, start=check_table)
        with at("ask"):
            _check_ask(self.ask, self.answer)
        with at("goal"):
            check_predicate(self.goal)
        with at("parts"):
            for part in self.parts:
                check_words(part)

    @property
    def asks(self) -> str:
        """What is asked, in one line; two tasks with the same line ask the same.

        It is the prompt, with the answer where the question is about a picture.

        Example:
            >>> from manipulatives.lessons.tasks.make import make_tasks
            >>> make_tasks("time.read_hour", seed=90213, count=1)[0].asks
            'What time does the market clock show? 12:00'
        """
        # The prompt "What time is it 20 minutes later?" needs the clock, so that has the answer.
        if any(letter.isdigit() for letter in self.prompt) and self.manipulative != "Clock":
            return self.prompt
        return f"{self.prompt} {self.answer}"

    def to_data(self, *, numbers: bool = True) -> dict[str, Any]:
        """Return the task as JSON-able data, whose JSON is always the same for the same task.

        Args:
            numbers: whether the numbers of steps and mistakes are included.

        Example:
            >>> from manipulatives.lessons.tasks.make import make_tasks
            >>> make_tasks("time.read_hour", seed=1, count=1)[0].to_data()["ask"]
            {'by': 'keypad', 'form': 'time'}
        """
        data = {
            "skill": self.skill,
            "kind": self.kind,
            "prompt": self.prompt,
            "say": self.say,
            "manipulative": self.manipulative,
            "start": deepcopy(self.start),
            "ask": deepcopy(self.ask),
            "goal": deepcopy(self.goal),
            "answer": self.answer,
            "spoken": self.spoken,
            "steps": [step.to_data(numbers=numbers) for step in self.steps],
            "mistakes": [mistake.to_data(numbers=numbers) for mistake in self.mistakes],
        }
        if self.parts:
            data["parts"] = list(self.parts)
        if self.twins:
            data["twins"] = [twin.to_data(numbers=numbers) for twin in self.twins]
        return data

    @classmethod
    def from_data(cls, data: object) -> Self:
        """Return the task that the data describe.

        Raises:
            LessonProblem: they describe no task.

        Example:
            >>> Task.from_data({"skill": "time.read_hour"})
            Traceback (most recent call last):
            manipulatives.lessons.problem.LessonProblem: the field 'kind' is missing; add it.
        """
        names = tuple(cls.__dataclass_fields__)
        needed = tuple(name for name in names if name not in ("parts", "twins"))
        fields = deepcopy(check_fields(data, allowed=names, needed=needed))
        lists: dict[str, Callable[[Any], Any]] = {
            "steps": Step.from_data,
            "mistakes": Mistake.from_data,
            "parts": check_words,
            "twins": cls.from_data,
        }
        for name, read in lists.items():
            given = fields.setdefault(name, [])
            if not isinstance(given, list):
                raise LessonProblem(f"{quoted(given)} is no list", remedy="give a list", place=name)
            items = []
            for number, item in enumerate(given, start=1):
                with at(f"{name} {number}"):
                    items.append(read(item))
            fields[name] = tuple(items)
        return cls(**fields)


def _check_ask(ask: dict[str, Any], answer: str) -> None:
    by = check_table(ask).get("by")
    with at("by"):
        check_one_of(by, ("keypad", "choice", "manipulative"))
    if by == "keypad":
        check_fields(ask, allowed=("by", "form"), needed=("form",))
        with at("form"):
            check_one_of(ask["form"], FORMS)
    elif by == "choice":
        check_fields(ask, allowed=("by", "choices"), needed=("choices",))
        with at("choices"):
            _check_choices(ask["choices"], answer)
    else:
        check_fields(ask, allowed=("by",), needed=())


def _check_choices(choices: object, answer: str) -> None:
    if not isinstance(choices, list) or not all(isinstance(choice, str) for choice in choices):
        raise LessonProblem(f"{quoted(choices)} is no list of texts", remedy="give a list of texts")
    if len(set(choices)) != len(choices) or answer not in choices:
        raise LessonProblem(
            f"{quoted(choices)} will not do",
            remedy=f"give different choices with {quoted(answer)} among them",
        )


def _check_each(checked: object, **checks: Callable[[Any], object]) -> None:
    """Check attributes; a problem names the field as data and files do."""
    for name, check in checks.items():
        with at("class" if name == "chant" else name):
            check(getattr(checked, name))


def _check_long_text(value: object) -> None:
    check_text(value, longest=LONGEST)


def _check_text_or_none(value: str | None) -> None:
    if value is not None:
        check_text(value)


def _check_text_or_empty(value: str) -> None:
    if value != "":
        _check_long_text(value)


def _check_numbers(numbers: Numbers) -> None:
    if check_table(numbers) and not isinstance(numbers.get("act"), str):
        raise LessonProblem(
            f"{quoted(numbers)} does not say what is done", remedy='add an "act", such as "count"'
        )


def _with_numbers(data: dict[str, Any], numbers: Numbers) -> dict[str, Any]:
    return {**data, "numbers": deepcopy(numbers)} if numbers else data
