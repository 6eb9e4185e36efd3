"""Tasks that are asked in words, in a sum or in a row of numbers."""

from __future__ import annotations

import re

from manipulatives.drawings.shapes import Drawing
from manipulatives.lessons.tasks.task import Task
from manipulatives.outputs.sheet.layout.blanks import Blank, Sign, number_row, row
from manipulatives.outputs.sheet.layout.paper import Size
from manipulatives.outputs.sheet.pdf.letters import text_width
from manipulatives.outputs.sheet.tasks.printed import Answer, Manner, Printed

MINUS = "\u2212"
GAPS = ("?", "_")

_ROW = re.compile(r"(?P<ask>.+[?.]) (?P<row>(?:[0-9]+|_)(?:, (?:[0-9]+|_))+)\.?")
_SIGN = re.compile(r"(?P<ask>.+[?.]) (?P<left>[0-9]+) _ (?P<right>[0-9]+)\.?")
_SUM = re.compile(
    r"[0-9?_]+(?: [-+] [0-9?_]+)+(?: = [0-9?_]+)?|[0-9?_]+ = [0-9?_]+(?: [-+] [0-9?_]+)+"
)
_SENTENCE = re.compile(r"[.?!] ")

BY_FORM: dict[str, tuple[str, Answer]] = {
    "time": ("Write the time on the line.", "line"),
    "number": ("Write the answer in the boxes.", "boxes"),
    "sum": ("Write the parts.", "parts"),
}
ONE_BOX = "Write the answer in the box."
CHOOSE = "Circle the right answer."
STORY = "Write your sum and the answer on the line."


def on_paper(text: str) -> str:
    """Return a prompt as it is printed, with a true minus sign.

    Example:
        >>> on_paper("True or false? 8 - 5 = 3")
        'True or false? 8 \u2212 5 = 3'
    """
    return re.sub(r"(?<=[0-9?_)]) - (?=[0-9?_(])", f" {MINUS} ", text)


def is_sum(prompt: str) -> bool:
    """Return whether a prompt is a sum and nothing else.

    Example:
        >>> is_sum("58 + 37"), is_sum("6 = 17 - ?"), is_sum("What is 10 + 2?")
        (True, True, False)
    """
    return _SUM.fullmatch(prompt) is not None


def words(task: Task, manner: Manner) -> Printed:
    """Return the printed parts of a task without a picture: a sum, a row of numbers or words.

    Args:
        task: the task.
        manner: how its round is printed.
    """
    if task.ask["by"] == "choice":
        return _choosing(task, manner)
    if task.ask.get("form") == "number":
        if is_sum(task.prompt):
            instructions = (
                "Write the missing numbers." if "?" in task.prompt else "Work out each sum."
            )
            return Printed("", instructions, "picture", sum_row(task, manner), short=True)
        found = _ROW.fullmatch(task.prompt)
        if found:
            picture = _numbers(found["row"].split(", "), task.answer, manner)
            return Printed(found["ask"], "", "picture", picture, short=True)
    return asked(task, manner)


def asked(
    task: Task, manner: Manner, *, picture: Drawing | None = None, corner: bool = False
) -> Printed:
    """Return the printed parts of a task that is asked in words, with or without a picture.

    Args:
        task: the task.
        manner: how its round is printed.
        picture: to look at.
        corner: whether its top left corner is free for the number.
    """
    prompt = on_paper(" ".join((task.prompt, *task.parts)))
    if task.ask["by"] == "choice":
        return Printed(prompt, CHOOSE, "choices", picture, corner=corner)
    instructions, answer = BY_FORM[task.ask["form"]]
    if answer == "boxes" and manner.digits == 1:
        instructions = ONE_BOX
    if answer == "boxes" and picture is None and len(_SENTENCE.findall(prompt)) > 1:
        instructions, answer = STORY, "line"
    return Printed(prompt, instructions, answer, picture, corner=corner)


def sum_row(task: Task, manner: Manner) -> Drawing:
    """Return a sum in one line, with boxes for its missing number or its result.

    Args:
        task: its prompt is the sum.
        manner: how its round is printed.
    """
    blank = Blank(manner.digits, task.answer)
    pieces = re.split(r" ?[?_] ?", on_paper(task.prompt))
    if len(pieces) == 1:
        drawn = row([f"{pieces[0]} =", blank], manner.size, key=manner.key)
        indent = max(0.0, manner.lead - lead_of(task, manner.size))
        return Drawing(indent + drawn.width, drawn.height, drawn.at(indent, 0))
    parts = [piece for piece in (pieces[0], blank, pieces[1]) if piece]
    return row(parts, manner.size, key=manner.key)


def lead_of(task: Task, size: Size) -> float:
    """Return the width of a sum up to its equal sign, in millimetres; 0 for anything else.

    Args:
        task: the task.
        size: the sizes of the sheet.
    """
    plain = is_sum(task.prompt) and not set(GAPS) & set(task.prompt)
    return text_width(f"{on_paper(task.prompt)} =", size.sum) if plain else 0.0


def _numbers(numbers: list[str], answer: str, manner: Manner) -> Drawing:
    blank = Blank(manner.digits, answer)
    cells = [blank if number in GAPS else number for number in numbers]
    if blank not in cells:
        cells.append(blank)
    return number_row(cells, manner.longest, manner.size, key=manner.key)


def _choosing(task: Task, manner: Manner) -> Printed:
    found = _SIGN.fullmatch(task.prompt)
    if found:
        parts = [found["left"], Sign(task.answer), found["right"]]
        picture = row(parts, manner.size, key=manner.key)
        instructions = "Circle the sign and write it."
        return Printed(found["ask"], instructions, "choices", picture, short=True)
    found = _ROW.fullmatch(task.prompt)
    if found and sorted(found["row"].split(", ")) == sorted(task.ask["choices"]):
        # The choices are the numbers of the row, which need not be printed twice.
        return Printed(found["ask"], CHOOSE, "choices")
    return asked(task, manner)
