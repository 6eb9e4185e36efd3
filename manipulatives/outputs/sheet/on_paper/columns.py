"""Written sums on squared paper, with room for marks, or with an empty number line."""

from __future__ import annotations

from manipulatives.drawings.columns import columns_drawing
from manipulatives.drawings.shapes import Drawing
from manipulatives.lessons.strands.sums.columns.working import played
from manipulatives.lessons.tasks.task import Task
from manipulatives.maths.columns.written_sum import ADD, LINE, PARTS, Sum, start_of
from manipulatives.outputs.sheet.layout.blanks import Blank, row
from manipulatives.outputs.sheet.tasks.number_line import jumps_drawing
from manipulatives.outputs.sheet.tasks.printed import Manner, Printed
from manipulatives.outputs.sheet.tasks.solved import solved
from manipulatives.outputs.sheet.tasks.words import on_paper, words

MANIPULATIVE = "ColumnBoard"

SQUARES = "Work out each sum. Write your marks too."
JUMPS = "Draw your jumps. Write the answer."


def printed(task: Task, manner: Manner) -> Printed:
    """Return a written sum as it is printed."""
    if task.ask["by"] != "manipulative":
        return words(task, manner)
    asked: Sum = task.start["sum"]
    if asked["form"] == LINE:
        return Printed("", JUMPS, "picture", _on_a_line(task, manner), short=True)
    traits = solved(task)
    done = played(asked, traits["steps"]) if manner.key else asked
    size = manner.size
    picture = columns_drawing(
        done,
        below=manner.vocabulary == "uk",
        square=size.box,
        least_type=size.note,
    )
    instructions = "Work out each sum." if asked["form"] == PARTS else SQUARES
    return Printed("", instructions, "picture", picture, short=True)


def _on_a_line(task: Task, manner: Manner) -> Drawing:
    asked: Sum = task.start["sum"]
    traits = solved(task)
    done = played(asked, traits["steps"]) if manner.key else asked
    back = asked["operation"] != ADD
    blank = Blank(manner.digits, task.answer)
    above = row([f"{on_paper(task.prompt)} =", blank], manner.size, key=manner.key)
    line = jumps_drawing(start_of(asked), done["jumps"], manner, back=back)
    gap = 0.3 * manner.size.box
    shapes = (*above.shapes, *line.at(0, above.height + gap))
    return Drawing(max(above.width, line.width), above.height + gap + line.height, shapes)
