"""A round: one question at a time with its manipulative, on a board or a pupil's tablet."""

from __future__ import annotations

from manipulatives.widgets.round.play import play
from manipulatives.widgets.round.round import Round

__all__ = ["Round", "play"]
