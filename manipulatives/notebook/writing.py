"""A lesson written as a notebook, for people to change.

It has a title, one cell of imports, and for every round a heading and one plain call with a seed of
its own. So a round that is moved, copied or taken out changes no other number, and the rounds can
be read from the text of the calls. The rest of the lesson is in the notebook's
metadata.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.notebook.calls import PACKAGE, call_text
from manipulatives.notebook.cells import ROUND
from manipulatives.notebook.markdown import heading, headings

if TYPE_CHECKING:
    from nbformat import NotebookNode

_KERNEL = {"name": "python3", "display_name": "Python 3 (ipykernel)", "language": "python"}

OF_LESSON = ("vocabulary", "currency")
"""Arguments of a round's call that hold for the whole lesson."""


def notebook_of(lesson: Lesson) -> NotebookNode:
    """Return the notebook of a lesson; the same lesson gives the same notebook to the byte.

    Example:
        >>> rounds = (Round("time.read_hour", seed=90213, tasks=4),)
        >>> notebook_of(Lesson("Monday", seed=7, rounds=rounds)).cells[-1].source
        'play("time.read_hour", tasks=4, seed=90213)'
    """
    manipulatives = sorted({SKILLS[each.skill].manipulative for each in lesson.rounds})
    imports = f"from {PACKAGE} import {', '.join([*manipulatives, ROUND])}"
    cells = [
        new_markdown_cell(heading(1, lesson.title), id="title"),
        new_code_cell(imports, id="imports"),
    ]
    names: list[str] = []
    for each in lesson.rounds:
        name = f"{each.skill.replace('.', '-')}-{each.seed}"
        names.append(name)
        # The same round twice is allowed; the same cell id is not.
        if (again := names.count(name)) > 1:
            name = f"{name}-{again}"
        title = each.title or SKILLS[each.skill].name
        cells += [
            new_markdown_cell(heading(2, title), id=f"{name}-title"),
            new_code_cell(_call_of(each, lesson), id=name),
        ]
    header = lesson.to_data()
    del header["rounds"]
    return new_notebook(cells=cells, metadata={"kernelspec": _KERNEL, PACKAGE: header})


def _call_of(one: Round, lesson: Lesson) -> str:
    """Return the call for a round."""
    data = one.to_data()
    skill, options = data.pop("skill"), data.pop("options", {})
    title, seed = data.pop("title", None), data.pop("seed")
    # The heading holds the title, unless another title would be read from it.
    if title is None or _title_read(title, SKILLS[skill].name) == title:
        shown = {}
    else:
        shown = {"title": title}
    for name in OF_LESSON:
        if getattr(lesson, name) is not None:
            data[name] = getattr(lesson, name)
    return call_text(ROUND, skill, **shown, **data, **options, seed=seed)


def _title_read(title: str, usual: str) -> str | None:
    """Return the title that comes back from a heading when the call says none."""
    found = headings(heading(2, title))
    return None if found[0][1] == usual else found[0][1]
