"""What a pupil typed, brought into one form so that it can be compared.

The same is done in the browser by `widgets/shared/state/answers.js`.
"""

from __future__ import annotations

import re

FORMS = ("time", "number", "sum")

# [0-9], not \d: the digits of other scripts would pass here and not in the browser.
_TIME = re.compile(r" *(?:(0?[1-9]|1[0-2]) ?[:. ] ?|(0?[1-9]|1[0-2]))([0-5][0-9]) *")
_NUMBER = re.compile(r" *0*([0-9]+) *")
_SUM = re.compile(r" *[0-9]+ *(?:\+ *[0-9]+ *)*")


def tidy(form: str, text: str) -> str | None:
    """Return what was typed in the form in which answers are compared, or None for anything else.

    Args:
        form: "time", a 12-hour clock time from 1:00 to 12:59; "number", a whole number from 0; or
            "sum", whole numbers with plus signs between them.
        text: what was typed; a time may have a colon, a full stop, a space or nothing between
            hours and minutes.

    Raises:
        ValueError: there is no such form.

    Example:
        >>> tidy("time", "04.35"), tidy("time", "435"), tidy("time", "16:35"), tidy("number", "007")
        ('4:35', '4:35', None, '7')
        >>> tidy("sum", "300+40 +05")
        '300 + 40 + 5'
    """
    if form == "time":
        match = _TIME.fullmatch(text)
        return f"{int(match[1] or match[2])}:{match[3]}" if match else None
    if form == "number":
        match = _NUMBER.fullmatch(text)
        return match[1] if match else None
    if form == "sum":
        parts = text.split("+") if _SUM.fullmatch(text) else []
        return " + ".join(_NUMBER.sub(r"\1", part) for part in parts) or None
    raise ValueError(f'The form of an answer is "time", "number" or "sum", not {form!r}.')
