"""One or two mats with blocks, and their facts.

A **mat** is a list of one or two blocks. Two mats are for comparing, for adding, or for what is
left and what was taken away.
"""

from __future__ import annotations

from manipulatives.maths.number.place_value import (
    PLACES,
    Blocks,
    check_blocks,
    is_canonical,
    number_of,
    pieces_of,
)
from manipulatives.maths.number.trades import step_equation

MOST_MATS = 2


def check_mat(mat: object) -> list[Blocks]:
    """Check a mat and return a copy of it, with all places of its blocks.

    Raises:
        ValueError: no list of one or two blocks.

    Example:
        >>> check_mat([{"tens": 2, "ones": 15}])
        [{'thousands': 0, 'hundreds': 0, 'tens': 2, 'ones': 15}]
    """
    if isinstance(mat, (list, tuple)) and 1 <= len(mat) <= MOST_MATS:
        return [check_blocks(blocks) for blocks in mat]
    raise ValueError(f"A mat is a list of one or two blocks, not {mat!r}.")


def compared(one: int, other: int) -> str:
    """Return the sign between two numbers (Common Core State Standards, 2.NBT.A.4).

    Example:
        >>> compared(345, 287), compared(35, 35)
        ('>', '=')
    """
    return "<" if one < other else ">" if one > other else "="


def mat_facts(mat: list[Blocks]) -> dict[str, int | str | bool]:
    """Return the facts of a mat, for goals and mistakes.

    Returns:
        `number`, what the blocks show; `pieces`, how many there are; `canonical`, whether each
        count is a digit; `thousands`, `hundreds`, `tens` and `ones`, the counts. Of a second mat
        the same with `second_` before the name, and of both `compare`, the sign between them, and
        `sum`.

    Raises:
        ValueError: no mat.

    Example:
        >>> facts = mat_facts([{"tens": 2, "ones": 15}, {"tens": 4}])
        >>> facts["number"], facts["pieces"], facts["canonical"], facts["compare"], facts["sum"]
        (35, 17, False, '<', 75)
    """
    first, *more = (_facts(blocks) for blocks in check_mat(mat))
    facts: dict[str, int | str | bool] = {**first}
    for second in more:
        facts |= {f"second_{name}": fact for name, fact in second.items()}
        facts["compare"] = compared(first["number"], second["number"])
        facts["sum"] = first["number"] + second["number"]
    return facts


def mat_equation(before: list[Blocks], after: list[Blocks]) -> str:
    """Return the equation of a step, or "" when there is none.

    On one mat it is the equation of that mat. On two mats it adds both numbers when all blocks of
    the second mat went to the first; otherwise it is the equation of the first mat that changed.

    Raises:
        ValueError: no mat.

    Example:
        >>> mat_equation([{"tens": 3}, {"tens": 2}], [{"tens": 5}, {}])
        '30 + 20 = 50'
        >>> mat_equation([{"tens": 3}], [{"tens": 2, "ones": 10}])
        '1 ten = 10 ones; 30 = 20 + 10'
    """
    old, new = check_mat(before), check_mat(after)
    if len(old) != len(new):
        return ""
    steps = [step_equation(was, now) for was, now in zip(old, new, strict=True)]
    if all(steps) and len(steps) > 1 and not any(new[1].values()):
        first, second = number_of(old[0]), number_of(old[1])
        if number_of(new[0]) == first + second:
            return f"{first} + {second} = {first + second}"
    return next(filter(None, steps), "")


def put_together(mat: list[Blocks]) -> list[Blocks]:
    """Return two mats after all blocks of the second were put on the first.

    Raises:
        ValueError: there are not two, or both are worth more than a mat holds.

    Example:
        >>> first, second = put_together([{"tens": 2, "ones": 7}, {"tens": 3, "ones": 5}])
        >>> first["tens"], first["ones"], any(second.values())
        (5, 12, False)
    """
    checked = check_mat(mat)
    if len(checked) < MOST_MATS:
        raise ValueError("There is one mat alone; nothing can be put together with it.")
    first, second = checked
    return check_mat([{place: first[place] + second[place] for place in PLACES}, {}])


def _facts(blocks: Blocks) -> dict[str, int]:
    facts = {
        "number": number_of(blocks),
        "pieces": pieces_of(blocks),
        "canonical": is_canonical(blocks),
    }
    return {**facts, **{place: blocks[place] for place in PLACES}}
