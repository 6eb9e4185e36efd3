"""Making the outputs of many lessons, in two processes; a stopped run can be continued."""

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
from manipulatives.shelf.replace import REMEDY_MOVE_OR_FORCE, check_replaceable, check_unchanged

PROCESSES = 2
"""How many lessons are made at once."""

FEW = 3
"""Up to this many lessons are made in this process, which is faster than starting another."""


@dataclass(frozen=True)
class Made:
    """The result for one lesson.

    Attributes:
        lesson: its file.
        files: the written files in order; none where all were up to date.
        problem: why it could not be made, or None.
    """

    lesson: Path
    files: tuple[Path, ...] = ()
    problem: LessonProblem | None = None


def make_all(
    lessons: Sequence[Path],
    *,
    into: Path | None = None,
    again: bool = False,
    force: bool = False,
    processes: int = PROCESSES,
) -> Iterator[Made]:
    """Make notebook, page, sheet, key and script of lessons, and yield each as it is done.

    Outputs that are newer than their lesson and its class settings are left as they are, so a
    stopped run can be continued.

    Args:
        lessons: lesson files and notebooks.
        into: the folder for all files; None for the folder of each lesson.
        again: whether files that are up to date are made again.
        force: whether files that the kit did not make are replaced.
        processes: how many lessons are made at once.

    Raises:
        LessonProblem: two lessons would be made into the same files.
    """
    _check_names(lessons, into)
    if len(lessons) <= FEW or processes == 1:
        for lesson in lessons:
            yield make_one(lesson, into=into, again=again, force=force)
        return
    # "spawn" is the same on every system, and the process inherits no open files.
    spawn = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(processes, mp_context=spawn, initializer=worker.initialize) as pool:
        left = iter(lessons)
        one = partial(make_one, into=into, again=again, force=force)
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
    lesson: Path, *, into: Path | None = None, again: bool = False, force: bool = False
) -> Made:
    """Make the outputs of one lesson, all or none; those that are newer are left as they are.

    Example:
        >>> make_one(Path("nowhere.toml")).problem.remedy
        'check its name and folder'
    """
    folder = into or lesson.parent
    for each in {lesson.parent, folder}:
        recover(each)
    try:
        with in_file(str(lesson)):
            files = _contents(lesson, folder, again=again, force=force)
    except LessonProblem as problem:
        return Made(lesson, problem=problem)
    except Exception as error:  # noqa: BLE001 - one lesson must not stop the others
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


def _contents(lesson: Path, folder: Path, *, again: bool, force: bool) -> dict[Path, bytes]:
    """Return the files to write, with their contents."""
    source = source_file(lesson, folder)
    notebook_path = folder / f"{lesson.stem}{NOTEBOOK}"
    writes_notebook = source.suffix.lower() != NOTEBOOK
    newest_source = _newest(lesson, source, lesson.with_name(FILE))
    wanted = {
        path: output
        for output in map(OUTPUTS.get, OF_A_LESSON)
        if output and (path := folder / f"{lesson.stem}{output.ending}")
        if again or writes_notebook or not _is_newer(path, newest_source)
    }
    if not wanted and not writes_notebook:
        return {}
    for path, output in wanted.items():
        if not force:
            check_replaceable(path, output, remedy=REMEDY_MOVE_OR_FORCE)
    made_from = Source.of_file(source)
    files = {}
    if writes_notebook:
        files[notebook_path] = notebook_text(made_from.notebook)
        if not force:
            check_unchanged(notebook_path, files[notebook_path], remedy=REMEDY_MOVE_OR_FORCE)
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


def _is_newer(path: Path, newest_source: int) -> bool:
    return path.is_file() and path.stat().st_mtime_ns >= newest_source
