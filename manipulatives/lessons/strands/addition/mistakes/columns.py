"""Foreseeable mistakes of a written addition, each as one exact rule.

Carries that are never set back come from Brown & Burton 1978 (*Diagnostic models for procedural
bugs in basic mathematical skills*, Cognitive Science 2:155-192); most others are of the kinds that
Ashlock and Cox 1974 (ERIC ED092407) describe (these from memory). Taking away instead, and the
carry that is lost over a gap, are common practice, from no published table. The rules are our exact
statements, under names of our own. Where several rules lead to one answer, the first of the table
names it.

What a wrong answer suggests is a possibility, not a diagnosis: one item is weak evidence.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from manipulatives.lessons.strands import FOLDER
from manipulatives.lessons.strands.sums.tasks import Found, found_by
from manipulatives.lessons.tasks.rule import Rule, rules_in
from manipulatives.maths.columns.addition_faults import FAULTS
from manipulatives.maths.columns.faulty_addition import Procedure

OnAdding = Rule[Callable[..., int | None]]

# What happens to the whole sum leaves no columns for a second fault.
COMBINED = tuple(name for name, fault in FAULTS.items() if not fault.whole)


def added(*rules: str) -> Callable[..., int | None]:
    """Return what comes out of an addition when one rule, or several at once, are at work.

    Args:
        rules: ids from `RULES`, in any order.

    Returns:
        A function of the addends. It gives what is written, which may be right, or None where
        that cannot be said.

    Example:
        >>> added("carry_left_out")(28, 17)
        35
    """
    answer = Procedure(*(FAULTS[rule] for rule in FAULTS if rule in rules)).answer

    def written(*addends: int) -> int | None:
        result = answer(*addends)
        return result if result >= 0 else None

    return written


def _wrong(name: str) -> Callable[..., int | None]:
    answer = added(name)

    def wrong(*addends: int) -> int | None:
        written = answer(*addends)
        return None if written == sum(addends) else written

    return wrong


# In the order of the faults, from the general to the particular.
RULES: tuple[OnAdding, ...] = rules_in(
    FOLDER / "addition", **{name: _wrong(name) for name in FAULTS}
)


def found_in(numbers: Sequence[int]) -> Found:
    """Return what can be foreseen to go wrong in an addition.

    Example:
        >>> {rule.id: wrong for rule, wrong in found_in((8, 5)).wrong}["start_counted_on"]
        12
    """
    return found_by(RULES, numbers, "add", terms=[*numbers])
