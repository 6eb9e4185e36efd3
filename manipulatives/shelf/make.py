"""Making everything of many lessons: in two processes, and from where it was stopped."""

from __future__ import annotations

import multiprocessing
from collections.abc import Iterable, Iterator, Sequence
from concurrent.futures import FIRST_COMPLETED, ProcessPoolExecutor, wait
from dataclasses import dataclass, replace
from functools import partial
from itertools import islice
from pathlib import Path

from manipulatives.lessons.problem import LessonProblem, in_file, unreadable
from manipulatives.lessons.settings import FILE, class_settings
from manipulatives.lessons.write_files import recover, write_files
from manipulatives.shelf import worker
from manipulatives.shelf.find import source_file
from manipulatives.shelf.outputs import NOTEBOOK, OF_A_LESSON, OUTPUTS, Source, notebook_text
from manipulatives.shelf.replace import MOVE_OR_FORCE, check_replaceable, check_unchanged

PROCESSES = 2
"""How many lessons are made at once."""

FEW = 3
"""So few lessons are made here; starting another process takes longer than they do."""


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
    force: bool = False,
    processes: int = PROCESSES,
) -> Iterator[Made]:
    """Make notebook, page, sheet, key and script of lessons, and yield each as it is done.

    What is newer than its lesson and its class settings is left as it is, so a run that was
    stopped goes on where it was.

    Args:
        lessons: lesson files and notebooks.
        into: the folder for everything; None for each lesson's own.
        anew: whether everything is made again.
        force: whether files that the kit did not make are replaced.
        processes: how many lessons are made at once.

    Raises:
        LessonProblem: two lessons would be made into the same files.
    """
    _check_names(lessons, into)
    if len(lessons) <= FEW or processes == 1:
        for lesson in lessons:
            yield make_one(lesson, into=into, anew=anew, force=force)
        return
    # A process that begins afresh is the same on every system, and holds nothing of ours open.
    afresh = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(processes, mp_context=afresh, initializer=worker.begin) as pool:
        left = iter(lessons)
        one = partial(make_one, into=into, anew=anew, force=force)
        running = {pool.submit(one, lesson) for lesson in islice(left, 2 * processes)}
        try:
            while running:
                done, running = wait(running, return_when=FIRST_COMPLETED)
                for each in done:
                    yield each.result()
                running |= {pool.submit(one, lesson) for lesson in islice(left, len(done))}
        except BaseException:
            for each in running:
                each.cancel()
            raise


def make_one(
    lesson: Path, *, into: Path | None = None, anew: bool = False, force: bool = False
) -> Made:
    """Make everything of one lesson, whole or not at all; what is newer is left as it is.

    Example:
        >>> make_one(Path("nowhere.toml")).problem.remedy
        'check its name and folder'
    """
    folder = into or lesson.parent
    for each in {lesson.parent, folder}:
        recover(each)
    try:
        with in_file(str(lesson)):
            files = _contents(lesson, folder, anew=anew, force=force)
    except LessonProblem as problem:
        return Made(lesson, problem=problem)
    except Exception as error:  # noqa: BLE001 - one lesson may not end the making of the others
        return Made(lesson, problem=unreadable(error, file=str(lesson)))
    try:
        write_files(files)
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


def _contents(lesson: Path, folder: Path, *, anew: bool, force: bool) -> dict[Path, bytes]:
    """Return the files that have to be written, with what they are to hold."""
    source = source_file(lesson, folder)
    beside = folder / f"{lesson.stem}{NOTEBOOK}"
    writes = source.suffix.lower() != NOTEBOOK
    since = _newest(lesson, source, lesson.with_name(FILE))
    wanted = {
        path: output
        for output in map(OUTPUTS.get, OF_A_LESSON)
        if output and (path := folder / f"{lesson.stem}{output.ending}")
        if anew or writes or not _is_newer(path, since)
    }
    if not wanted and not writes:
        return {}
    for path, output in wanted.items():
        if not force:
            check_replaceable(path, output, remedy=MOVE_OR_FORCE)
    made_from = Source.of_file(source)
    files = {}
    if writes:
        files[beside] = notebook_text(made_from.notebook)
        if not force:
            check_unchanged(beside, files[beside], remedy=MOVE_OR_FORCE)
        made_from = replace(made_from, settings=class_settings(lesson.parent))
    for path, output in wanted.items():
        files[path] = output.content(made_from)
    return files


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
