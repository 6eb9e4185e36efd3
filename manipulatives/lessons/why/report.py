"""What answered sums may mean, as plain data and as text for a teacher."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from manipulatives.lessons.why.explain import FEW_ANSWERS, Findings, Fit, explain
from manipulatives.lessons.why.next_item import give_next
from manipulatives.lessons.why.reading import Answered, Item, read_all
from manipulatives.maths.columns.written_sum import OPERATIONS

MOST_SHOWN = 6


def report(lines: Sequence[str], vocabulary: str = "us") -> dict[str, Any]:
    """Return what answered sums may mean, as plain data.

    Args:
        lines: sums with a pupil's answers, such as "63 - 29 = 46" and "58+37=85".
        vocabulary: "us" or "uk", for the sentence to the pupil.

    Returns:
        `answers` and `wrong` (how many there are), `explanations`, `unexplained` (wrong answers)
        and `next_items` (one sum for each operation). An explanation has `rules` (ids, and with
        only one `rule` as well), `pupil`, `teacher`, `explains` (how many of the wrong answers),
        `explained` (which), `weak` (whether there are only one or two answers) and `alike` (the
        rules of other explanations with the same answers to these sums).

    Raises:
        LessonProblem: a line is no answered sum.

    Example:
        >>> found = report(["63 - 29 = 46", "50 - 18 = 48"])
        >>> [(each["rules"], each["explains"]) for each in found["explanations"]]
        [(['larger_minus_smaller'], 2)]
    """
    answers = read_all(lines)
    explanations: list[dict[str, Any]] = []
    unexplained: list[Answered] = []
    next_items: list[Item] = []
    for operation in OPERATIONS:
        some = [each for each in answers if each.item.operation == operation]
        if not some:
            continue
        found = explain(some)
        explanations += [_explanation(fit, found, some, vocabulary) for fit in found.fits]
        unexplained += found.unexplained
        item = give_next(found, [each.item for each in some])
        next_items += [item] if item else []
    explanations.sort(key=lambda explanation: -explanation["explains"])
    return {
        "answers": len(answers),
        "wrong": sum(each.wrong for each in answers),
        "explanations": explanations,
        "unexplained": [str(each) for each in unexplained],
        "next_items": [str(item) for item in next_items],
    }


def _explanation(
    fit: Fit, found: Findings, answers: Sequence[Answered], vocabulary: str
) -> dict[str, Any]:
    rules = fit.candidate.rules
    return {
        **({"rule": rules[0].id} if len(rules) == 1 else {}),
        "rules": [*fit.candidate.ids],
        "pupil": rules[0].for_pupil(vocabulary),
        "teacher": f"May have {', and '.join(rule.may_have for rule in rules)}.",
        "explains": len(fit.explained),
        "explained": [str(answers[place]) for place in sorted(fit.explained)],
        "weak": len(answers) <= FEW_ANSWERS,
        "alike": [
            [*other.candidate.ids]
            for other in found.fits
            if other is not fit and other.writes == fit.writes
        ],
    }


def as_text(report: dict[str, Any]) -> str:
    """Return a report as a text to read.

    Example:
        >>> print(as_text(report(["21 + 4 = 25"])).splitlines()[0])
        1 answer, all right.
    """
    count, wrong = report["answers"], report["wrong"]
    answers = f"{count} answer{'s' if count > 1 else ''}"
    if not wrong:
        lines = [f"{answers}, all right."]
    else:
        lines = [f"{answers}, {wrong} wrong."]
        explanations = report["explanations"]
        lines += [line for each in explanations[:MOST_SHOWN] for line in _lines(each, wrong)]
        if len(explanations) > MOST_SHOWN:
            lines.append(
                f"\nOf {len(explanations)} explanations, these are the first {MOST_SHOWN}."
            )
        lines += _cautions(explanations)
        if report["unexplained"]:
            lines.append(f"\nNot explained: {', '.join(report['unexplained'])}.")
    if report["next_items"]:
        lines.append(f"\nGive next: {', '.join(report['next_items'])}.")
    return "\n".join(lines)


def _lines(explanation: dict[str, Any], wrong: int) -> list[str]:
    which = ", ".join(explanation["explained"])
    return [
        f"\n{explanation['teacher']}",
        f"  Explains {explanation['explains']} of {wrong} wrong: {which}.",
        f"  To the pupil: {explanation['pupil']}",
    ]


def _cautions(explanations: Sequence[dict[str, Any]]) -> list[str]:
    if not explanations:
        return ["\nNo rule explains enough of them. They may be slips."]
    lines = []
    if any(each["alike"] for each in explanations):
        lines.append("\nThese sums cannot tell all of these apart. The next one may.")
    if any(each["weak"] for each in explanations):
        lines.append("\nOne or two answers are weak evidence. Give more before you conclude.")
    return lines
