"""The polygon drawer in a browser: by mouse, finger, taps and keys, and seen on three screens."""

from __future__ import annotations

import math

import pytest
from browser.harness import open_widget

from manipulatives.maths.shapes.data import check_shape
from manipulatives.maths.shapes.papers import place
from manipulatives.widgets.polygon import PolygonDrawer
from manipulatives.widgets.polygon.polygon import READINGS
from manipulatives.words.shape_facts import shape_facts
from manipulatives.words.shape_strokes import strokes
from support.touch import Fingers

# From hundredths of a space to pixels.
SPOT = """([x, y]) => {
  const drawing = document.querySelector(".polygon-paper > svg");
  const point = new DOMPoint(x, y).matrixTransform(drawing.getScreenCTM());
  return [point.x, point.y];
}"""
NOTHING = {"points": [], "closed": False}
BOX = [[1, 2], [7, 2], [7, 6], [1, 6]]
TRIANGLE = [[1, 1], [7, 1], [4, 6]]
CROSSED = {"points": [[1, 1], [7, 7], [7, 1]], "closed": False}
CIRCLE = {"points": [[4, 4], [4, 1]], "closed": True, "curve": "circle"}


class Drawer:
    """A polygon drawer on a page, and what a test does with it."""

    def __init__(self, page):
        self.page = page
        self.grid = "square"

    def show(self, shape=None, *, room="height: 100vh", **traits):
        """Show a drawer; the panel is left out unless the test asks for it."""
        drawer = PolygonDrawer(shape, **{"panel": False, **traits})
        self.grid = drawer.grid
        open_widget(self.page, drawer, place=room)

    @property
    def shape(self):
        """The shape that the model holds."""
        return self.page.evaluate("kit.get('shape')")

    @property
    def points(self):
        """Its points."""
        return self.shape["points"]

    @property
    def facts(self):
        """What the drawer says is true."""
        return self.page.evaluate("document.querySelector('.kit-polygon').facts()")

    def spot(self, point):
        """Where on the page a point of the paper is."""
        return self.page.evaluate(SPOT, list(place(tuple(point), self.grid)))

    def click(self, *points):
        """Click on points of the paper with the mouse, one after the other."""
        for point in points:
            self.page.mouse.click(*self.spot(point))

    def tap(self, *points):
        """Tap on points of the paper with a finger."""
        for point in points:
            self.page.touchscreen.tap(*self.spot(point))

    def drag(self, start, end, *, let_go=True):
        """Drag with the mouse from one place on the page to another."""
        self.page.mouse.move(*start)
        self.page.mouse.down()
        for step in range(1, 9):
            self.page.mouse.move(*(a + (b - a) * step / 8 for a, b in zip(start, end, strict=True)))
        if let_go:
            self.page.mouse.up()

    def swipe(self, start, end):
        """Drag with a finger."""
        session = self.page.context.new_cdp_session(self.page)

        def touch(kind, *points):
            spots = [dict(zip("xy", point, strict=True)) for point in points]
            session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": spots})

        touch("touchStart", start)
        for step in range(1, 9):
            touch("touchMove", [a + (b - a) * step / 8 for a, b in zip(start, end, strict=True)])
        touch("touchEnd")

    def plus(self, side):
        """Where on the page the plus of a side is."""
        box = self.page.locator(f".polygon-plus[data-side='{side}']").bounding_box()
        return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2

    def press(self, name):
        """Press a button, even one that says it has nothing to do."""
        self.page.get_by_role("button", name=name, exact=True).click(force=True)

    def allows(self, name):
        """Whether a button has something to do."""
        button = self.page.get_by_role("button", name=name, exact=True)
        return button.get_attribute("aria-disabled") != "true"

    def handle(self, index):
        """The handle of a point."""
        return self.page.locator(".polygon-point").nth(index)

    def keys(self, *keys):
        """Press keys."""
        for key in keys:
            self.page.keyboard.press(key)

    def focus_pen(self):
        """Give the focus to the pen."""
        self.page.locator(".polygon-pen").focus()

    def reading(self, name):
        """What a reading shows, or None."""
        value = self.page.locator(f"[data-reading='{name}'] strong")
        return value.inner_text() if value.is_visible() else None

    @property
    def hint(self):
        """The line below the paper."""
        return self.page.locator(".polygon-hint").inner_text()

    def says(self, sentence):
        """Wait until the live region says something with a sentence in it."""
        self.page.wait_for_function(
            "sentence => document.querySelector('#kit-live')?.textContent.includes(sentence)",
            arg=sentence,
        )


@pytest.fixture
def drawer(quiet_page):
    return Drawer(quiet_page)


def test_points_are_clicked_and_the_first_one_closes_the_shape(drawer):
    drawer.show()
    assert drawer.hint == "Tap to put the first point."
    drawer.click([1, 1], [7, 1])
    assert drawer.reading("sides") == "1"
    drawer.click([7, 5], [1, 5])
    assert drawer.shape == {"points": [[1, 1], [7, 1], [7, 5], [1, 5]], "closed": False}
    assert drawer.hint == "Tap the first point to close."
    assert drawer.reading("name") == "\u2013"
    drawer.click([1, 1])
    assert drawer.shape == {"points": [[1, 1], [7, 1], [7, 5], [1, 5]], "closed": True}
    assert [drawer.reading(name) for name in ("sides", "vertices", "name", "right_angles")] == [
        "4",
        "4",
        "rectangle",
        "4",
    ]
    drawer.click([4, 4])
    assert drawer.hint == "The shape is closed. Its points can be moved."


