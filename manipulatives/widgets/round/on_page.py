"""Rounds on a page, which has no Python: for a board, or for pupils."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from manipulatives.widgets.round.board.widget import BoardRound
from manipulatives.widgets.round.pupil.widget import PupilRound

if TYPE_CHECKING:
    from collections.abc import Mapping


def rounds_on_page(states: Mapping[str, Any], *, pupils: bool) -> dict[str, Any]:
    """Return widget states in which every round is one for a page that has no Python.

    Args:
        states: by model id, as Jupyter saves them; other widgets stay as they are.
        pupils: whether each pupil works alone on the page; otherwise it is for a board.

    Example:
        >>> import ipywidgets
        >>> from manipulatives.widgets.round import play
        >>> board = play("time.read_hour", tasks=2, seed=90213)
        >>> saved = ipywidgets.Widget.get_manager_state(widgets=[board])["state"]
        >>> rounds_on_page(saved, pupils=True)[board.model_id]["state"]["_anywidget_id"]
        'manipulatives.widgets.round.pupil.widget.PupilRound'
    """
    made = {}
    for model_id, given in states.items():
        state = given.get("state", {})
        if state.get("_anywidget_id") == _name_of(BoardRound):
            state = _for_pupil(state) if pupils else {**state, "python": False}
            made[model_id] = {**given, "state": state}
        else:
            made[model_id] = given
    return made


def _for_pupil(state: Mapping[str, Any]) -> dict[str, Any]:
    known = PupilRound.class_trait_names(sync=True)
    return {
        **{name: value for name, value in state.items() if name in known},
        "_esm": str(PupilRound._esm),  # noqa: SLF001 - it is what hosts are sent
        "_css": str(PupilRound._css),  # noqa: SLF001 - it is what hosts are sent
        "_anywidget_id": _name_of(PupilRound),
    }


def _name_of(kind: type) -> str:
    """Return the name of a class as anywidget saves it."""
    return f"{kind.__module__}.{kind.__name__}"
