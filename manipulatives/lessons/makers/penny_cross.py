"""Penny Cross, the small market town where the tasks take place."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Event:
    """Something that happens in town, in two words for who and one for what.

    So short, every prompt about it keeps to ten words.

    Attributes:
        who: such as "The ferry".
        does: such as "leaves".
        did: such as "left".

    Example:
        >>> Event("The ferry", "leaves", "left").in_minutes(20)
        'The ferry leaves in 20 minutes.'
    """

    who: str
    does: str
    did: str

    def at(self, time: str) -> str:
        """Say when it happens.

        Example:
            >>> EVENTS[0].at("4:35")
            'The ferry leaves at 4:35.'
        """
        return f"{self.who} {self.does} at {time}."

    def in_minutes(self, by: int) -> str:
        """Say that it will happen.

        Example:
            >>> EVENTS[0].in_minutes(5)
            'The ferry leaves in 5 minutes.'
        """
        return f"{self.who} {self.does} in {by} minutes."

    def minutes_ago(self, by: int) -> str:
        """Say that it has happened.

        Example:
            >>> EVENTS[0].minutes_ago(5)
            'The ferry left 5 minutes ago.'
        """
        return f"{self.who} {self.did} {by} minutes ago."


EVENTS = (
    Event("The ferry", "leaves", "left"),
    Event("The baker", "opens", "opened"),
    Event("The bell", "rings", "rang"),
    Event("The cheese", "arrives", "arrived"),
    Event("The market", "starts", "started"),
    Event("The band", "plays", "played"),
)

CLOCKS = (
    "What time does the bell tower show?",
    "The ferry leaves. What time is it?",
    "What time does the baker's clock show?",
    "The market starts. What time is it?",
    "What time does the ferry clock show?",
    "The baker opens. What time is it?",
    "What time does the market clock show?",
    "The cheese arrives. What time is it?",
)
