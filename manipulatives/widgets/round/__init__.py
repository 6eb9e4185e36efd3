"""A round: one question at a time with its manipulative, on a board or a pupil's tablet."""

from __future__ import annotations

from manipulatives.widgets.round.board.widget import BoardRound
from manipulatives.widgets.round.play import play
from manipulatives.widgets.round.pupil.widget import PupilRound

__all__ = ["BoardRound", "PupilRound", "play"]
