"""The command line: one small function a command, and one table of them all."""

from __future__ import annotations

import argparse
import json
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn

from manipulatives.lessons.files import read_lesson
from manipulatives.lessons.lesson import PAPERS
from manipulatives.lessons.listing import (
    read_option,
    skill_data,
    skills_like,
    skills_text,
    tasks_like,
    tasks_text,
)
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.whole import write_whole
from manipulatives.lessons.why.command import as_text, report
from manipulatives.maths.day import VOCABULARIES
from manipulatives.serve import command as serve
from manipulatives.serve.quick import start_quickly

# What takes long to load (Jupyter's formats, drawing) is imported by the commands that need it.

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

DONE = 0
AT_FAULT = 2
INTERRUPTED = 130  # what a shell says of a program that Ctrl+C has ended


@dataclass(frozen=True)
class Command:
    """One command.

    Attributes:
        help: what it does, as a sentence.
        example: how it is typed.
        arguments: tells a parser what it takes.
        run: does it, and returns one sentence to print.
    """

    help: str
    example: str
    arguments: Callable[[argparse.ArgumentParser], None]
    run: Callable[[argparse.Namespace], str]


def main(typed: Sequence[str] | None = None) -> int:
    """Do what was typed; return 0 when it is done and 2 when the input is at fault.

    Example:
        >>> main(["page", "nowhere.toml"])
        2
    """
    given = _parser().parse_args(typed)
    start_quickly()
    try:
        print(given.run(given))
    except LessonProblem as problem:
        print(problem, file=sys.stderr)
        return AT_FAULT
    except OSError as error:
        # A name that is too long for any disk, for one.
        print(" ".join(str(error).split()), file=sys.stderr)
        return AT_FAULT
    except KeyboardInterrupt:
        return INTERRUPTED
    return DONE


def _notebook(given: argparse.Namespace) -> str:
    import nbformat  # noqa: PLC0415 - see above

    from manipulatives.outputs.notebook import notebook_of  # noqa: PLC0415 - see above

    if given.lesson.suffix.lower() == ".ipynb":
        raise LessonProblem(
            "this is a notebook already",
            remedy="give a lesson file (.toml)",
            file=str(given.lesson),
        )
    target = _target(given, ".ipynb")
    text = nbformat.writes(notebook_of(read_lesson(given.lesson))) + "\n"
    # Somebody may have worked on it: it is only replaced when it was named.
    if given.output is None and target.is_file() and not _holds(target, text):
        raise LessonProblem(
            "there is a notebook already, with other content",
            remedy=f"give another name, or -o {target} to replace it",
            file=str(target),
        )
    _write(target, text)
    return f"The notebook is written: {target}."


def _page(given: argparse.Namespace) -> str:
    from manipulatives.outputs.page import page_of_file  # noqa: PLC0415 - see above

    target = _target(given, ".html", ".htm")

    def say(sentence: str) -> None:
        print(f"{given.lesson}: {sentence}.", file=sys.stderr, flush=True)

    page = page_of_file(given.lesson, say=say)
    _write(target, page)
    return f"The page is written: {target} ({len(page.encode()) / 1000:.0f} kB)."


def _from_a_file(name: str, what: str, becomes: str) -> Callable[[argparse.ArgumentParser], None]:
    """Say that a command takes one file and writes another."""

    def arguments(parser: argparse.ArgumentParser) -> None:
        parser.add_argument("lesson", metavar=name, type=_file, help=what)
        parser.add_argument(
            "-o",
            "--output",
            metavar="FILE",
            type=_file,
            help=f"the {becomes} to write; without it, beside the lesson under the same name",
        )

    return arguments


def _sheet(given: argparse.Namespace) -> str:
    from manipulatives.outputs.sheet import sheet_of_file  # noqa: PLC0415 - see above

    kind = "key" if given.key else "sheet"
    given.output = given.output or given.lesson.with_suffix(f".{kind}.pdf")
    target = _target(given, ".pdf")
    content = sheet_of_file(
        given.lesson,
        key=given.key,
        large_print=given.large_print,
        paper=given.paper,
        seed=given.seed,
    )
    _write(target, content)
    return f"The {kind} is written: {target}."


def _sheet_arguments(parser: argparse.ArgumentParser) -> None:
    what = "a lesson file (.toml) or a notebook (.ipynb)"
    _from_a_file("LESSON_OR_NOTEBOOK", what, "sheet")(parser)
    parser.add_argument("--key", action="store_true", help="with the answers, for whoever marks it")
    parser.add_argument("--large-print", action="store_true", help="everything larger")
    parser.add_argument("--paper", choices=PAPERS, help="instead of what the lesson says")
    parser.add_argument("--seed", type=int, metavar="N", help="other tasks of the same kind")


def _skills(given: argparse.Namespace) -> str:
    found = skills_like(strand=given.strand, standard=given.standard, word=given.word)
    return _json(map(skill_data, found)) if given.json else skills_text(found)


def _skills_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("word", metavar="WORD", nargs="?", help="only skills that it is found in")
    parser.add_argument("--strand", metavar="NAME", help="only one strand, such as time")
    parser.add_argument(
        "--standard", metavar="CODE", help="only what serves a standard, such as 2.MD.C.7"
    )
    _json_argument(parser)


def _tasks(given: argparse.Namespace) -> str:
    made = tasks_like(
        given.skill,
        seed=given.seed,
        count=given.count,
        vocabulary=given.vocabulary,
        options=dict(given.set),
    )
    return _json(task.to_data() for task in made) if given.json else tasks_text(made)