@pytest.mark.screens("tablet", "phone")
@pytest.mark.parametrize("grid", ["square", "triangle"])
def test_points_are_tapped_with_a_finger(drawer, grid):
    drawer.show(grid=grid)
    points = [[2, 1], [5, 1], [3, 5]]
    drawer.tap(*points, points[0])
    assert drawer.shape == {"points": points, "closed": True}
    assert drawer.page.evaluate("scrollY") == 0


def test_on_plain_paper_a_point_is_where_it_was_clicked(drawer):
    drawer.show(grid="plain")
    drawer.click([123, 456], [700, 456], [400, 100])
    off = [
        math.dist(*pair)
        for pair in zip(drawer.points, [[123, 456], [700, 456], [400, 100]], strict=True)
    ]
    assert max(off) <= 2


def test_a_click_between_dots_goes_to_the_nearest(drawer):
    drawer.show()
    x, y = drawer.spot([3, 4])
    drawer.page.mouse.click(x + 20, y - 25)
    assert drawer.points == [[3, 4]]


@pytest.mark.parametrize(
    ("shape", "index", "to", "after"),
    [
        (TRIANGLE, 2, [6, 7], [[1, 1], [7, 1], [6, 7]]),
        (TRIANGLE, 0, [0, 0], [[0, 0], [7, 1], [4, 6]]),
        (CIRCLE, 1, [6, 4], [[4, 4], [6, 4]]),
        (CIRCLE, 0, [5, 4], [[5, 4], [5, 1]]),
    ],
)
def test_a_point_is_dragged_by_mouse(drawer, shape, index, to, after):
    drawer.show(shape)
    drawer.drag(drawer.spot(drawer.points[index]), drawer.spot(to))
    assert drawer.points == after
    assert drawer.allows("Undo")
    drawer.press("Undo")
    assert drawer.points == check_shape(shape, "square")["points"]
    assert not drawer.allows("Undo")


@pytest.mark.screens("tablet", "phone")
@pytest.mark.parametrize("grid", ["square", "triangle", "plain"])
def test_a_point_is_dragged_by_a_finger(drawer, grid):
    drawer.show("triangle", grid=grid)
    start = drawer.points[1]
    to = [start[0] - (200 if grid == "plain" else 2), start[1]]
    drawer.swipe(drawer.spot(start), drawer.spot(to))
    assert math.dist(drawer.points[1], to) < (3 if grid == "plain" else 0.1)
    assert drawer.points[0] == PolygonDrawer("triangle", grid=grid).points[0]
    assert drawer.page.evaluate("scrollY") == 0


@pytest.mark.screens("phone")
def test_a_finger_beside_the_points_scrolls_the_page(drawer):
    drawer.show(TRIANGLE, room="height: 700px; margin-bottom: 1500px")
    x, y = drawer.spot([1, 6])
    session = drawer.page.context.new_cdp_session(drawer.page)
    for kind, down in (("touchStart", 0), *(("touchMove", step) for step in range(-10, -201, -10))):
        points = [{"x": x, "y": y + down}]
        session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})
    session.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
    drawer.page.wait_for_function("scrollY > 100")
    assert drawer.points == TRIANGLE


def test_a_point_does_not_jump_to_the_finger(drawer):
    drawer.show([[100, 100], [700, 100], [400, 600]], grid="plain")
    x, y = drawer.spot([400, 600])
    drawer.drag((x + 12, y + 9), (x + 62, y + 9))
    unit = drawer.spot([401, 600])[0] - x
    assert drawer.points[2] == [round(400 + 50 / unit), 600]


def test_while_a_point_is_dragged_all_readings_follow(drawer):
    drawer.show(BOX, show=list(READINGS))
    assert drawer.reading("name") == "rectangle"
    drawer.drag(drawer.spot([7, 2]), drawer.spot([5, 2]), let_go=False)
    assert drawer.points[1] == [5, 2]
    assert drawer.reading("name") == "trapezoid"
    assert drawer.reading("right_angles") == "2"
    assert drawer.reading("parallel") == "1"
    assert drawer.page.evaluate("kit.saves") == drawer.page.evaluate("kit.sets.length") > 0
    drawer.page.mouse.up()
    assert drawer.facts == shape_facts(drawer.shape, "square")


def test_a_point_is_tapped_and_goes_where_the_paper_is_tapped(drawer):
    drawer.show(TRIANGLE)
    drawer.click([4, 6])
    assert drawer.handle(2).get_attribute("aria-pressed") == "true"
    assert drawer.hint == "Now tap where the point goes."
    drawer.click([2, 7])
    assert drawer.points == [[1, 1], [7, 1], [2, 7]]
    drawer.click([6, 4])
    assert drawer.points == [[1, 1], [7, 1], [2, 7]], "it was put down"


@pytest.mark.screens("phone")
def test_a_point_is_tapped_with_a_finger_as_well_and_once_more_to_let_go(drawer):
    drawer.show(TRIANGLE)
    drawer.tap([4, 6], [4, 6], [2, 7])
    assert drawer.points == TRIANGLE
    drawer.tap([4, 6], [2, 7])
    assert drawer.points == [[1, 1], [7, 1], [2, 7]]


@pytest.mark.parametrize("way", ["mouse", "finger"])
@pytest.mark.screens("tablet")
def test_a_new_point_is_pulled_out_of_a_side(drawer, way):
    drawer.show(BOX)
    pull = drawer.drag if way == "mouse" else drawer.swipe
    pull(drawer.plus(0), drawer.spot([4, 0]))
    assert drawer.points == [[1, 2], [4, 0], [7, 2], [7, 6], [1, 6]]
    assert drawer.reading("name") == "pentagon"
    drawer.press("Undo")
    assert drawer.points == BOX


