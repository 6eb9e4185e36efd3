"""The round that one pupil works through alone."""

from __future__ import annotations

from manipulatives.widgets.round.core.widget import RoundWidget


class PupilRound(RoundWidget, folder="pupil"):
    """Several questions of one skill, for one pupil.

    Every question is tried twice at most. A pupil may take hints, one worked step each, and after
    two wrong answers the steps are shown. What is answered in a form not met before opens with an
    example to watch, and at the end each question that was not solved is followed by one like it.
    The timer is off unless the class settings turn it on; a pupil may hide it.

    The page around it begins it (`kit:begin`) and saves the work (`kit:work`). A page for pupils
    makes it of a `BoardRound`; no Python is needed while it is used.

    Raises:
        traitlets.TraitError: a trait is given what it cannot be.

    Example:
        >>> from manipulatives.widgets.round import play
        >>> board = play("time.read_hour", tasks=2, seed=90213)
        >>> pupil = PupilRound(
        ...     tasks=board.tasks, setup=board.setup, manipulative=board.manipulative
        ... )
        >>> len(pupil.tasks)
        2
    """
