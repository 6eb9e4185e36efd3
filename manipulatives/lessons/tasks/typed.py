"""Tasks whose answer is typed on a keypad."""

from __future__ import annotations

from typing import Any

from manipulatives.maths.number.words import number_in_words


def typed_number(number: int, vocabulary: str, *, spoken: str = "") -> dict[str, Any]:
    """Return the fields of a task that is answered by typing a number.

    Args:
        number: the right answer, a whole number from 0.
        vocabulary: "us" or "uk".
        spoken: the answer in words, where these are more than the number.

    Returns:
        `ask`, `goal`, `answer` and `spoken`.

    Example:
        >>> typed_number(141, "us")["goal"], typed_number(141, "uk")["spoken"]
        (['=', 'answer', '141'], 'one hundred and forty-one')
    """
    return {
        "ask": {"by": "keypad", "form": "number"},
        "goal": ["=", "answer", f"{number}"],
        "answer": f"{number}",
        "spoken": spoken or number_in_words(number, vocabulary),
    }
