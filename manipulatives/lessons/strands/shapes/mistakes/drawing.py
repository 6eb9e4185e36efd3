"""Foreseeable errors that show in what is drawn, folded, cut or judged of a shape.

They are common knowledge of teachers, from no published table. None leads to a number or a name, so
the facts of the paper tell them: the tasks say which.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from manipulatives.lessons.strands import FOLDER
from manipulatives.lessons.tasks.rule import Rule, rule_in

Facts = Mapping[str, int | str | bool | None]


def by_drawing(_: Facts) -> None:
    """Return nothing: the error shows in what is drawn or judged, not in a number or a name.

    Example:
        >>> by_drawing({"sides": 4})
    """


Seen = Rule[Callable[[Facts], None]]


def _seen(name: str) -> Seen:
    return rule_in(FOLDER / "shapes", name, by_drawing)


OTHER_SIZE_OR_TURN = _seen("turned_or_sized")
LOOKS_LIKE_IT = _seen("looks_like_it")
NOT_CLOSED = _seen("not_closed")
SIDES_CROSS = _seen("sides_cross")
DREW_ONE_MORE = _seen("drew_one_more")
DREW_ONE_FEWER = _seen("drew_one_fewer")
DREW_MID_SIDE = _seen("drew_mid_side")
CORNERS_NOT_RIGHT = _seen("corners_not_right")
SIDES_NOT_EQUAL = _seen("sides_not_equal")
FOLDS_ANOTHER_WAY = _seen("folds_another_way")
TURN_FOR_FOLD = _seen("turn_for_fold")
FOLD_NOT_SEEN = _seen("fold_not_seen")
UNEQUAL_AS_EQUAL = _seen("unequal_as_equal")
UNLIKE_AS_UNEQUAL = _seen("unlike_as_unequal")
ONE_CUT_TOO_MANY = _seen("one_cut_too_many")
ONE_SHARE_TOO_FEW = _seen("one_share_too_few")
RULES = (
    OTHER_SIZE_OR_TURN, LOOKS_LIKE_IT, NOT_CLOSED, SIDES_CROSS, DREW_ONE_MORE, DREW_ONE_FEWER,
    DREW_MID_SIDE, CORNERS_NOT_RIGHT, SIDES_NOT_EQUAL, FOLDS_ANOTHER_WAY, TURN_FOR_FOLD,
    FOLD_NOT_SEEN, UNEQUAL_AS_EQUAL, UNLIKE_AS_UNEQUAL, ONE_CUT_TOO_MANY, ONE_SHARE_TOO_FEW,
)  # fmt: skip