def test_a_tapped_side_gets_a_new_point_that_is_no_vertex_and_is_said_so(drawer):
    drawer.show(BOX)
    drawer.page.mouse.click(*drawer.plus(0))
    assert drawer.points == [[1, 2], [4, 2], [7, 2], [7, 6], [1, 6]]
    assert drawer.reading("sides") == "4"
    assert drawer.reading("vertices") == "4"
    assert drawer.handle(1).get_attribute("aria-pressed") == "true"
    assert "is-hollow" in drawer.handle(1).get_attribute("class")
    drawer.keys("Escape")
    assert drawer.hint == "One point is on a straight side: no vertex."
    drawer.press("Undo")
    assert drawer.points == BOX


def test_a_picked_point_is_removed_and_one_is_added_after_it(drawer):
    drawer.show(BOX)
    assert not drawer.allows("Add")
    assert not drawer.allows("Remove")
    drawer.click([7, 2])
    drawer.press("Remove")
    assert drawer.points == [[1, 2], [7, 6], [1, 6]]
    drawer.click([7, 6])
    drawer.press("Add")
    assert drawer.points == [[1, 2], [7, 6], [4, 6], [1, 6]]
    drawer.press("Undo")
    drawer.press("Undo")
    assert drawer.points == BOX
    assert not drawer.allows("Undo")


def test_a_triangle_without_one_point_is_open_again(drawer):
    drawer.show(TRIANGLE)
    drawer.click([7, 1])
    drawer.press("Remove")
    assert drawer.shape == {"points": [[1, 1], [4, 6]], "closed": False}


def test_all_steps_are_undone_and_reset_can_be_undone_too(drawer):
    drawer.show(TRIANGLE)
    drawer.press("Clear")
    assert drawer.shape == NOTHING
    drawer.click([1, 1], [3, 1], [3, 3], [1, 1])
    drawn = drawer.shape
    assert drawn["closed"]
    drawer.press("Reset")
    assert drawer.points == TRIANGLE
    drawer.press("Undo")
    assert drawer.shape == drawn
    for _ in range(5):
        drawer.press("Undo")
    assert drawer.shape == {"points": TRIANGLE, "closed": True}
    assert not drawer.allows("Undo")
    assert not drawer.allows("Reset")


def test_a_side_that_crosses_is_pointed_out_while_it_is_drawn(drawer):
    drawer.show(CROSSED)
    rings = drawer.page.locator(".polygon-crossing")
    assert rings.get_attribute("d") == ""
    drawer.page.mouse.move(*drawer.spot([1, 7]))
    assert "is-wrong" in drawer.page.locator(".polygon-preview").get_attribute("class")
    drawer.click([1, 7])
    assert drawer.hint == "Here two sides cross."
    drawer.says("Here two sides cross.")
    assert rings.get_attribute("d").startswith("M374 400")
    assert drawer.facts["crossing"] is True
    drawer.click([1, 1])
    assert drawer.hint == "Sides cross, so this is no polygon."
    assert drawer.reading("name") == "\u2013"
    assert drawer.page.locator(".polygon-fill").get_attribute("d") == ""


@pytest.mark.parametrize(
    ("points", "hint"),
    [
        ([[1, 1], [4, 1], [4, 1]], "There is a point already."),
        ([[1, 1], [4, 1], [1, 1]], "A closed shape needs three points."),
        ([[1, 1], [4, 1], [7, 1], [1, 1]], "All points lie on one line, with nothing inside."),
        ([[0, 0], [8, 0], [8, 6], [4, 0]], "Here a corner touches another side."),
        ([[0, 0], [8, 0], [4, 0]], "Two sides lie on each other."),
        (
            [[4, 0], [7, 8], [0, 3], [8, 3], [1, 8], [4, 0]],
            "A pentagram: five strokes that cross. It is no polygon.",
        ),
    ],
)
def test_what_makes_no_polygon_is_met_with_words(drawer, points, hint):
    drawer.show()
    # The second tap on a point would pick it; so points are put with the pen.
    drawer.focus_pen()
    for point in points:
        put_with_pen(drawer, point)
    assert drawer.hint == hint
    drawer.says(hint)


def put_with_pen(drawer, point):
    """Lead the pen to a dot by keys, and put a point there."""
    label = drawer.page.locator(".polygon-pen").get_attribute("aria-label")
    across, down = (int(float(part)) for part in label.replace(",", "").split()[1:4:2])
    right, below = point[0] - across, point[1] - down
    drawer.keys(*["ArrowRight" if right > 0 else "ArrowLeft"] * abs(right))
    drawer.keys(*["ArrowDown" if below > 0 else "ArrowUp"] * abs(below), "Enter")


def test_a_shape_is_drawn_from_beginning_to_end_by_keys_alone(drawer):
    drawer.show(show=["sides", "name"])
    drawer.keys("Tab")
    for point in ([1, 2], [7, 2], [7, 6], [1, 6]):
        put_with_pen(drawer, point)
    drawer.keys("Home", "Enter")
    assert drawer.shape == {"points": BOX, "closed": True}
    drawer.says("Name: rectangle.")
    focus = drawer.page.evaluate("document.activeElement.getAttribute('aria-label')")
    assert focus == "Point 1 of 4, 1 across, 2 down"
    drawer.keys("ArrowRight", "ArrowRight", "Shift+ArrowDown", "Shift+ArrowRight")
    assert drawer.points == [[1, 2], [7, 2], [8, 7], [1, 6]]
    drawer.says("Name: quadrilateral.")


PEN_KEYS = [
    (["ArrowRight"], [5, 4]),
    (["ArrowLeft"], [3, 4]),
    (["ArrowUp"], [4, 3]),
    (["ArrowDown"], [4, 5]),
    (["Shift+ArrowRight"], [7, 4]),
    (["Shift+ArrowUp", "Shift+ArrowUp", "Shift+ArrowUp"], [4, 0]),
]


