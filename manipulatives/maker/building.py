"""Making everything of many lessons: in two processes, and from where it was stopped."""

from __future__ import annotations

import multiprocessing
import signal
from collections.abc import Iterable, Iterator, Sequence
from concurrent.futures import FIRST_COMPLETED, ProcessPoolExecutor, wait
from dataclasses import dataclass
from pathlib import Path

from manipulatives.lessons.problem import LessonProblem, in_file
from manipulatives.lessons.settings import FILE, class_settings
from manipulatives.maker.forms import FORMS, Source, is_own, notebook_text
from manipulatives.maker.together import write_together
from manipulatives.outputs.notebook import Call, Words, items_of, notebook_at, open_notebook

PROCESSES = 2
"""How many lessons are made at once."""

FEW = 3
"""So few lessons are made here; starting another process takes longer than they do."""

NOTEBOOK = ".ipynb"


@dataclass(frozen=True)
class Made:
    """What became of one lesson.

    Attributes:
        lesson: its file.
        files: what was written, in order; nothing where everything was there already.
        problem: why it could not be made, or None.
    """

    lesson: Path
    files: tuple[Path, ...] = ()
    problem: LessonProblem | None = None


def make_all(
    lessons: Sequence[Path],
    *,
    into: Path | None = None,
    anew: bool = False,
    processes: int = PROCESSES,
) -> Iterator[Made]:
    """Make notebook, page, sheet, key and script of lessons, and yield each as it is done.

    What is newer than its lesson and its class settings is left as it is, so a run that was
    stopped goes on where it was.

    Args:
        lessons: lesson files and notebooks.
        into: the folder for everything; None for each lesson's own.
        anew: whether everything is made again.
        processes: how many lessons are made at once.

    Raises:
        LessonProblem: two lessons would be made into the same files.
    """
    _check_names(lessons, into)
    if len(lessons) <= FEW or processes == 1:
        for lesson in lessons:
            yield make_one(lesson, into=into, anew=anew)
        return
    # A process that begins afresh is the same on every system, and holds nothing of ours open.
    afresh = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(processes, mp_context=afresh, initializer=_in_peace) as pool:
        left = iter(lessons)
        running = {pool.submit(_one, one, into, anew) for one in _some(left, 2 * processes)}
        try:
            while running:
                done, running = wait(running, return_when=FIRST_COMPLETED)
                for each in done:
                    yield each.result()
                running |= {pool.submit(_one, one, into, anew) for one in _some(left, len(done))}
        except BaseException:
            for each in running:
                each.cancel()
            raise


def make_one(lesson: Path, *, into: Path | None = None, anew: bool = False) -> Made:
    """Make everything of one lesson, whole or not at all; what is newer is left as it is.

    Example:
        >>> make_one(Path("nowhere.toml")).problem.remedy
        'check its name and folder'
    """
    folder = into or lesson.parent
    try:
        with in_file(str(lesson)):
            files = _contents(lesson, folder, anew=anew)
    except LessonProblem as problem:
        return Made(lesson, problem=problem)
    try:
        write_together(files)
    except OSError as error:
        return Made(
            lesson,
            problem=LessonProblem(
                f"it cannot be written ({error.strerror or error})",
                remedy="choose a folder that you may write in",
                file=str(lesson),
            ),
        )
    return Made(lesson, files=tuple(files))


def _in_peace() -> None:
    """Let a process finish what it has begun, while whoever stops the command stops the rest."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)


def _one(lesson: Path, into: Path | None, anew: bool) -> Made:  # noqa: FBT001 - called by a pool
    return make_one(lesson, into=into, anew=anew)


def _contents(lesson: Path, folder: Path, *, anew: bool) -> dict[Path, bytes]:
    """Return the files that have to be written, with what they are to hold."""
    beside = folder / f"{lesson.stem}{NOTEBOOK}"
    since = _newest(lesson, lesson.with_name(FILE))
    is_notebook = lesson.suffix.lower() == NOTEBOOK
    writes = not is_notebook and (anew or not _is_newer(beside, since))
    if not writes:
        since = max(since, _newest(beside))
    wanted = {
        folder / f"{lesson.stem}{form.ending}": form
        for form in FORMS.values()
        if anew or writes or not _is_newer(folder / f"{lesson.stem}{form.ending}", since)
    }
    if not wanted and not writes:
        return {}
    for path, form in wanted.items():
        if (path.exists() or path.is_symlink()) and not is_own(path, form):
            raise LessonProblem(
                f"{path.name} is there already and the kit did not make it",
                remedy="move it away or rename it, then try again",
            )
    # Somebody may have worked on the notebook since; from then on it is the lesson.
    notebook = notebook_at(lesson if is_notebook or writes else beside)
    files = {}
    if writes:
        _check_plain(beside)
        files[beside] = notebook_text(notebook)
    source = Source(notebook, class_settings(lesson.parent), lesson.stem, lesson.parent)
    for path, form in wanted.items():
        files[path] = form.content(source)
    return files


def _check_plain(path: Path) -> None:
    """Check that a notebook holds nothing that would be lost if it was written anew.

    Raises:
        LessonProblem: it does, or it is something else.
    """
    if not path.exists() and not path.is_symlink():
        return
    with in_file(str(path)):
        items = items_of(open_notebook(path))
    plain = all(
        isinstance(item, Call) or (isinstance(item, Words) and _is_heading(item.text))
        for item in items
    )
    if not plain:
        raise LessonProblem(
            f"{path.name} is older and holds what somebody wrote by hand",
            remedy=f"make {path.name} itself, or move it away",
        )


def _is_heading(text: str) -> bool:
    return text.startswith("#") and "\n" not in text.strip()


def _check_names(lessons: Iterable[Path], into: Path | None) -> None:
    seen: dict[Path, Path] = {}
    for lesson in lessons:
        target = (into or lesson.parent).resolve() / lesson.stem
        other = seen.setdefault(target, lesson)
        if other is not lesson:
            raise LessonProblem(
                f"{other} and {lesson} would be made into the same files",
                remedy="rename one, or make them into different folders",
            )


def _newest(*paths: Path) -> int:
    return max((path.stat().st_mtime_ns for path in paths if path.is_file()), default=0)


def _is_newer(path: Path, since: int) -> bool:
    return path.is_file() and path.stat().st_mtime_ns >= since


def _some(left: Iterator[Path], count: int) -> Iterator[Path]:
    return (one for _, one in zip(range(count), left, strict=False))
