"""The command line: one small function a command, and one table of them all."""

from __future__ import annotations

import argparse
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn

from manipulatives.lessons import commands as look
from manipulatives.lessons.files import read_lesson
from manipulatives.lessons.lesson import PAPERS, VERSIONS
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.whole import write_whole
from manipulatives.maker import commands_check, commands_make, commands_new
from manipulatives.serve import command as serve
from manipulatives.serve.quick import start_quickly

# What takes long to load (Jupyter's formats, drawing) is imported by the commands that need it.

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

PUPILS = "pupils"
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

    if given.audience == PUPILS:
        given.output = given.output or given.lesson.with_suffix(".pupils.html")
    target = _target(given, ".html", ".htm")

    def say(sentence: str) -> None:
        print(f"{given.lesson}: {sentence}.", file=sys.stderr, flush=True)

    page = page_of_file(given.lesson, say=say, audience=given.audience)
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


def _page_arguments(parser: argparse.ArgumentParser) -> None:
    what = "a lesson file (.toml) or a notebook (.ipynb)"
    _from_a_file("LESSON_OR_NOTEBOOK", what, "page")(parser)
    parser.add_argument(
        "--for",
        dest="audience",
        choices=("board", PUPILS),
        default="board",
        help="to teach from, or for a pupil to work through alone",
    )


def _sheet(given: argparse.Namespace) -> str:
    from manipulatives.outputs.sheet import sheet_of_file  # noqa: PLC0415 - see above

    what = {"pupil": "sheet", "key": "key", "steps": "key with its steps"}[given.form]
    name = {"pupil": "sheet"}.get(given.form, given.form)
    name = name if given.version == VERSIONS[0] else f"{name}-{given.version}"
    return _printed(
        given,
        name,
        what,
        sheet_of_file,
        kind=given.form,
        large_print=given.large_print,
        seed=given.seed,
        version=given.version,
        code=given.code,
        address=given.address,
    )


def _script(given: argparse.Namespace) -> str:
    from manipulatives.outputs.sheet import script_of_file  # noqa: PLC0415 - see above

    numbers = {"seed": given.seed, "version": given.version, "code": given.code}
    return _printed(given, "script", "script", script_of_file, **numbers)


def _cutouts(given: argparse.Namespace) -> str:
    from manipulatives.outputs.sheet import cutouts_of_file  # noqa: PLC0415 - see above

    return _printed(given, "cutouts", "sheet to cut out", cutouts_of_file)


def _printed(
    given: argparse.Namespace,
    name: str,
    what: str,
    make: Callable[..., bytes],
    **how: Any,
) -> str:
    given.output = given.output or given.lesson.with_suffix(f".{name}.pdf")
    target = _target(given, ".pdf")
    _write(target, make(given.lesson, paper=given.paper, **how))
    return f"The {what} is written: {target}."


def _cutouts_arguments(parser: argparse.ArgumentParser) -> None:
    what = "a lesson file (.toml) or a notebook (.ipynb)"
    _from_a_file("LESSON_OR_NOTEBOOK", what, "PDF")(parser)
    parser.add_argument("--paper", choices=PAPERS, help="instead of what the lesson says")


def _script_arguments(parser: argparse.ArgumentParser) -> None:
    _cutouts_arguments(parser)
    parser.add_argument("--seed", type=int, metavar="N", help="other tasks of the same kind")
    parser.add_argument(
        "--version", choices=VERSIONS, default=VERSIONS[0], help="other tasks, just as difficult"
    )
    parser.add_argument(
        "--code", metavar="CODE", help="the same numbers as on the sheet with this at its foot"
    )


def _sheet_arguments(parser: argparse.ArgumentParser) -> None:
    _script_arguments(parser)
    parser.add_argument(
        "--form",
        choices=("pupil", "key", "steps"),
        default="pupil",
        help="for pupils, answered, or answered with the worked steps",
    )
    parser.add_argument(
        "--key", dest="form", action="store_const", const="key", help="the same as --form key"
    )
    parser.add_argument("--large-print", action="store_true", help="everything larger")
    parser.add_argument(
        "--address", default="", metavar="URL", help="where the page is, for a QR code"
    )


def _file(typed: str) -> Path:
    """Return a path, unless its name is made of bytes that no text has."""
    try:
        typed.encode()
    except UnicodeEncodeError:
        raise argparse.ArgumentTypeError(f"{typed!a} cannot be shown, rename it") from None
    return Path(typed)


COMMANDS = {
    **{
        name: Command(one.HELP, one.EXAMPLE, one.arguments, one.run)
        for name, one in (("new", commands_new), ("make", commands_make), ("check", commands_check))
    },
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
        _page_arguments,
        _page,
    ),
    "sheet": Command(
        "Print a lesson as practice on paper, or with --key as the same sheet answered.",
        "manipulatives sheet monday.toml -o monday.pdf --large-print",
        _sheet_arguments,
        _sheet,
    ),
    "script": Command(
        "Print a page for whoever stands in: what to say, what the class answers, the answers.",
        "manipulatives script monday.toml",
        _script_arguments,
        _script,
    ),
    "cutouts": Command(
        "Print what a lesson needs to be cut out: coins at true size, blocks, a clock face.",
        "manipulatives cutouts monday.toml",
        _cutouts_arguments,
        _cutouts,
    ),
    "skills": Command(
        "List what can be taught: every skill with its limits and the standards it serves.",
        "manipulatives skills --standard 2.MD.C.7",
        look.skills_arguments,
        look.skills,
    ),
    "tasks": Command(
        "Look at tasks of a skill, with answers, worked steps and what may go wrong.",
        "manipulatives tasks time.read_hour --seed 7 --count 3",
        look.tasks_arguments,
        look.tasks,
    ),
    "why": Command(
        "Say what wrong answers may mean, and which sum to give next to find out more.",
        'manipulatives why "63 - 29 = 46" "50 - 18 = 48"',
        look.explain_arguments,
        look.explain,
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