@pytest.mark.parametrize("put", ["Enter", "Space"])
@pytest.mark.parametrize(("keys", "point"), PEN_KEYS)
def test_keys_lead_the_pen_and_put_a_point(drawer, keys, point, put):
    drawer.show()
    drawer.focus_pen()
    drawer.keys(*keys, put)
    assert drawer.points == [point]
    drawer.press("Undo")
    assert drawer.points == []


@pytest.mark.parametrize(
    ("keys", "point"), [(["ArrowRight"], [420, 400]), (["Shift+ArrowDown"], [400, 500])]
)
def test_on_plain_paper_the_pen_goes_in_small_and_larger_steps(drawer, keys, point):
    drawer.show(grid="plain")
    drawer.focus_pen()
    drawer.keys(*keys, "Enter")
    assert drawer.points == [point]


@pytest.mark.parametrize("key", ["Delete", "Backspace"])
def test_a_key_on_the_pen_takes_back_the_last_point(drawer, key):
    drawer.show(CROSSED)
    drawer.focus_pen()
    drawer.keys(key)
    assert drawer.points == [[1, 1], [7, 7]]


POINT_KEYS = [
    (["ArrowRight"], 1, BOX),
    (["ArrowDown"], 1, BOX),
    (["ArrowLeft"], 3, BOX),
    (["ArrowUp"], 3, BOX),
    (["End"], 3, BOX),
    (["End", "Home"], 0, BOX),
    (["Shift+ArrowRight"], 0, [[2, 2], *BOX[1:]]),
    (["Shift+ArrowLeft"], 0, [[0, 2], *BOX[1:]]),
    (["Shift+ArrowUp"], 0, [[1, 1], *BOX[1:]]),
    (["Shift+ArrowDown"], 0, [[1, 3], *BOX[1:]]),
    (["Delete"], 0, BOX[1:]),
    (["Backspace"], 0, BOX[1:]),
    (["Insert"], 1, [[1, 2], [4, 2], *BOX[1:]]),
    (["+"], 1, [[1, 2], [4, 2], *BOX[1:]]),
]


@pytest.mark.parametrize(("keys", "index", "points"), POINT_KEYS)
def test_keys_on_a_point(drawer, keys, index, points):
    drawer.show(BOX)
    drawer.handle(0).focus()
    drawer.keys(*keys)
    assert drawer.points == points
    where = "[...document.querySelectorAll('.polygon-point')].indexOf(document.activeElement)"
    assert drawer.page.evaluate(where) == index
    if points != BOX:
        drawer.press("Undo")
        assert drawer.points == BOX


@pytest.mark.parametrize("key", ["Enter", "Space"])
def test_a_key_picks_a_point_and_lets_it_go(drawer, key):
    drawer.show(BOX)
    drawer.handle(1).focus()
    drawer.keys(key)
    assert drawer.handle(1).get_attribute("aria-pressed") == "true"
    drawer.says("Point 2 of 4. Now tap where it goes.")
    drawer.keys(key)
    assert drawer.handle(1).get_attribute("aria-pressed") == "false"


def test_enter_on_the_first_point_closes_the_shape(drawer):
    drawer.show({"points": BOX, "closed": False})
    drawer.handle(0).focus()
    drawer.keys("Enter")
    assert drawer.shape == {"points": BOX, "closed": True}


def test_escape_brings_a_dragged_point_back_and_lets_go_of_what_is_picked(drawer):
    drawer.show(BOX)
    drawer.drag(drawer.spot([7, 2]), drawer.spot([5, 4]), let_go=False)
    assert drawer.points != BOX
    drawer.keys("Escape")
    assert drawer.points == BOX
    drawer.page.mouse.move(*drawer.spot([0, 0]))
    drawer.page.mouse.up()
    assert drawer.points == BOX
    drawer.click([7, 2])
    drawer.keys("Escape")
    assert drawer.handle(1).get_attribute("aria-pressed") == "false"


@pytest.mark.parametrize("key", ["PageUp", "PageDown", "F5", ".", "b", "Control+ArrowRight"])
@pytest.mark.parametrize("where", [".polygon-point", ".polygon-pen"])
def test_keys_of_the_board_and_the_browser_are_left_to_them(drawer, key, where):
    drawer.show(CROSSED)
    drawer.page.evaluate("""() => document.addEventListener("keydown", (event) => {
      window.heard = [event.key, event.defaultPrevented];
      event.preventDefault();
    })""")
    drawer.page.locator(where).first.focus()
    drawer.keys(key)
    assert drawer.page.evaluate("heard") == [key.removeprefix("Control+"), False]
    assert drawer.shape == CROSSED


def test_everything_is_reached_with_the_tab_key(drawer):
    drawer.show(CROSSED, panel=True, guide="square", follow=True)
    reached = []
    for _ in range(40):
        drawer.keys("Tab")
        reached.append(
            drawer.page.evaluate(
                "document.activeElement.ariaLabel ?? document.activeElement.innerText"
            )
        )
    assert reached[:8] == [
        "Pen, 4 across, 4 down",
        "Point 1 of 3, 1 across, 1 down",
        "Next stroke",
        "Undo",
        "Reset",
        "Clear",
        "Add",
        "Remove",
    ]
    assert {"Show", "Shapes", "Cut", "Paper", "Mirror\nlines"} <= {
        each.replace("Mirror lines", "Mirror\nlines") for each in reached
    }


