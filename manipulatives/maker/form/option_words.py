"""What options and their values are called in the form."""

from __future__ import annotations

from manipulatives.lessons.catalogue.skill import Option

_NAMES = {
    "to": "Numbers up to",
    "by": "How many minutes",
    "crosses": "Crosses a",
    "zeros": "Zeros in",
    "zero": "With zero",
    "regroup": "Regroup",
    "given": "Given as",
    "answer": "Answered by",
    "unknown": "Unknown",
    "ask": "Asks for",
    "which": "Which",
    "start": "Starts from",
    "hands": "Hands",
    "step": "Steps of",
    "pieces": "Pieces",
    "place": "Which digit",
    "parts": "Parts",
    "decides": "What decides",
    "like": "Alike in",
    "way": "Which way",
    "near": "Near doubles",
    "teens": "With teens",
    "order": "Order of tasks",
}
_VALUES: dict[Option, str] = {True: "yes", False: "no", "any": "anything"}
ORDER_VALUES = {"any": "as they come", "easy first": "easy ones first", "mixed": "mixed kinds"}


def name_of(option: str) -> str:
    """Return what an option is called.

    Example:
        >>> name_of("to"), name_of("shown_as")
        ('Numbers up to', 'Shown as')
    """
    return _NAMES.get(option, option.replace("_", " ").capitalize())


def value_of(option: str, value: Option) -> str:
    """Return what a value is called.

    Example:
        >>> value_of("zero", True), value_of("to", 1), value_of("order", "any")
        ('yes', '1', 'as they come')
    """
    if option == "order":
        return ORDER_VALUES.get(str(value), str(value))
    # In Python 1 equals True, so compare the types too.
    if isinstance(value, bool) or value == "any":
        return _VALUES[value]
    return str(value)
