"""The script of a lesson: one page for whoever stands in for the teacher."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from manipulatives.drawings.shapes import MM_PER_POINT, Drawing, Line, Paint, Shape, Text
from manipulatives.lessons.lesson import Lesson
from manipulatives.lessons.problem import in_file
from manipulatives.lessons.settings import ClassSettings, settled
from manipulatives.lessons.tasks.task import Task
from manipulatives.outputs.sheet.code import check_version, code_of
from manipulatives.outputs.sheet.files import lesson_at, with_numbers
from manipulatives.outputs.sheet.layout.frame import foot
from manipulatives.outputs.sheet.layout.lines import PITCH, paragraph
from manipulatives.outputs.sheet.layout.pages import Block, laid_out
from manipulatives.outputs.sheet.layout.paper import STANDARD, paper_called
from manipulatives.outputs.sheet.pdf.document import pdf_of
from manipulatives.outputs.sheet.pdf.letters import printable, text_width
from manipulatives.outputs.sheet.rounds import RoundTasks, tasks_by_round
from manipulatives.outputs.sheet.sheet import LANGUAGES
from manipulatives.outputs.sheet.tasks.words import on_paper

HOW = (
    "Each round: ask, and pupils copy. Work: everyone tries. Show: {}. "
    "Check: pupils mark their own. Wipe."
)
WITH_STEPS = HOW.format("say the steps; what the class answers is in [brackets]")
ON_THE_BOARD = HOW.format("the steps on the board; Class is what all answer")
SEPARATOR = " · "
COUNTS = 6
"""How many numbers of a count-aloud are printed."""

_TYPE = 12 * MM_PER_POINT
_HEADING = 14 * MM_PER_POINT
_LABEL = 20.0
_RULE = Paint(stroke="line", width=0.4)
_MINUTE = 60

Part = tuple[str, str]
"""A label and a text."""

RoundText = Callable[[RoundTasks, int], list[tuple[Part, ...]]]
"""Makes the text of a round from the number of its first task: rows of one or two parts."""


def script_of_file(
    path: str | Path,
    *,
    paper: str | None = None,
    seed: int | None = None,
    version: str = "A",
    code: str | None = None,
) -> bytes:
    """Return the script of a lesson file or a notebook, with the class settings of its folder.

    Args:
        path: ends in .toml or .ipynb.
        paper: "a4" or "letter", None for that of the lesson or its settings.
        seed: for other tasks of the same kind; None for the lesson's own.
        version: "A" for the lesson's own numbers, "B" or "C" for others as difficult.
        code: from the foot of a sheet, for the numbers of that sheet.

    Raises:
        LessonProblem: as `sheet_of_file` says.

    Example:
        >>> script_of_file("notebooks/market-clock.toml")[:4]
        b'%PDF'
    """
    lesson, settings = lesson_at(path)
    with in_file(str(path)):
        lesson, version = with_numbers(lesson, settings, seed=seed, version=version, code=code)
        return script_of(lesson, settings, paper=paper, version=version)


def script_of(
    lesson: Lesson, settings: ClassSettings, *, paper: str | None = None, version: str = "A"
) -> bytes:
    """Return what to say in a lesson, what the class answers, the times and the answers, as a PDF.

    It fills one page where possible. A long lesson leaves out the questions, then the steps, but
    not what the class answers where there is room for that; only a very long lesson needs a second
    page. Tasks have the same numbers as on the sheet.

    Args:
        lesson: the lesson.
        settings: of the class, for what the lesson leaves unset.
        paper: "a4" or "letter", None for that of the lesson or its settings.
        version: "A", "B" or "C".

    Raises:
        LessonProblem: the lesson has no rounds, or one that cannot be made, or there is no such
            paper or version.

    Example:
        >>> from manipulatives.lessons.lesson import Round
        >>> monday = Lesson("Monday", seed=7, rounds=(Round("time.read_hour", seed=90213),))
        >>> script_of(monday, ClassSettings())[:4]
        b'%PDF'
    """
    complete = settled(lesson, settings)
    pages = script_pages(complete, settings, paper=paper, version=version)
    title = f"{printable(complete.title)}: script"
    return pdf_of(pages, title=title, language=LANGUAGES[str(complete.vocabulary)])


def script_pages(
    complete: Lesson, settings: ClassSettings, *, paper: str | None = None, version: str = "A"
) -> list[Drawing]:
    """Return the pages of a script as drawings.

    Args:
        complete: the lesson, with nothing left unset.
        settings: of the class, for the method of written sums.
        paper: "a4" or "letter", None for that of the lesson.
        version: "A", "B" or "C".

    Raises:
        LessonProblem: as `script_of` says.
    """
    on = paper_called(paper or str(complete.paper))
    rounds = tasks_by_round(complete, settings, check_version(version))
    note = f"Script {code_of(complete, version)} · {complete.title}"

    def pages_of(how: str, texts: list[RoundText]) -> list[Drawing]:
        blocks = [Block(_head(complete, how, on.inside)), *_blocks(rounds, texts, on.inside)]
        return laid_out(blocks, on, lambda page, of: foot(note, page, of, STANDARD, on.inside))

    for text in (_all, _steps_and_answers):
        pages = pages_of(WITH_STEPS, [text] * len(rounds))
        if len(pages) == 1:
            return pages
    texts = [_answers] * len(rounds)
    pages = pages_of(ON_THE_BOARD, texts)
    # The shortest first, so that as many rounds as possible show what the class answers.
    for place in sorted(range(len(rounds)), key=lambda place: len(_class(rounds[place])[1])):
        more = [*texts[:place], _class_and_answers, *texts[place + 1 :]]
        longer = pages_of(ON_THE_BOARD, more)
        if len(longer) > len(pages):
            break
        texts, pages = more, longer
    return pages


def _head(complete: Lesson, how: str, width: float) -> Drawing:
    title = paragraph(complete.title, STANDARD.heading, width, most=2)
    seconds = sum(each.seconds or 0 for each in complete.rounds)
    when = f"{complete.date.day} {complete.date:%B} {complete.date.year}. " if complete.date else ""
    text = paragraph(f"{when}{_minutes(seconds)} of work. {how}", _TYPE, width, most=6)
    shapes = (*title.shapes, *text.at(0, title.height))
    return Drawing(width, title.height + text.height, shapes)


def _minutes(seconds: int) -> str:
    minutes, rest = divmod(seconds, _MINUTE)
    parts = [f"{minutes} minutes" if minutes != 1 else "1 minute"] if minutes else []
    return " ".join([*parts, *([f"{rest} seconds"] if rest else [])])


def _blocks(rounds: list[RoundTasks], texts: list[RoundText], width: float) -> list[Block]:
    blocks: list[Block] = []
    number = 1
    for place, (each, text_of) in enumerate(zip(rounds, texts, strict=True), start=1):
        lines = text_of(each, number)
        blocks.append(Block(_heading(place, each, width), before=2.2, keep_with_next=True))
        for at, parts in enumerate(lines):
            first = at == 0 and len(lines) > 1
            blocks.append(Block(_row(parts, width), before=0.4, keep_with_next=first))
        number += len(each.tasks)
    return blocks


def _heading(place: int, each: RoundTasks, width: float) -> Drawing:
    tasks = f"{len(each.tasks)} {'task' if len(each.tasks) == 1 else 'tasks'}"
    time = f"{tasks}, {_minutes(each.round.seconds or 0)}"
    room = width - text_width(time, _TYPE) - _TYPE
    name = paragraph(f"{place}. {each.round.title}", _HEADING, room, most=2)
    down = 1.2
    shapes: list[Shape] = [Line((0, 0), (width, 0), _RULE), *name.at(0, down)]
    shapes.append(Text((width, down + _HEADING), time, _TYPE, "end", colour="quiet"))
    return Drawing(width, down + name.height, tuple(shapes))


def _row(parts: tuple[Part, ...], width: float) -> Drawing:
    """Return one part, or two side by side, where the second has at least a third of the width."""
    if len(parts) == 1:
        return _labelled(*parts[0], width)
    first, (label, text) = parts
    left_over = width - _TYPE - 2 * _LABEL - text_width(first[1], _TYPE)
    need = _LABEL + min(text_width(text, _TYPE), max(left_over - 2, width / 3)) + 1
    left = _labelled(*first, width - need - _TYPE)
    right = _labelled(label, text, need)
    shapes = (*left.shapes, *right.at(width - need, 0))
    return Drawing(width, max(left.height, right.height), shapes)


def _labelled(label: str, text: str, width: float) -> Drawing:
    drawn = paragraph(text, _TYPE, width - _LABEL, most=40)
    words = Text((0, _TYPE), label, _TYPE, colour="quiet")
    return Drawing(width, max(drawn.height, PITCH * _TYPE), (words, *drawn.at(_LABEL, 0)))


def _all(each: RoundTasks, number: int) -> list[tuple[Part, ...]]:
    answers = [f"{number + at}) {_asked(task)} {task.answer}" for at, task in enumerate(each.tasks)]
    text = SEPARATOR.join(answers)
    return [_begin(each), (_shown(each),), (("Answers", text),), *_counted(each)]


def _steps_and_answers(each: RoundTasks, number: int) -> list[tuple[Part, ...]]:
    return [_begin(each), (_shown(each),), (_given(each, number),), *_counted(each)]


def _class_and_answers(each: RoundTasks, number: int) -> list[tuple[Part, ...]]:
    return [_begin(each), (_class(each), _given(each, number)), *_counted(each)]


def _answers(each: RoundTasks, number: int) -> list[tuple[Part, ...]]:
    return [_begin(each), (_given(each, number),), *_counted(each)]


def _begin(each: RoundTasks) -> tuple[Part, ...]:
    return (("Say", each.tasks[0].say),)


def _asked(task: Task) -> str:
    prompt = on_paper(task.prompt)
    return prompt if prompt.endswith(("?", ".")) or "?" in prompt else f"{prompt} ="


def _shown(each: RoundTasks) -> Part:
    """Return the steps of the first task; those of the others are similar."""
    steps = [
        f"{step.say} [{step.chant}]" if step.chant else step.say for step in each.tasks[0].steps
    ]
    return "Show", " ".join(steps)


def _class(each: RoundTasks) -> Part:
    """Return what the class answers to the steps of the first task."""
    return "Class", SEPARATOR.join(step.chant for step in each.tasks[0].steps if step.chant)


def _given(each: RoundTasks, number: int) -> Part:
    answers = [f"{number + at}) {task.answer}" for at, task in enumerate(each.tasks)]
    return "Answers", SEPARATOR.join(answers)


def _counted(each: RoundTasks) -> list[tuple[Part, ...]]:
    by = each.round.count_aloud
    if not by:
        return []
    numbers = ", ".join(str(by * turn) for turn in range(1, COUNTS + 1))
    return [(("Wipe", f"Count aloud together: {numbers} …"),)]
