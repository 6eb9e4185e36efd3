"""Foreseeable errors that show in what is drawn, folded, cut or judged of a shape.

They are common knowledge of teachers, from no published table. None leads to a number or a name, so
the facts of the paper tell them: the tasks say which.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from manipulatives.lessons.tasks.rule import Rule

Facts = Mapping[str, int | str | bool | None]


def by_drawing(_: Facts) -> None:
    """Return nothing: the error shows in what is drawn or judged, not in a number or a name.

    Example:
        >>> by_drawing({"sides": 4})
    """


Seen = Rule[Callable[[Facts], None]]


def _seen(name: str, may_have: str, us: str) -> Seen:
    return Rule(name, by_drawing, may_have=may_have, us=us, does={"shows": name})


OTHER_SIZE_OR_TURN = _seen(
    "turned_or_sized",
    "taken a turned, long or thin shape for another kind",
    "Turning it leaves its sides and corners as they are.",
)
LOOKS_LIKE_IT = _seen(
    "looks_like_it",
    "gone by the look of the whole, without sides and corners",
    "Count its sides, and try its corners.",
)
NOT_CLOSED = _seen("not_closed", "left the shape open", "Join the last point to the first.")
SIDES_CROSS = _seen("sides_cross", "let sides cross or touch", "Go around without crossing a side.")
DREW_ONE_MORE = _seen(
    "drew_one_more", "drawn one side too many, counting the start twice", "Count your sides again."
)
DREW_ONE_FEWER = _seen(
    "drew_one_fewer", "forgotten that the closing side counts", "Count your sides, the last too."
)
DREW_MID_SIDE = _seen(
    "drew_mid_side",
    "counted a point in the middle of a straight side",
    "Pull the hollow point away from its side.",
)
CORNERS_NOT_RIGHT = _seen(
    "corners_not_right", "drawn four sides without right angles", "Make all four corners square."
)
SIDES_NOT_EQUAL = _seen(
    "sides_not_equal", "drawn a rectangle with sides of two lengths", "Make all sides equally long."
)
FOLDS_ANOTHER_WAY = _seen(
    "folds_another_way",
    "found a mirror line that is not vertical",
    "It folds another way: try the vertical line.",
)
TURN_FOR_FOLD = _seen(
    "turn_for_fold", "taken equal halves for mirror halves", "Fold it: do the two parts match?"
)
FOLD_NOT_SEEN = _seen(
    "fold_not_seen", "not tried to fold the shape", "Fold it on the vertical line in the middle."
)
UNEQUAL_AS_EQUAL = _seen(
    "unequal_as_equal", "counted the parts without comparing their size", "Compare the parts."
)
UNLIKE_AS_UNEQUAL = _seen(
    "unlike_as_unequal",
    "thought that equal shares must look alike",
    "Shares may look different: compare how much each has.",
)
ONE_CUT_TOO_MANY = _seen(
    "one_cut_too_many", "counted the cuts in place of the shares", "Count the shares you made."
)
ONE_SHARE_TOO_FEW = _seen(
    "one_share_too_few", "made one share too few", "Count the shares, then cut once more."
)
RULES = (
    OTHER_SIZE_OR_TURN, LOOKS_LIKE_IT, NOT_CLOSED, SIDES_CROSS, DREW_ONE_MORE, DREW_ONE_FEWER,
    DREW_MID_SIDE, CORNERS_NOT_RIGHT, SIDES_NOT_EQUAL, FOLDS_ANOTHER_WAY, TURN_FOR_FOLD,
    FOLD_NOT_SEEN, UNEQUAL_AS_EQUAL, UNLIKE_AS_UNEQUAL, ONE_CUT_TOO_MANY, ONE_SHARE_TOO_FEW,
)  # fmt: skip