def test_a_guide_is_drawn_stroke_by_stroke_with_a_sentence_for_each(drawer):
    drawer.show(guide="triangle", follow=True)
    guide = PolygonDrawer("triangle").shape
    assert drawer.page.locator(".polygon-guide").get_attribute("d").startswith("M400 100L")
    for stroke in strokes(guide, "square"):
        assert drawer.allows("Next stroke")
        drawer.press("Next stroke")
        assert drawer.shape == stroke.shape
        assert drawer.hint == stroke.say
        drawer.says(stroke.say)
    assert not drawer.allows("Next stroke")
    assert drawer.facts["traced"] is True
    for _ in strokes(guide, "square"):
        drawer.press("Undo")
    assert drawer.shape == NOTHING


def test_a_stroke_goes_on_where_the_hand_drew_the_one_before(drawer):
    drawer.show(guide="triangle", follow=True)
    drawer.click([4, 1], [7, 7])
    drawer.press("Next stroke")
    assert drawer.points == [[4, 1], [7, 7], [1, 7]]


def test_a_traced_shape_is_known(drawer):
    drawer.show(guide="triangle")
    drawer.click([1, 7], [4, 1], [7, 7], [1, 7])
    assert drawer.facts["traced"] is True
    assert drawer.hint == "Traced: it is the guide."
    assert drawer.page.locator(".polygon-stroke").is_hidden()


@pytest.mark.parametrize("shape", ["circle", "half circle", "quarter circle", "star", "pentagram"])
@pytest.mark.parametrize("grid", ["square", "triangle", "plain"])
def test_any_shape_is_followed_to_its_end(drawer, shape, grid):
    drawer.show(guide=shape, follow=True, grid=grid)
    for stroke in strokes(PolygonDrawer(shape, grid=grid).shape, grid):
        drawer.press("Next stroke")
        assert drawer.hint == stroke.say
    assert drawer.facts == shape_facts(drawer.shape, grid, guide=drawer.shape)
    assert drawer.facts["name"] == shape


def test_corners_of_a_curve_are_told_apart_from_vertices(drawer):
    drawer.show("half circle")
    assert drawer.page.locator("[data-reading='vertices'] span").inner_text() == "Corners"
    assert drawer.reading("vertices") == "2"
    assert drawer.page.locator("[data-reading='sides'] span").inner_text() == "Straight sides"
    assert drawer.reading("sides") == "1"
    assert drawer.hint.startswith("Half circle")


def test_a_circle_has_no_end_of_mirror_lines(drawer):
    drawer.show("circle", show=["mirror_lines"])
    assert drawer.reading("mirror_lines") == "no end"
    assert drawer.facts["mirror_lines"] is None


@pytest.mark.screens("board", "phone")
def test_a_rectangle_is_cut_from_edge_to_edge(drawer, screen):
    drawer.show(BOX, tool="cut", show=["shares"])
    go = drawer.tap if screen.touch else drawer.click
    assert drawer.hint == "Tap an edge where a cut begins."
    go([3, 3])
    assert drawer.hint == "A cut begins on an edge."
    go([4, 2])
    assert drawer.hint == "Now tap where the cut goes."
    go([4, 6])
    assert drawer.shape["cuts"] == [[[4, 2], [4, 6]]]
    assert drawer.hint == "2 equal shares: halves."
    assert drawer.reading("shares") == "2 equal"
    go([1, 2], [4, 6])
    assert drawer.reading("shares") == "3 unequal"
    go([4, 2], [7, 6])
    assert drawer.hint == "4 equal shares: fourths."
    drawer.press("Remove")
    assert len(drawer.shape["cuts"]) == 2
    drawer.press("Undo")
    assert len(drawer.shape["cuts"]) == 3
    drawer.press("Clear")
    assert drawer.shape == {"points": BOX, "closed": True}


def test_a_cut_may_bend_inside_and_is_forgotten_by_escape_or_undo(drawer):
    drawer.show(BOX, tool="cut", show=["shares"])
    drawer.click([5, 2], [5, 5])
    assert drawer.hint == "Go on, to an edge."
    drawer.click([1, 5])
    assert drawer.shape["cuts"] == [[[5, 2], [5, 5], [1, 5]]]
    assert drawer.hint == "2 equal shares: halves. Equal, but not alike in shape."
    drawer.click([7, 2])
    drawer.keys("Escape")
    drawer.click([7, 6])
    assert len(drawer.shape["cuts"]) == 1, "a new cut has only begun"
    drawer.press("Undo")
    assert len(drawer.shape["cuts"]) == 1, "and is forgotten"
    drawer.press("Undo")
    assert "cuts" not in drawer.shape


def test_a_cut_that_does_not_fit_is_answered_with_words(drawer):
    drawer.show([[0, 0], [8, 0], [8, 8], [5, 8], [5, 3], [3, 3], [3, 8], [0, 8]], tool="cut")
    drawer.click([3, 5], [5, 5])
    assert drawer.hint == "A cut stays inside the shape."
    drawer.keys("Escape")
    drawer.click([0, 0], [8, 0])
    assert drawer.hint == "A cut goes through the inside."


def test_a_circle_is_cut_by_keys_alone(drawer):
    drawer.show("circle", tool="cut", show=["shares"])
    drawer.focus_pen()
    drawer.keys("Enter")
    assert drawer.hint == "A cut begins on an edge."
    drawer.keys("ArrowUp", "Enter", "ArrowDown", "Enter")
    assert drawer.hint == "Go on, to an edge."
    drawer.keys("ArrowDown", "Enter")
    assert drawer.shape["cuts"] == [[[0, 1], [0, 0], [12, 1]]]
    assert drawer.reading("shares") == "2 equal"
    drawer.says("2 equal shares: halves.")
    drawer.keys("Backspace")
    assert "cuts" not in drawer.shape


