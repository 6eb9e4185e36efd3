"""A task: one question with all that is needed to ask it, show it and judge an answer.

A task is plain data. It is worked out in Python, handed to the browser and kept in files, and
`to_data` and `from_data` turn it into JSON-able data and back.

Steps and mistakes carry their numbers as data beside their sentences: a dict with an "act", such as
"count", and what it was done with, such as {"act": "count", "from": 10, "by": 10, "to": 40}. Each
strand says in its `steps` and `mistakes` which acts it has. Tests and records read these numbers;
screens do not, so pages leave them out.
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
"""What is done, as data: {"act": …} and what it is done with, or {}."""


@dataclass(frozen=True)
class Step:
    """One step of the worked answer: what is said, what the class says, what is seen.

    Attributes:
        say: what the teacher says.
        chant: what the class says aloud, or ""; "class" in data.
        show: traits of the manipulative that change with this step.
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
        with at("say"):
            check_text(self.say, longest=LONGEST)
        with at("class"):
            _check_maybe_empty(self.chant)
        with at("show"):
            check_table(self.show)
        with at("answer"):
            _check_maybe_none(self.answer)
        with at("numbers"):
            _check_numbers(self.numbers)

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
        """Return the step that was turned into data.

        Raises:
            LessonProblem: the data are no step.

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
        rule: the name of the rule that leads to it, as records keep it.
        when: the predicate that is true when it was made.
        pupil: the next step for the pupil, at most ten words.
        teacher: what it may mean, modestly.
        answer: the wrong answer itself, or None when it has no name.
        numbers: how the wrong answer comes about, as data; {} where it is no matter of numbers.

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
        with at("rule"):
            check_text(self.rule)
        with at("when"):
            check_predicate(self.when)
        with at("pupil"):
            check_words(self.pupil)
        with at("teacher"):
            check_text(self.teacher, longest=LONGEST)
        with at("answer"):
            _check_maybe_none(self.answer)
        with at("numbers"):
            _check_numbers(self.numbers)

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
        """Return the mistake that was turned into data.

        Raises:
            LessonProblem: the data are no mistake.

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
        skill: the skill it belongs to, as the catalogue names it.
        kind: the shape of the task within the skill, such as "read" or "set".
        prompt: what is asked, at most ten words.
        say: what the teacher says.
        manipulative: which manipulative it is asked with, such as "Clock".
        start: its traits when the task begins, over those that hold for the whole round.
        ask: how it is answered: {"by": "keypad", "form": "time"}, {"by": "choice",
            "choices": [...]} or {"by": "manipulative"}.
        goal: the predicate that is true when it is solved.
        answer: the right answer, as it is written.
        spoken: the right answer in words.
        steps: the worked answer; playing them from the start ends in the goal.
        mistakes: what can be foreseen to go wrong; the first that is true counts.
        parts: short orders, one after the other, where the question has several parts.
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
        for name in ("skill", "kind", "manipulative", "answer", "spoken"):
            with at(name):
                check_text(getattr(self, name))
        with at("prompt"):
            check_words(self.prompt)
        with at("say"):
            check_text(self.say, longest=LONGEST)
        with at("start"):
            check_table(self.start)
        with at("ask"):
            _check_ask(self.ask, self.answer)
        with at("goal"):
            check_predicate(self.goal)
        with at("parts"):
            for part in self.parts:
                check_words(part)

    @property
    def asks(self) -> str:
        """What is asked, in one line: the prompt, with the answer where a picture is asked about.

        Example:
            >>> from manipulatives.lessons.tasks.make import make_tasks
            >>> make_tasks("time.read_hour", seed=90213, count=1)[0].asks
            'What time does the market clock show? 12:00'
        """
        # "20 minutes later" is another question on another clock.
        if any(letter.isdigit() for letter in self.prompt) and self.manipulative != "Clock":
            return self.prompt
        return f"{self.prompt} {self.answer}"

    def to_data(self, *, numbers: bool = True) -> dict[str, Any]:
        """Return the task as JSON-able data; the same task always as the same bytes.

        Args:
            numbers: whether steps and mistakes come with their numbers, which no screen reads.

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
        """Return the task that was turned into data.

        Raises:
            LessonProblem: the data are no task.

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
        for name, of_one in lists.items():
            given = fields.setdefault(name, [])
            if not isinstance(given, list):
                raise LessonProblem(f"{quoted(given)} is no list", remedy="give a list", place=name)
            made = []
            for number, one in enumerate(given, start=1):
                with at(f"{name} {number}"):
                    made.append(of_one(one))
            fields[name] = tuple(made)
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


def _check_maybe_none(value: str | None) -> None:
    if value is not None:
        check_text(value)


def _check_maybe_empty(value: str) -> None:
    if value != "":
        check_text(value, longest=LONGEST)


def _check_numbers(numbers: Numbers) -> None:
    if check_table(numbers) and not isinstance(numbers.get("act"), str):
        raise LessonProblem(
            f"{quoted(numbers)} does not say what is done", remedy='add an "act", such as "count"'
        )


def _with_numbers(data: dict[str, Any], numbers: Numbers) -> dict[str, Any]:
    return {**data, "numbers": deepcopy(numbers)} if numbers else data
