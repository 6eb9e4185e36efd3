"""A notebook read as a lesson, without being run."""

from __future__ import annotations

import json
import warnings
from pathlib import Path
from typing import TYPE_CHECKING, Any

import nbformat

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.files import read_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.problem import LessonProblem, at, in_file, shown
from manipulatives.notebook.calls import PACKAGE, Call
from manipulatives.notebook.cells import TextCell, items_of, rounds_of
from manipulatives.notebook.markdown import heading, headings
from manipulatives.notebook.writing import OF_LESSON, notebook_of

if TYPE_CHECKING:
    from nbformat import NotebookNode

# Arguments of a call that are fields of the round; all others are options of the skill.
_FIELDS = ("skill", "title", "tasks", "seconds", "count_aloud", "instead", "seed")


def notebook_at(path: str | Path) -> NotebookNode:
    """Return the notebook in a file, or that of a lesson file; nothing is run.

    Raises:
        LessonProblem: the file is neither, cannot be opened, or has a value that is not allowed.

    Example:
        >>> notebook_at("notebooks/market-clock.toml").cells[0].source
        '# Market clock'
    """
    with in_file(str(path)):
        match Path(path).suffix.lower():
            case ".toml":
                return notebook_of(read_lesson(path))
            case ".ipynb":
                return open_notebook(path)
        what = "is a folder" if Path(path).is_dir() else "is neither a lesson nor a notebook"
        raise LessonProblem(
            f"this {what}", remedy="give a lesson file (.toml) or a notebook (.ipynb)"
        )


def open_notebook(path: str | Path) -> NotebookNode:
    """Return the notebook in a file, without running it.

    Raises:
        LessonProblem: the file cannot be opened or is no notebook.

    Example:
        >>> open_notebook("notebooks/market-clock.ipynb").cells[0].source
        '# Market clock'
    """
    with in_file(str(path)):
        try:
            raw = Path(path).read_text("utf-8-sig")
        except OSError as error:
            raise LessonProblem(
                f"the file cannot be opened ({error.strerror})", remedy="check its name and folder"
            ) from None
        except UnicodeDecodeError:
            raise LessonProblem(
                "the file is not UTF-8 text", remedy="save it from JupyterLab"
            ) from None
        # nbformat warns of notebooks whose cells have no ids, which is no problem here.
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            try:
                data = json.loads(raw)
                # A lone surrogate cannot be shown, sent or written.
                json.dumps(data, ensure_ascii=False).encode()
                nbformat.validate(data)
                return nbformat.reads(raw, as_version=4)
            except UnicodeEncodeError:
                raise LessonProblem(
                    "the file holds half of a letter, which cannot be shown",
                    remedy="write that text anew in JupyterLab",
                ) from None
            # A broken file can raise anything in the reader of an older format version.
            except Exception as error:  # noqa: BLE001
                raise LessonProblem(
                    f"the file is no notebook ({_first_line(error)})",
                    remedy="open it in JupyterLab and save it again",
                ) from None


def header_of(notebook: NotebookNode) -> dict[str, Any]:
    """Return the header of the lesson in a notebook; empty for a notebook without one.

    Example:
        >>> header_of(notebook_of(Lesson("Monday", seed=7)))
        {'title': 'Monday', 'seed': 7}
    """
    header = notebook.metadata.get(PACKAGE, {})
    return dict(header) if isinstance(header, dict) else {}


def title_of(notebook: NotebookNode) -> str | None:
    """Return the title of the lesson: its first heading, which anyone may have changed.

    Example:
        >>> title_of(notebook_of(Lesson("Monday", seed=7)))
        'Monday'
    """
    texts = [item.text for item in items_of(notebook) if isinstance(item, TextCell)]
    found = next((words for text in texts for level, words in headings(text) if level == 1), None)
    title = header_of(notebook).get("title")
    return _title_unless_changed(title if isinstance(title, str) else None, found, level=1)


def lesson_of(notebook: NotebookNode, *, title: str = "Lesson") -> Lesson:
    """Return the lesson that a notebook holds, without running it.

    Args:
        notebook: one made by the kit, changed by hand or not, or any other.
        title: for a notebook without one.

    Raises:
        LessonProblem: a round, or the header of the lesson, is not valid; with the cell.

    Example:
        >>> monday = Lesson("Monday", seed=7, rounds=(Round("time.read_hour", seed=90213),))
        >>> lesson_of(notebook_of(monday)) == monday
        True
    """
    header = {"seed": 0, **header_of(notebook)}
    header["title"] = title_of(notebook) or title
    header.pop("rounds", None)
    with at("the notebook's metadata"):
        bare = Lesson.from_data(header)
    rounds = []
    values_of_calls: dict[str, list[Any]] = {name: [] for name in OF_LESSON}
    for call, words in rounds_of(items_of(notebook)):
        with at(f"cell {call.cell}"):
            said, data = _read(call, words)
            rounds.append(Round.from_data(data))
            for name, values in values_of_calls.items():
                value = said.get(name, getattr(bare, name))
                if value not in values:
                    values.append(value)
                if len(values) > 1:
                    raise LessonProblem(
                        f"its {name} is not that of the rounds before", remedy="give all the same"
                    )
    data = {**bare.to_data(), "rounds": [each.to_data() for each in rounds]}
    common = {name: values.pop() for name, values in values_of_calls.items() if values}
    return Lesson.from_data({**data, **common})


def _read(call: Call, words: str | None) -> tuple[dict[str, Any], dict[str, Any]]:
    """Return the arguments of a call that are not of its round, and the round as data."""
    if len(call.args) > 1:
        raise LessonProblem(
            "only the skill may stand without a name", remedy="write the others as in tasks=5"
        )
    named = dict(call.kwargs)
    if call.args:
        named["skill"] = call.args[0]
    others = {name: named.pop(name) for name in (*OF_LESSON, "method", "timer") if name in named}
    data = {name: named.pop(name, None) for name in _FIELDS}
    skill, title = data["skill"], data["title"]
    usual = SKILLS[skill].name if isinstance(skill, str) and skill in SKILLS else ""
    if isinstance(title, str | None):
        data["title"] = _title_unless_changed(title, words, level=2, usual=usual)
    said = {name: value for name, value in data.items() if value is not None}
    return others, {**said, "options": named}


def _first_line(error: Exception) -> str:
    return shown((str(error).splitlines() or [type(error).__name__])[0])


def _title_unless_changed(
    title: str | None, found: str | None, *, level: int, usual: str = ""
) -> str | None:
    """Return a title, unless the heading that shows it was changed by hand.

    Args:
        title: the exact title in the notebook's data.
        found: the words of the heading.
        level: of the heading.
        usual: the heading of a round without a title.
    """
    if found is None:
        return title
    shown = headings(heading(level, title or usual))
    return title if shown == [(level, found)] else found