def test_shares_are_cut_in_one_way_after_the_other(drawer):
    drawer.show(BOX, panel=True)
    drawer.press("Cut")
    seen = []
    for _ in range(5):
        drawer.press("Cut into 4 equal shares")
        seen.append(drawer.shape["cuts"])
        assert drawer.facts["shares"] == 4
        assert drawer.facts["equal_shares"] is True
    assert seen[0] == seen[4]
    assert len({str(cuts) for cuts in seen}) == 4
    drawer.page.evaluate("kit.outside('shape', {points: [[0, 0], [4, 0], [0, 3]], closed: true})")
    drawer.press("Cut into 2 equal shares")
    assert drawer.hint == "Draw a rectangle or a circle for that."


def test_moving_a_point_takes_the_cuts_away_in_the_same_step(drawer):
    cut = {"points": BOX, "closed": True, "cuts": [[[4, 2], [4, 6]]]}
    drawer.show(cut)
    drawer.drag(drawer.spot([7, 2]), drawer.spot([8, 2]))
    assert "cuts" not in drawer.shape
    drawer.press("Undo")
    assert drawer.shape == cut


def test_a_shape_from_outside_is_shown_and_is_a_new_beginning(drawer):
    drawer.show(TRIANGLE)
    drawer.drag(drawer.spot([4, 6]), drawer.spot([4, 7]))
    outside = {"points": BOX, "closed": True}
    drawer.page.evaluate("shape => kit.outside('shape', shape)", outside)
    assert drawer.reading("name") == "rectangle"
    assert not drawer.allows("Undo")
    drawer.drag(drawer.spot([7, 6]), drawer.spot([8, 8]))
    drawer.press("Reset")
    assert drawer.shape == outside


def test_a_shape_from_outside_ends_a_drag(drawer):
    drawer.show(TRIANGLE)
    drawer.drag(drawer.spot([4, 6]), drawer.spot([4, 7]), let_go=False)
    drawer.page.evaluate("shape => kit.outside('shape', shape)", {"points": BOX, "closed": True})
    drawer.page.mouse.move(*drawer.spot([0, 0]))
    drawer.page.mouse.up()
    assert drawer.points == BOX


def test_every_change_is_seen_before_it_is_told(drawer):
    drawer.show(TRIANGLE)
    drawer.page.evaluate("""() => {
      window.seen = [];
      document.querySelector(".kit-polygon").addEventListener("kit:change", (event) => {
        const sides = document.querySelector("[data-reading=sides] strong").textContent;
        window.seen.push([event.currentTarget.facts().points, Number(sides), kit.saves]);
      });
    }""")
    drawer.press("Clear")
    drawer.click([1, 1], [3, 1])
    assert drawer.page.evaluate("seen") == [[0, 0, 1], [1, 0, 2], [2, 1, 3]]


READ = {
    "sides": ".polygon-reading[data-reading=sides]",
    "vertices": ".polygon-reading[data-reading=vertices]",
    "name": ".polygon-reading[data-reading=name]",
    "also": ".polygon-reading[data-reading=also]",
    "right_angles": ".polygon-right",
    "equal_sides": ".polygon-equal",
    "parallel": ".polygon-parallel",
    "mirror_lines": ".polygon-mirror",
    "regular": ".polygon-reading[data-reading=regular]",
    "convex": ".polygon-reading[data-reading=convex]",
    "shares": ".polygon-reading[data-reading=shares]",
}


@pytest.mark.parametrize("name", READ)
def test_each_reading_and_its_marks_are_shown_alone_or_hidden_alone(drawer, name):
    def visible():
        return {
            part
            for part, where in READ.items()
            if drawer.page.locator(where).is_visible()
            and drawer.page.locator(where).get_attribute("d") != ""
        }

    drawer.show("square", show=[])
    assert visible() == set()
    drawer.page.evaluate("name => kit.outside('show', [name])", name)
    assert visible() == {name}
    assert drawer.page.locator(".polygon-reading:visible").count() == 1


@pytest.mark.parametrize(("count", "many"), [("", 0), ("sides", 3), ("vertices", 3)])
def test_sides_or_vertices_are_numbered(drawer, count, many):
    drawer.show(TRIANGLE, count=count)
    texts = drawer.page.locator(".polygon-numbers text").all_text_contents()
    assert texts == [str(at) for at in range(1, many + 1)]


def test_what_is_hidden_is_not_said(drawer):
    drawer.show(BOX, show=[], hints=False)
    drawer.handle(1).focus()
    drawer.keys("Shift+ArrowRight")
    drawer.says("8 across, 2 down")
    said = drawer.page.locator("#kit-live").inner_text()
    assert said == "8 across, 2 down"
    assert "trapezoid" not in drawer.page.locator("body").inner_text()


def test_a_paper_that_cannot_be_drawn_on_is_a_picture_with_words(drawer):
    drawer.show(BOX, movable=False)
    page = drawer.page
    assert page.get_by_role("button").count() == 0
    assert page.locator("[tabindex]:visible").count() == 0
    assert page.locator(".kit-grip circle:not(.kit-grip-ring):visible").count() == 0
    assert page.get_by_role("img").get_attribute("aria-label") == (
        "A closed shape. 6 right; 4 down; 6 left; 4 up;"
    )
    drawer.drag(drawer.spot([7, 2]), drawer.spot([5, 4]))
    drawer.click([4, 4])
    assert drawer.points == BOX


def test_points_of_a_picture_can_be_left_out(drawer):
    drawer.show(BOX, movable=False, show_points=False)
    assert drawer.page.locator(".polygon-point:visible").count() == 0
    drawer.show(BOX, movable=False)
    assert drawer.page.locator(".polygon-point:visible").count() == 4


