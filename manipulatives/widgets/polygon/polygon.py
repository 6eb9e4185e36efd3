"""The polygon drawer as a widget: the shape, its paper, and what is read out."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import traitlets

from manipulatives.drawings.polygon import polygon_drawing
from manipulatives.drawings.polygon_marks import COUNTED
from manipulatives.drawings.svg import svg_of
from manipulatives.maths.shapes.cuts import CutProblem
from manipulatives.maths.shapes.data import Shape, check_shape, converted
from manipulatives.maths.shapes.papers import GRIDS, Grid
from manipulatives.maths.shapes.ready import shape_named
from manipulatives.maths.shapes.shares import shares_of
from manipulatives.maths.vocabulary import VOCABULARIES
from manipulatives.widgets.manipulative import Manipulative, value_errors_as_trait_errors
from manipulatives.words.shape_facts import called, shape_facts
from manipulatives.words.shape_names import DEFINITIONS, Wording
from manipulatives.words.shape_remarks import remark, teachers_note
from manipulatives.words.shape_strokes import Stroke, strokes

if TYPE_CHECKING:
    from traitlets.utils.bunch import Bunch

READINGS = (
    "sides",
    "vertices",
    "name",
    "also",
    "right_angles",
    "equal_sides",
    "parallel",
    "mirror_lines",
    "regular",
    "convex",
    "shares",
)


class PolygonDrawer(Manipulative, folder="polygon", state="shape"):
    """Paper to put points on, by finger, mouse, pen or keys; sides run from one to the next.

    A tap puts a point; a tap on the first point closes the shape. Points are dragged, or tapped and
    then the place is tapped where they go. The plus on a side is dragged or tapped to put one more
    point there. A side that crosses another is pointed out while it is drawn, and a point in the
    middle of a straight side is shown hollow, because it is no vertex. Buttons undo all steps, go
    back to the beginning, clear the paper, add a point after the one that is picked, and remove it.

    A `guide` is a faint shape to trace; with `follow` it is drawn stroke by stroke at the press of
    a button, with a sentence for every stroke. With the tool "cut" a polygon or a circle is cut
    into shares, by taps from edge to edge through points of the paper.

    | key | what it does |
    | --- | --- |
    | Tab | to the pen, to the points, to the buttons |
    | Arrows on the pen | it goes to the next dot; on plain paper a fifth of a space |
    | Shift with an arrow on the pen | it goes three dots, or on plain paper a whole space |
    | Enter or Space on the pen | puts a point; on the first point it closes the shape |
    | Home on the pen | back to the first point |
    | Delete or Backspace on the pen | takes back the last point, or the last cut |
    | Right, Down; Left, Up on a point | to the next point; to the one before |
    | Home; End on a point | to the first point; to the last |
    | Shift with an arrow on a point | the point goes one dot; on plain paper a tenth of a space |
    | Enter or Space on a point | picks it for a tap, once more lets it go; the first one closes |
    | Insert or + on a point | adds a point on the side after it |
    | Delete or Backspace on a point | removes it |
    | Escape | back to where the drag began; lets go of what is picked; forgets a cut half made |

    With the tool "cut" the pen goes to the next place where a cut can begin or go through, and
    Enter or Space cuts there. PageUp and PageDown are not used: they turn the board.

    Whether facts are exact depends on the paper: on dots they are; on plain paper angles may be
    three degrees off, and lengths may differ by one part in twenty. Books differ about curved
    sides, about trapezoids and about stars: see `note`.

    Args:
        shape: what is on the paper at first: the name of a shape that is ready ("hexagon"), points
            of a closed shape, or a shape.
        traits: any of the traits below by name.

    Raises:
        traitlets.TraitError: a trait is given what it cannot be.
        TypeError: there is no such trait.

    Example:
        >>> drawer = PolygonDrawer([[1, 1], [5, 1], [5, 4], [1, 4]])
        >>> drawer.name, drawer.sides, drawer.facts["right_angles"]
        ('rectangle', 4, 4)
        >>> drawer.names
        ['rectangle', 'parallelogram', 'trapezoid', 'quadrilateral']
    """

    shape = traitlets.Any(
        help="The shape: `points`, in their order, and `closed`, whether the last is joined to the "
        "first. On square dots a point [x, y] counts dots from the top left, 0 to 8; on triangle "
        "dots [a, b] goes a dots to the right and b down to the right; on plain paper [x, y] are "
        "hundredths of the same spaces, 0 to 800. `curve` is there for a circle (centre, point of "
        "its edge), a half circle (the ends of its straight side) or a quarter circle (corner and "
        "end), `cuts` when it is cut. Names of ready shapes and lists of points are taken, too.",
    ).tag(sync=True)
    grid = traitlets.Enum(
        GRIDS,
        "square",
        help="The paper: plain, square dots or triangle dots. Shape and guide are put on the new "
        "paper as nearly as it allows.",
    ).tag(sync=True)
    show = traitlets.List(
        traitlets.Enum(READINGS),
        ["sides", "vertices", "name", "right_angles", "equal_sides"],
        help="What is read out and marked. Leave out what is asked: sides, vertices, name, also "
        "(its other names), right_angles, equal_sides, parallel, mirror_lines, regular, convex, "
        "shares.",
    ).tag(sync=True)
    count = traitlets.Enum(
        COUNTED, "", help="What is numbered for counting aloud: sides, vertices, or nothing."
    ).tag(sync=True)
    guide = traitlets.Any(
        None,
        allow_none=True,
        help="A faint shape to trace, given like `shape`; None for none.",
    ).tag(sync=True)
    follow = traitlets.Bool(
        False,
        help="Whether there is a button that draws the guide stroke by stroke, with a sentence for "
        "each.",
    ).tag(sync=True)
    tool = traitlets.Enum(
        ("draw", "cut"),
        "draw",
        help="draw: points are put and moved. cut: the shape is cut into shares.",
    ).tag(sync=True)
    vocabulary = traitlets.Enum(
        VOCABULARIES, "us", help="us: trapezoid, fourths. uk: trapezium, quarters."
    ).tag(sync=True)
    trapezoid = traitlets.Enum(
        DEFINITIONS,
        "inclusive",
        help="inclusive: a trapezoid has at least one pair of parallel sides. exclusive: exactly "
        "one.",
    ).tag(sync=True)
    hints = traitlets.Bool(
        True,
        help="Whether a line below the paper tells what to do next, what is wrong and what is "
        "special. It may tell what is asked.",
    ).tag(sync=True)
    movable = traitlets.Bool(
        True, help="Whether points can be put and moved; if not, the paper is a picture to read."
    ).tag(sync=True)
    show_points = traitlets.Bool(
        True, help="Whether points are seen where nothing can be moved."
    ).tag(sync=True)
    buttons = traitlets.Bool(
        True, help="Whether there are buttons to undo, reset, clear, add and remove."
    ).tag(sync=True)
    panel = traitlets.Bool(
        True, help="Whether there are switches for what is shown, the paper, guides and cuts."
    ).tag(sync=True)

    def __init__(self, shape: object = None, **traits: Any) -> None:
        # The paper that each was meant for: should it change alone, they are put on the new one.
        self._meant: dict[str, Grid] = {"shape": "square", "guide": "square"}
        if shape is not None:
            traits["shape"] = shape
        super().__init__(**traits)

    @property
    def sides(self) -> int:
        """How many straight sides there are; pieces of one straight side count once."""
        return int(self.facts["sides"] or 0)

    @property
    def vertices(self) -> int:
        """How many vertices there are; in an open chain its ends count, too."""
        return int(self.facts["vertices"] or 0)

    @property
    def name(self) -> str | None:
        """The most particular name of the shape, or None when it has none (yet)."""
        return next(iter(self.names), None)

    @property
    def names(self) -> list[str]:
        """Everything that the shape is called, the most particular name first."""
        return called(self.shape, self.grid, self._wording)

    @property
    def points(self) -> list[list[int]]:
        """The points in the order in which they were put."""
        return [list(point) for point in self.shape["points"]]

    @property
    def closed(self) -> bool:
        """Whether the last point is joined to the first."""
        return bool(self.shape["closed"])

    @property
    def facts(self) -> dict[str, int | str | bool | None]:
        """What is true of the shape, as goals and mistakes ask for it: see `shape_facts`."""
        return shape_facts(self.shape, self.grid, self._wording, self.guide)

    @property
    def remark(self) -> str | None:
        """What a pupil should hear about the shape: what is wrong with it, or special."""
        return remark(self.shape, self.grid, self._wording)

    @property
    def note(self) -> str | None:
        """Where books differ about the shape, for teachers, or None."""
        return teachers_note(self.shape, self.grid, self._wording)

    @property
    def strokes(self) -> list[Stroke]:
        """The strokes that draw the guide, or the shape if there is none, each with a sentence."""
        return strokes(self.guide or self.shape, self.grid)

    @property
    def _wording(self) -> Wording:
        return Wording(self.vocabulary, self.trapezoid)

    def put(self, across: int, down: int) -> None:
        """Put one more point; on the first one the shape is closed.

        Raises:
            ValueError: the shape is closed, or that is no point of the paper.

        Example:
            >>> drawer = PolygonDrawer()
            >>> for point in ([0, 0], [4, 0], [0, 3], [0, 0]):
            ...     drawer.put(*point)
            >>> drawer.name
            'triangle'
        """
        points, point = self.points, [across, down]
        if self.closed:
            raise ValueError("The shape is closed. Clear it, or set its points.")
        if points and point == points[0]:
            self.join()
        else:
            self.shape = check_shape({"points": [*points, point], "closed": False}, self.grid)

    def join(self) -> None:
        """Join the last point to the first.

        Raises:
            ValueError: there are fewer than three points.
        """
        if len(self.points) < 3:  # noqa: PLR2004 - a triangle has the fewest
            raise ValueError("A closed shape needs three points.")
        self.shape = {**self.shape, "closed": True}

    def clear(self) -> None:
        """Take everything from the paper."""
        self.shape = {"points": [], "closed": False}

    def still(self) -> str:
        """Return a picture of the paper as SVG text, for readers without a live host."""
        return svg_of(
            polygon_drawing(
                self.shape,
                self.grid,
                shown=self.show,
                counted=self.count,
                guide=self.guide,
                points=self.movable or self.show_points,
            )
        )

    @traitlets.default("shape")
    def _nothing(self) -> dict[str, Any]:
        return {"points": [], "closed": False}

    @traitlets.validate("shape")
    def _check_shape(self, proposal: Bunch) -> dict[str, Any]:
        checked = self._read(proposal["value"])
        self._meant["shape"] = self.grid
        return {**checked}

    @traitlets.validate("guide")
    def _check_guide(self, proposal: Bunch) -> dict[str, Any] | None:
        given = proposal["value"]
        checked = None if given is None else {**self._read(given)}
        self._meant["guide"] = self.grid
        return checked

    def _read(self, given: object) -> Shape:
        with value_errors_as_trait_errors():
            if isinstance(given, str):
                return shape_named(given, self.grid)
            shape = check_shape(given, self.grid)
            if "cuts" in shape and shares_of(shape, self.grid) is None:
                raise CutProblem("Only polygons and circles are cut.")
            return shape

    @traitlets.observe("grid")
    def _change_paper(self, _: Bunch) -> None:
        """Put shape and guide on the new paper, unless they came with it."""
        for name, before in self._meant.items():
            given = getattr(self, name)
            if before != self.grid and given is not None:
                setattr(self, name, converted(given, before, self.grid))