def _tasks_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("skill", metavar="SKILL", help="as `manipulatives skills` lists it")
    parser.add_argument("--seed", type=int, metavar="N", default=1, help="which tasks")
    parser.add_argument("--count", type=int, metavar="N", default=5, help="how many")
    parser.add_argument("--vocabulary", choices=VOCABULARIES, default=VOCABULARIES[0])
    parser.add_argument(
        "--set",
        type=_option,
        metavar="OPTION=VALUE",
        action="append",
        default=[],
        help="what the skill lets a round set; one value for each task with commas between",
    )
    _json_argument(parser)


def _why(given: argparse.Namespace) -> str:
    found = report(given.sums)
    return _json(found) if given.json else as_text(found)


def _why_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "sums", metavar="SUM", nargs="+", help='an answered sum in quotation marks: "63 - 29 = 46"'
    )
    _json_argument(parser)


def _json_argument(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--json", action="store_true", help="as data for another program")


def _json(data: Any) -> str:  # noqa: ANN401 - whatever JSON can hold
    plain = data if isinstance(data, dict) else list(data)
    return json.dumps(plain, ensure_ascii=False, indent=2)


def _option(typed: str) -> tuple[str, Any]:
    try:
        return read_option(typed)
    except ValueError as problem:
        raise argparse.ArgumentTypeError(str(problem).rstrip(".")) from None


def _file(typed: str) -> Path:
    """Return a path, unless its name is made of bytes that no text has."""
    try:
        typed.encode()
    except UnicodeEncodeError:
        raise argparse.ArgumentTypeError(f"{typed!a} cannot be shown, rename it") from None
    return Path(typed)


COMMANDS = {
    "notebook": Command(
        "Make the notebook of a lesson, to be changed, shown and taught from in Jupyter.",
        "manipulatives notebook monday.toml -o monday.ipynb",
        _from_a_file("LESSON", "a lesson file (.toml)", "notebook"),
        _notebook,
    ),
    "page": Command(
        "Make a lesson into one web page that needs no network. It opens in any browser, "
        "from a disk or a stick. A notebook with code of its own is run first.",
        "manipulatives page monday.toml -o monday.html",
        _from_a_file("LESSON_OR_NOTEBOOK", "a lesson file (.toml) or a notebook (.ipynb)", "page"),
        _page,
    ),
    "sheet": Command(
        "Print a lesson as practice on paper, or with --key as the same sheet answered.",
        "manipulatives sheet monday.toml -o monday.pdf --large-print",
        _sheet_arguments,
        _sheet,
    ),
    "skills": Command(
        "List what can be taught: every skill with its limits and the standards it serves.",
        "manipulatives skills --standard 2.MD.C.7",
        _skills_arguments,
        _skills,
    ),
    "tasks": Command(
        "Look at tasks of a skill, with answers, worked steps and what may go wrong.",
        "manipulatives tasks time.read_hour --seed 7 --count 3",
        _tasks_arguments,
        _tasks,
    ),
    "why": Command(
        "Say what wrong answers may mean, and which sum to give next to find out more.",
        'manipulatives why "63 - 29 = 46" "50 - 18 = 48"',
        _why_arguments,
        _why,
    ),
    "serve": Command(
        "Open the shelf of a folder: every lesson as board, page, sheet and key. "
        "It is for this machine only, and Ctrl+C closes it.",
        "manipulatives serve lessons",
        serve.arguments,
        serve.run,
    ),
}


class _Parser(argparse.ArgumentParser):
    """Says what is wrong in one sentence, without the whole usage before it."""

    def error(self, message: str) -> NoReturn:
        self.exit(AT_FAULT, f"{message}; {self.prog} --help says how it is typed.\n")


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(
        prog="manipulatives",
        description="Make a lesson for five- to eight-year-olds into what you teach it with.",
    )
    parser.set_defaults(run=lambda given: parser.format_help().rstrip())  # noqa: ARG005 - as all run
    commands = parser.add_subparsers(title="commands", metavar="COMMAND")
    for name, command in COMMANDS.items():
        one = commands.add_parser(
            name,
            help=command.help.split(". ")[0].rstrip("."),
            description=command.help,
            epilog=f"Example: {command.example}",
        )
        command.arguments(one)
        one.set_defaults(run=command.run)
    return parser


def _target(given: argparse.Namespace, *suffixes: str) -> Path:
    """Return where to write, before any work is done for it."""
    if given.lesson.is_dir():
        raise LessonProblem("this is a folder", remedy="give a file", file=str(given.lesson))
    target: Path = given.output or given.lesson.with_suffix(suffixes[0])
    what = None
    if target.suffix.lower() not in suffixes:
        what, remedy = "that is the name of another kind of file", f"let it end in {suffixes[0]}"
    elif target.is_dir():
        what, remedy = "that is a folder", "give the name of a file"
    elif not target.parent.is_dir():
        what, remedy = f"there is no folder {target.parent}", "make it first, or name another"
    if what:
        raise LessonProblem(what, remedy=remedy, file=str(target))
    return target


def _holds(target: Path, text: str) -> bool:
    try:
        return target.read_text("utf-8") == text
    except (OSError, UnicodeDecodeError):
        return False


def _write(target: Path, text: str | bytes) -> None:
    try:
        write_whole(target, text)
    except OSError as error:
        raise LessonProblem(
            f"it cannot be written ({error.strerror})",
            remedy="choose a folder that you may write in",
            file=str(target),
        ) from None
