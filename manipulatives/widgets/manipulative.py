"""What every widget of the kit has in common."""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any, ClassVar, Self

import anywidget
import traitlets

from manipulatives.lessons.problem import quoted
from manipulatives.widgets.assemble import SHARED_STYLES, assemble, stylesheet

if TYPE_CHECKING:
    from traitlets.utils.bunch import Bunch

HERE = Path(__file__).parent
# What a notebook may say of any widget.
_OF_EVERY_WIDGET = ("layout",)


class KitWidget(anywidget.AnyWidget):
    """A widget whose JavaScript and CSS stand in a folder beside this file.

    A subclass names the folder: `class Clock(Manipulative, folder="clock")` loads
    `clock/clock.js` with all that it imports, and the kit's own CSS before `clock/clock.css`.
    """

    def __init_subclass__(cls, folder: str | None = None, **kwargs: Any) -> None:
        """Assemble the front end once, when the class is made."""
        if folder is not None:
            cls._esm = assemble(HERE / folder / f"{folder}.js")
            cls._css = stylesheet(*SHARED_STYLES, HERE / folder / f"{folder}.css")
        super().__init_subclass__(**kwargs)


@contextlib.contextmanager
def value_errors_as_trait_errors() -> Iterator[None]:
    """Hand on as a TraitError what a check of the mathematics says."""
    try:
        yield
    except ValueError as problem:
        raise traitlets.TraitError(str(problem)) from problem


class Manipulative(KitWidget):
    """Something a child moves, whose state can be read as plain facts.

    A subclass names the trait that holds all of its state, and what its constructor takes beside
    the traits: `class Clock(Manipulative, folder="clock", state="dial", takes=("time",))`.

    Raises:
        TypeError: there is no such trait.
    """

    _state: ClassVar[str] = ""
    _takes: ClassVar[tuple[str, ...]] = ()

    def __init_subclass__(cls, state: str = "", takes: tuple[str, ...] = (), **kwargs: Any) -> None:
        """Note what the subclass is like."""
        # anywidget makes a subclass of its own for each widget, which says neither.
        if state:
            cls._state, cls._takes = state, takes
        super().__init_subclass__(**kwargs)

    def __init__(self, **traits: Any) -> None:
        known = [*self._takes, *self.traits_of_its_own()]
        for name in traits:
            if name not in (*known, *_OF_EVERY_WIDGET):
                raise TypeError(
                    f"{type(self).__name__} has no {quoted(name)}. It takes {', '.join(known)}."
                )
        super().__init__(**traits)

    @classmethod
    def traits_of_its_own(cls) -> list[str]:
        """Return the traits that a call may set: none that belong to the machinery of widgets.

        Example:
            >>> from manipulatives import Clock
            >>> "dial" in Clock.traits_of_its_own(), "comm" in Clock.traits_of_its_own()
            (True, False)
        """
        machinery = anywidget.AnyWidget.class_traits()
        return [name for name in cls.class_traits() if name not in machinery and name[0] != "_"]

    def on_change(self, call: Callable[[Self], object]) -> Callable[[], None]:
        """Call a function whenever the state has changed, whoever changed it.

        Args:
            call: is given the manipulative.

        Returns:
            A function that stops it.

        Example:
            >>> from manipulatives import Clock
            >>> clock = Clock(time="4:35")
            >>> stop = clock.on_change(lambda clock: print(clock.time))
            >>> clock.time = "5:00"
            5:00
            >>> stop()
            >>> clock.time = "6:00"
        """

        def tell(_: Bunch) -> None:
            call(self)

        def stop() -> None:
            # Stopped already: there is nothing left to take away.
            with contextlib.suppress(ValueError):
                self.unobserve(tell, names=self._state)

        self.observe(tell, names=self._state)
        return stop

    @property
    def facts(self) -> dict[str, int | str | bool | None]:
        """What is true of the state just now; goals and mistakes are predicates on these."""
        raise NotImplementedError(f"{type(self).__name__} does not say its facts")

    def still(self) -> str | None:
        """Return a picture of the state as SVG text, for readers without a live host."""
        return None

    def _repr_mimebundle_(self, **kwargs: Any) -> tuple[dict[str, Any], dict[str, Any]] | None:
        made = super()._repr_mimebundle_(**kwargs)
        picture = self.still()
        if made is None or picture is None:
            return made
        data, metadata = made
        return {**data, "image/svg+xml": picture}, metadata