@pytest.mark.parametrize(
    ("group", "switch", "trait", "value"),
    [
        ("Show", "Convex", "show", [*PolygonDrawer().show, "convex"]),
        ("Show", "Sides", "show", ["vertices", "name", "right_angles", "equal_sides"]),
        ("Show", "Count sides", "count", "sides"),
        ("Cut", "Cut", "tool", "cut"),
        ("Cut", "Shares", "show", [*PolygonDrawer().show, "shares"]),
        ("Paper", "Hints", "hints", False),
    ],
)
def test_a_switch_shows_and_hides(drawer, group, switch, trait, value):
    drawer.show(BOX, panel=True)
    before = drawer.page.evaluate("name => kit.get(name)", trait)
    tab = drawer.page.get_by_role("button", name=group, exact=True)
    if tab.get_attribute("aria-expanded") == "false":
        tab.click()
    tile = drawer.page.get_by_role("switch", name=switch, exact=True)
    checked = tile.get_attribute("aria-checked")
    tile.click()
    now = drawer.page.evaluate("name => kit.get(name)", trait)
    assert sorted(now) == sorted(value) if isinstance(value, list) else now == value
    assert tile.get_attribute("aria-checked") != checked
    tile.click()
    again = drawer.page.evaluate("name => kit.get(name)", trait)
    assert sorted(again) == sorted(before) if isinstance(before, list) else again == before


def test_a_trapezoid_is_defined_in_the_panel(drawer):
    drawer.show(BOX, panel=True, show=["also"], vocabulary="uk")
    drawer.press("Paper")
    assert drawer.page.get_by_text("A trapezium has").is_visible()
    assert "trapezium" in drawer.reading("also")
    drawer.press("1 pair pairs of parallel sides")
    assert drawer.page.evaluate("kit.get('trapezoid')") == "exclusive"
    assert "trapezium" not in drawer.reading("also")
    assert (
        "By the other definition this is a trapezium, too"
        in drawer.page.locator(".polygon-note").inner_text()
    )


@pytest.mark.parametrize("paper", ["Triangles", "Plain"])
def test_another_paper_takes_shape_and_guide_along(drawer, paper):
    drawer.show(TRIANGLE, guide="square", panel=True)
    drawer.press("Paper")
    drawer.press(paper)
    grid = drawer.page.evaluate("kit.get('grid')")
    check_shape(drawer.shape, grid)
    check_shape(drawer.page.evaluate("kit.get('guide')"), grid)
    drawer.grid = grid
    for point, old in zip(drawer.points, TRIANGLE, strict=True):
        assert math.dist(place(tuple(point), grid), place(tuple(old), "square")) < 71
    assert drawer.facts["closed"] is True


def test_a_guide_is_chosen_by_its_picture_and_taken_away_again(drawer):
    drawer.show(panel=True)
    drawer.press("Shapes")
    drawer.press("Guide: star")
    assert drawer.page.evaluate("kit.get('guide')") == PolygonDrawer("star").shape
    assert drawer.page.get_by_role("button", name="Next stroke").is_visible()
    drawer.press("Guide: star")
    assert drawer.page.evaluate("kit.get('guide')") is None
    assert drawer.page.locator(".polygon-stroke").is_hidden()


def test_a_turned_shape_keeps_its_name(drawer):
    drawer.show(BOX, panel=True)
    drawer.press("Shapes")
    drawer.press("Turn")
    assert drawer.points == [[6, 1], [6, 7], [2, 7], [2, 1]]
    assert drawer.reading("name") == "rectangle"
    drawer.press("Flip")
    assert drawer.points == [[2, 1], [2, 7], [6, 7], [6, 1]]
    drawer.press("Undo")
    drawer.press("Undo")
    assert drawer.points == BOX


def test_movement_needs_no_animation(drawer):
    drawer.show(BOX)
    still = drawer.page.evaluate("""() => [...document.querySelectorAll(".kit-polygon *")]
      .every((each) => ["0s", ""].includes(getComputedStyle(each).transitionDuration)
        && getComputedStyle(each).animationName === "none")""")
    assert still


EVERYTHING = {"show": list(READINGS), "panel": True, "guide": "star", "follow": True}


@pytest.mark.screens("board", "tablet", "phone")
@pytest.mark.parametrize("traits", [{}, EVERYTHING], ids=["plain", "everything"])
@pytest.mark.parametrize("group", ["", "Show", "Shapes", "Cut", "Paper"])
def test_whatever_is_pressed_is_large_enough_and_nothing_is_cut_off(drawer, traits, group):
    if group and not traits:
        return
    drawer.show(BOX, **traits)
    tab = drawer.page.get_by_role("button", name=group, exact=True)
    if group and tab.get_attribute("aria-expanded") == "false":
        tab.click()
    found = drawer.page.evaluate("""() => {
      const shown = [...document.querySelectorAll("button, [role=button], [role=switch]")]
        .filter((each) => each.checkVisibility());
      return {
        count: shown.length,
        small: shown.map((each) => [each.textContent || each.ariaLabel, each.offsetWidth,
          each.offsetHeight]).filter(([, width, height]) => width < 44 || height < 44),
        spilt: shown.filter((each) => each.scrollWidth > each.clientWidth + 1)
          .map((each) => each.textContent),
        wide: document.documentElement.scrollWidth > innerWidth,
      };
    }""")
    assert found.pop("count") >= 9
    assert found == {"small": [], "spilt": [], "wide": False}


@pytest.mark.screens("board", "tablet", "phone")
@pytest.mark.parametrize("traits", [{}, {"panel": True}], ids=["plain", "panel"])
def test_nothing_lies_over_another_and_the_screen_is_not_scrolled(drawer, screen, traits):
    drawer.show(BOX, **traits)
    found = drawer.page.evaluate("""() => {
      const parts = [...document.querySelectorAll(".polygon-paper, .polygon-hint, " +
        ".polygon-reading, .polygon-tools, .polygon-tabs")]
        .filter((each) => each.checkVisibility())
        .map((each) => [each.className, each.getBoundingClientRect()]);
      const apart = (one, other) => one.right <= other.left + 0.5 || other.right <= one.left + 0.5
        || one.bottom <= other.top + 0.5 || other.bottom <= one.top + 0.5;
      return {
        count: parts.length,
        over: parts.flatMap(([name, box], index) => parts.slice(index + 1)
          .filter(([, other]) => !apart(box, other)).map(([other]) => [name, other])),
        outside: parts.filter(([, box]) => box.left < 0 || box.top < 0
          || box.right > innerWidth + 0.5 || box.bottom > innerHeight + 0.5)
          .map(([name]) => name),
        scrolls: document.documentElement.scrollHeight > innerHeight,
      };
    }""")
    assert found.pop("count") >= 8
    assert found == {"over": [], "outside": [], "scrolls": False}
    paper = drawer.page.locator(".polygon-sheet").bounding_box()
    assert paper["width"] > 0.8 * min(screen.width, screen.height)


@pytest.mark.screens("board", "tablet", "phone")
def test_text_is_large_enough_for_children(drawer):
    drawer.show(BOX, **{**EVERYTHING, "count": "vertices"})
    sizes = drawer.page.evaluate("""() => {
      const scale = document.querySelector(".polygon-paper > svg").getScreenCTM().a;
      return [...document.querySelectorAll(".kit-polygon *")]
        .filter((each) => each.checkVisibility() && [...each.childNodes]
          .some((child) => child.nodeType === 3 && child.data.trim()))
        .map((each) => [each.textContent, parseFloat(getComputedStyle(each).fontSize)
          * (each.tagName === "text" ? scale : 1)]);
    }""")
    assert len(sizes) > 24
    assert [text for text in sizes if text[1] < 17.5] == []


def test_given_no_height_it_takes_no_more_than_the_screen(drawer, screen):
    drawer.show(BOX, panel=True, room="")
    assert drawer.page.evaluate("document.documentElement.scrollHeight") <= screen.height
    assert drawer.page.locator(".polygon-sheet").bounding_box()["height"] > 0.85 * screen.height


def test_the_font_of_the_kit_is_used_in_one_weight(drawer):
    drawer.show(BOX, **EVERYTHING)
    styles = drawer.page.evaluate("""() => [...document.querySelectorAll(".kit-polygon *")]
      .map((each) => getComputedStyle(each))
      .map(({ fontFamily, fontWeight }) => fontFamily.split(",")[0] + " " + fontWeight)""")
    assert set(styles) == {'"Kit Reading" 400'}


def test_a_drag_is_painted_in_its_frame_with_24_vertices_on_a_slow_processor(drawer):
    ring = [
        [
            round(400 + 330 * math.cos(math.tau * at / 24)),
            round(400 + 330 * math.sin(math.tau * at / 24)),
        ]
        for at in range(24)
    ]
    drawer.show(ring, grid="plain", show=list(READINGS))
    drawer.page.context.new_cdp_session(drawer.page).send(
        "Emulation.setCPUThrottlingRate", {"rate": 4}
    )
    drawer.page.evaluate("""() => {
      const point = document.querySelector(".polygon-point");
      const drawing = document.querySelector(".polygon-paper > svg");
      window.frames_seen = [];
      document.addEventListener("pointermove", () => requestAnimationFrame(() => {
        const { x, y, width, height } = point.getBoundingClientRect();
        const shown = new DOMPoint(x + width / 2, y + height / 2)
          .matrixTransform(drawing.getScreenCTM().inverse());
        const [first] = kit.get("shape").points;
        window.frames_seen.push(Math.hypot(shown.x - first[0], shown.y - first[1]));
      }), true);
    }""")
    start, end = drawer.spot(ring[0]), drawer.spot([760, 500])
    drawer.page.mouse.move(*start)
    drawer.page.mouse.down()
    for step in range(1, 25):
        drawer.page.mouse.move(*(a + (b - a) * step / 24 for a, b in zip(start, end, strict=True)))
    drawer.page.mouse.up()
    seen = drawer.page.evaluate("frames_seen")
    assert len(seen) >= 10
    assert max(seen) < 1
    assert math.dist(drawer.points[0], [760, 500]) < 2


def test_two_fingers_move_two_points_in_one_step(drawer):
    drawer.show([[1, 1], [7, 1], [7, 7], [1, 7]])
    fingers = Fingers(drawer.page)
    fingers.down(1, drawer.spot([1, 1]))
    fingers.down(2, drawer.spot([7, 7]))
    fingers.move(1, drawer.spot([2, 3]))
    fingers.move(2, drawer.spot([6, 5]))
    fingers.move(1, drawer.spot([2, 2]))
    fingers.up(1)
    fingers.up(2)
    assert drawer.points == [[2, 2], [7, 1], [6, 5], [1, 7]]
    drawer.press("Undo")
    assert drawer.points == [[1, 1], [7, 1], [7, 7], [1, 7]]


def test_a_view_that_has_ended_is_silent(drawer):
    drawer.show(BOX)
    drawer.page.evaluate("kit.end.abort()")
    drawer.handle(0).focus()
    drawer.keys("Shift+ArrowRight")
    drawer.drag(drawer.spot([7, 2]), drawer.spot([5, 4]))
    drawer.press("Clear")
    assert drawer.points == BOX
    drawer.page.evaluate("shape => kit.outside('shape', shape)", NOTHING)
    assert drawer.reading("name") == "rectangle"
