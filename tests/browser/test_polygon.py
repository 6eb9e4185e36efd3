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


class Desk:
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
def desk(quiet_page):
    return Desk(quiet_page)


def test_points_are_clicked_and_the_first_one_closes_the_shape(desk):
    desk.show()
    assert desk.hint == "Tap to put the first point."
    desk.click([1, 1], [7, 1])
    assert desk.reading("sides") == "1"
    desk.click([7, 5], [1, 5])
    assert desk.shape == {"points": [[1, 1], [7, 1], [7, 5], [1, 5]], "closed": False}
    assert desk.hint == "Tap the first point to close."
    assert desk.reading("name") == "\u2013"
    desk.click([1, 1])
    assert desk.shape == {"points": [[1, 1], [7, 1], [7, 5], [1, 5]], "closed": True}
    assert [desk.reading(name) for name in ("sides", "vertices", "name", "right_angles")] == [
        "4",
        "4",
        "rectangle",
        "4",
    ]
    desk.click([4, 4])
    assert desk.hint == "The shape is closed. Its points can be moved."


@pytest.mark.screens("tablet", "phone")
@pytest.mark.parametrize("grid", ["square", "triangle"])
def test_points_are_tapped_with_a_finger(desk, grid):
    desk.show(grid=grid)
    points = [[2, 1], [5, 1], [3, 5]]
    desk.tap(*points, points[0])
    assert desk.shape == {"points": points, "closed": True}
    assert desk.page.evaluate("scrollY") == 0


def test_on_plain_paper_a_point_is_where_it_was_clicked(desk):
    desk.show(grid="plain")
    desk.click([123, 456], [700, 456], [400, 100])
    off = [
        math.dist(*pair)
        for pair in zip(desk.points, [[123, 456], [700, 456], [400, 100]], strict=True)
    ]
    assert max(off) <= 2


def test_a_click_between_dots_goes_to_the_nearest(desk):
    desk.show()
    x, y = desk.spot([3, 4])
    desk.page.mouse.click(x + 20, y - 25)
    assert desk.points == [[3, 4]]


@pytest.mark.parametrize(
    ("shape", "index", "to", "after"),
    [
        (TRIANGLE, 2, [6, 7], [[1, 1], [7, 1], [6, 7]]),
        (TRIANGLE, 0, [0, 0], [[0, 0], [7, 1], [4, 6]]),
        (CIRCLE, 1, [6, 4], [[4, 4], [6, 4]]),
        (CIRCLE, 0, [5, 4], [[5, 4], [5, 1]]),
    ],
)
def test_a_point_is_dragged_by_mouse(desk, shape, index, to, after):
    desk.show(shape)
    desk.drag(desk.spot(desk.points[index]), desk.spot(to))
    assert desk.points == after
    assert desk.allows("Undo")
    desk.press("Undo")
    assert desk.points == check_shape(shape, "square")["points"]
    assert not desk.allows("Undo")


@pytest.mark.screens("tablet", "phone")
@pytest.mark.parametrize("grid", ["square", "triangle", "plain"])
def test_a_point_is_dragged_by_a_finger(desk, grid):
    desk.show("triangle", grid=grid)
    start = desk.points[1]
    to = [start[0] - (200 if grid == "plain" else 2), start[1]]
    desk.swipe(desk.spot(start), desk.spot(to))
    assert math.dist(desk.points[1], to) < (3 if grid == "plain" else 0.1)
    assert desk.points[0] == PolygonDrawer("triangle", grid=grid).points[0]
    assert desk.page.evaluate("scrollY") == 0


@pytest.mark.screens("phone")
def test_a_finger_beside_the_points_scrolls_the_page(desk):
    desk.show(TRIANGLE, room="height: 700px; margin-bottom: 1500px")
    x, y = desk.spot([1, 6])
    session = desk.page.context.new_cdp_session(desk.page)
    for kind, down in (("touchStart", 0), *(("touchMove", step) for step in range(-10, -201, -10))):
        points = [{"x": x, "y": y + down}]
        session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})
    session.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
    desk.page.wait_for_function("scrollY > 100")
    assert desk.points == TRIANGLE


def test_a_point_does_not_jump_to_the_finger(desk):
    desk.show([[100, 100], [700, 100], [400, 600]], grid="plain")
    x, y = desk.spot([400, 600])
    desk.drag((x + 12, y + 9), (x + 62, y + 9))
    unit = desk.spot([401, 600])[0] - x
    assert desk.points[2] == [round(400 + 50 / unit), 600]


def test_while_a_point_is_dragged_all_readings_follow(desk):
    desk.show(BOX, show=list(READINGS))
    assert desk.reading("name") == "rectangle"
    desk.drag(desk.spot([7, 2]), desk.spot([5, 2]), let_go=False)
    assert desk.points[1] == [5, 2]
    assert desk.reading("name") == "trapezoid"
    assert desk.reading("right_angles") == "2"
    assert desk.reading("parallel") == "1"
    assert desk.page.evaluate("kit.saves") == desk.page.evaluate("kit.sets.length") > 0
    desk.page.mouse.up()
    assert desk.facts == shape_facts(desk.shape, "square")


def test_a_point_is_tapped_and_goes_where_the_paper_is_tapped(desk):
    desk.show(TRIANGLE)
    desk.click([4, 6])
    assert desk.handle(2).get_attribute("aria-pressed") == "true"
    assert desk.hint == "Now tap where the point goes."
    desk.click([2, 7])
    assert desk.points == [[1, 1], [7, 1], [2, 7]]
    desk.click([6, 4])
    assert desk.points == [[1, 1], [7, 1], [2, 7]], "it was put down"


@pytest.mark.screens("phone")
def test_a_point_is_tapped_with_a_finger_as_well_and_once_more_to_let_go(desk):
    desk.show(TRIANGLE)
    desk.tap([4, 6], [4, 6], [2, 7])
    assert desk.points == TRIANGLE
    desk.tap([4, 6], [2, 7])
    assert desk.points == [[1, 1], [7, 1], [2, 7]]


@pytest.mark.parametrize("way", ["mouse", "finger"])
@pytest.mark.screens("tablet")
def test_a_new_point_is_pulled_out_of_a_side(desk, way):
    desk.show(BOX)
    pull = desk.drag if way == "mouse" else desk.swipe
    pull(desk.plus(0), desk.spot([4, 0]))
    assert desk.points == [[1, 2], [4, 0], [7, 2], [7, 6], [1, 6]]
    assert desk.reading("name") == "pentagon"
    desk.press("Undo")
    assert desk.points == BOX


def test_a_tapped_side_gets_a_new_point_that_is_no_vertex_and_is_said_so(desk):
    desk.show(BOX)
    desk.page.mouse.click(*desk.plus(0))
    assert desk.points == [[1, 2], [4, 2], [7, 2], [7, 6], [1, 6]]
    assert desk.reading("sides") == "4"
    assert desk.reading("vertices") == "4"
    assert desk.handle(1).get_attribute("aria-pressed") == "true"
    assert "is-hollow" in desk.handle(1).get_attribute("class")
    desk.keys("Escape")
    assert desk.hint == "One point is on a straight side: no vertex."
    desk.press("Undo")
    assert desk.points == BOX


def test_a_picked_point_is_removed_and_one_is_added_after_it(desk):
    desk.show(BOX)
    assert not desk.allows("Add")
    assert not desk.allows("Remove")
    desk.click([7, 2])
    desk.press("Remove")
    assert desk.points == [[1, 2], [7, 6], [1, 6]]
    desk.click([7, 6])
    desk.press("Add")
    assert desk.points == [[1, 2], [7, 6], [4, 6], [1, 6]]
    desk.press("Undo")
    desk.press("Undo")
    assert desk.points == BOX
    assert not desk.allows("Undo")


def test_a_triangle_without_one_point_is_open_again(desk):
    desk.show(TRIANGLE)
    desk.click([7, 1])
    desk.press("Remove")
    assert desk.shape == {"points": [[1, 1], [4, 6]], "closed": False}


def test_all_steps_are_undone_and_reset_can_be_undone_too(desk):
    desk.show(TRIANGLE)
    desk.press("Clear")
    assert desk.shape == NOTHING
    desk.click([1, 1], [3, 1], [3, 3], [1, 1])
    drawn = desk.shape
    assert drawn["closed"]
    desk.press("Reset")
    assert desk.points == TRIANGLE
    desk.press("Undo")
    assert desk.shape == drawn
    for _ in range(5):
        desk.press("Undo")
    assert desk.shape == {"points": TRIANGLE, "closed": True}
    assert not desk.allows("Undo")
    assert not desk.allows("Reset")


def test_a_side_that_crosses_is_pointed_out_while_it_is_drawn(desk):
    desk.show(CROSSED)
    rings = desk.page.locator(".polygon-crossing")
    assert rings.get_attribute("d") == ""
    desk.page.mouse.move(*desk.spot([1, 7]))
    assert "is-wrong" in desk.page.locator(".polygon-preview").get_attribute("class")
    desk.click([1, 7])
    assert desk.hint == "Here two sides cross."
    desk.says("Here two sides cross.")
    assert rings.get_attribute("d").startswith("M374 400")
    assert desk.facts["crossing"] is True
    desk.click([1, 1])
    assert desk.hint == "Sides cross, so this is no polygon."
    assert desk.reading("name") == "\u2013"
    assert desk.page.locator(".polygon-fill").get_attribute("d") == ""


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
def test_what_makes_no_polygon_is_met_with_words(desk, points, hint):
    desk.show()
    # The second tap on a point would pick it; so points are put with the pen.
    desk.focus_pen()
    for point in points:
        put_with_pen(desk, point)
    assert desk.hint == hint
    desk.says(hint)


def put_with_pen(desk, point):
    """Lead the pen to a dot by keys, and put a point there."""
    label = desk.page.locator(".polygon-pen").get_attribute("aria-label")
    across, down = (int(float(part)) for part in label.replace(",", "").split()[1:4:2])
    right, below = point[0] - across, point[1] - down
    desk.keys(*["ArrowRight" if right > 0 else "ArrowLeft"] * abs(right))
    desk.keys(*["ArrowDown" if below > 0 else "ArrowUp"] * abs(below), "Enter")


def test_a_shape_is_drawn_from_beginning_to_end_by_keys_alone(desk):
    desk.show(show=["sides", "name"])
    desk.keys("Tab")
    for point in ([1, 2], [7, 2], [7, 6], [1, 6]):
        put_with_pen(desk, point)
    desk.keys("Home", "Enter")
    assert desk.shape == {"points": BOX, "closed": True}
    desk.says("Name: rectangle.")
    focus = desk.page.evaluate("document.activeElement.getAttribute('aria-label')")
    assert focus == "Point 1 of 4, 1 across, 2 down"
    desk.keys("ArrowRight", "ArrowRight", "Shift+ArrowDown", "Shift+ArrowRight")
    assert desk.points == [[1, 2], [7, 2], [8, 7], [1, 6]]
    desk.says("Name: quadrilateral.")


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
def test_keys_lead_the_pen_and_put_a_point(desk, keys, point, put):
    desk.show()
    desk.focus_pen()
    desk.keys(*keys, put)
    assert desk.points == [point]
    desk.press("Undo")
    assert desk.points == []


@pytest.mark.parametrize(
    ("keys", "point"), [(["ArrowRight"], [420, 400]), (["Shift+ArrowDown"], [400, 500])]
)
def test_on_plain_paper_the_pen_goes_in_small_and_larger_steps(desk, keys, point):
    desk.show(grid="plain")
    desk.focus_pen()
    desk.keys(*keys, "Enter")
    assert desk.points == [point]


@pytest.mark.parametrize("key", ["Delete", "Backspace"])
def test_a_key_on_the_pen_takes_back_the_last_point(desk, key):
    desk.show(CROSSED)
    desk.focus_pen()
    desk.keys(key)
    assert desk.points == [[1, 1], [7, 7]]


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
def test_keys_on_a_point(desk, keys, index, points):
    desk.show(BOX)
    desk.handle(0).focus()
    desk.keys(*keys)
    assert desk.points == points
    where = "[...document.querySelectorAll('.polygon-point')].indexOf(document.activeElement)"
    assert desk.page.evaluate(where) == index
    if points != BOX:
        desk.press("Undo")
        assert desk.points == BOX


@pytest.mark.parametrize("key", ["Enter", "Space"])
def test_a_key_picks_a_point_and_lets_it_go(desk, key):
    desk.show(BOX)
    desk.handle(1).focus()
    desk.keys(key)
    assert desk.handle(1).get_attribute("aria-pressed") == "true"
    desk.says("Point 2 of 4. Now tap where it goes.")
    desk.keys(key)
    assert desk.handle(1).get_attribute("aria-pressed") == "false"


def test_enter_on_the_first_point_closes_the_shape(desk):
    desk.show({"points": BOX, "closed": False})
    desk.handle(0).focus()
    desk.keys("Enter")
    assert desk.shape == {"points": BOX, "closed": True}


def test_escape_brings_a_dragged_point_back_and_lets_go_of_what_is_picked(desk):
    desk.show(BOX)
    desk.drag(desk.spot([7, 2]), desk.spot([5, 4]), let_go=False)
    assert desk.points != BOX
    desk.keys("Escape")
    assert desk.points == BOX
    desk.page.mouse.move(*desk.spot([0, 0]))
    desk.page.mouse.up()
    assert desk.points == BOX
    desk.click([7, 2])
    desk.keys("Escape")
    assert desk.handle(1).get_attribute("aria-pressed") == "false"


@pytest.mark.parametrize("key", ["PageUp", "PageDown", "F5", ".", "b", "Control+ArrowRight"])
@pytest.mark.parametrize("where", [".polygon-point", ".polygon-pen"])
def test_keys_of_the_board_and_the_browser_are_left_to_them(desk, key, where):
    desk.show(CROSSED)
    desk.page.evaluate("""() => document.addEventListener("keydown", (event) => {
      window.heard = [event.key, event.defaultPrevented];
      event.preventDefault();
    })""")
    desk.page.locator(where).first.focus()
    desk.keys(key)
    assert desk.page.evaluate("heard") == [key.removeprefix("Control+"), False]
    assert desk.shape == CROSSED


def test_everything_is_reached_with_the_tab_key(desk):
    desk.show(CROSSED, panel=True, guide="square", follow=True)
    reached = []
    for _ in range(40):
        desk.keys("Tab")
        reached.append(
            desk.page.evaluate(
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


def test_a_guide_is_drawn_stroke_by_stroke_with_a_sentence_for_each(desk):
    desk.show(guide="triangle", follow=True)
    guide = PolygonDrawer("triangle").shape
    assert desk.page.locator(".polygon-guide").get_attribute("d").startswith("M400 100L")
    for stroke in strokes(guide, "square"):
        assert desk.allows("Next stroke")
        desk.press("Next stroke")
        assert desk.shape == stroke.shape
        assert desk.hint == stroke.say
        desk.says(stroke.say)
    assert not desk.allows("Next stroke")
    assert desk.facts["traced"] is True
    for _ in strokes(guide, "square"):
        desk.press("Undo")
    assert desk.shape == NOTHING


def test_a_stroke_goes_on_where_the_hand_drew_the_one_before(desk):
    desk.show(guide="triangle", follow=True)
    desk.click([4, 1], [7, 7])
    desk.press("Next stroke")
    assert desk.points == [[4, 1], [7, 7], [1, 7]]


def test_a_traced_shape_is_known(desk):
    desk.show(guide="triangle")
    desk.click([1, 7], [4, 1], [7, 7], [1, 7])
    assert desk.facts["traced"] is True
    assert desk.hint == "Traced: it is the guide."
    assert desk.page.locator(".polygon-stroke").is_hidden()


@pytest.mark.parametrize("shape", ["circle", "half circle", "quarter circle", "star", "pentagram"])
@pytest.mark.parametrize("grid", ["square", "triangle", "plain"])
def test_any_shape_is_followed_to_its_end(desk, shape, grid):
    desk.show(guide=shape, follow=True, grid=grid)
    for stroke in strokes(PolygonDrawer(shape, grid=grid).shape, grid):
        desk.press("Next stroke")
        assert desk.hint == stroke.say
    assert desk.facts == shape_facts(desk.shape, grid, guide=desk.shape)
    assert desk.facts["name"] == shape


def test_corners_of_a_curve_are_told_apart_from_vertices(desk):
    desk.show("half circle")
    assert desk.page.locator("[data-reading='vertices'] span").inner_text() == "Corners"
    assert desk.reading("vertices") == "2"
    assert desk.page.locator("[data-reading='sides'] span").inner_text() == "Straight sides"
    assert desk.reading("sides") == "1"
    assert desk.hint.startswith("Half circle")


def test_a_circle_has_no_end_of_mirror_lines(desk):
    desk.show("circle", show=["mirror_lines"])
    assert desk.reading("mirror_lines") == "no end"
    assert desk.facts["mirror_lines"] is None


@pytest.mark.screens("board", "phone")
def test_a_rectangle_is_cut_from_edge_to_edge(desk, screen):
    desk.show(BOX, tool="cut", show=["shares"])
    go = desk.tap if screen.touch else desk.click
    assert desk.hint == "Tap an edge where a cut begins."
    go([3, 3])
    assert desk.hint == "A cut begins on an edge."
    go([4, 2])
    assert desk.hint == "Now tap where the cut goes."
    go([4, 6])
    assert desk.shape["cuts"] == [[[4, 2], [4, 6]]]
    assert desk.hint == "2 equal shares: halves."
    assert desk.reading("shares") == "2 equal"
    go([1, 2], [4, 6])
    assert desk.reading("shares") == "3 unequal"
    go([4, 2], [7, 6])
    assert desk.hint == "4 equal shares: fourths."
    desk.press("Remove")
    assert len(desk.shape["cuts"]) == 2
    desk.press("Undo")
    assert len(desk.shape["cuts"]) == 3
    desk.press("Clear")
    assert desk.shape == {"points": BOX, "closed": True}


def test_a_cut_may_bend_inside_and_is_forgotten_by_escape_or_undo(desk):
    desk.show(BOX, tool="cut", show=["shares"])
    desk.click([5, 2], [5, 5])
    assert desk.hint == "Go on, to an edge."
    desk.click([1, 5])
    assert desk.shape["cuts"] == [[[5, 2], [5, 5], [1, 5]]]
    assert desk.hint == "2 equal shares: halves. Equal, but not alike in shape."
    desk.click([7, 2])
    desk.keys("Escape")
    desk.click([7, 6])
    assert len(desk.shape["cuts"]) == 1, "a new cut has only begun"
    desk.press("Undo")
    assert len(desk.shape["cuts"]) == 1, "and is forgotten"
    desk.press("Undo")
    assert "cuts" not in desk.shape


def test_a_cut_that_does_not_fit_is_answered_with_words(desk):
    desk.show([[0, 0], [8, 0], [8, 8], [5, 8], [5, 3], [3, 3], [3, 8], [0, 8]], tool="cut")
    desk.click([3, 5], [5, 5])
    assert desk.hint == "A cut stays inside the shape."
    desk.keys("Escape")
    desk.click([0, 0], [8, 0])
    assert desk.hint == "A cut goes through the inside."


def test_a_circle_is_cut_by_keys_alone(desk):
    desk.show("circle", tool="cut", show=["shares"])
    desk.focus_pen()
    desk.keys("Enter")
    assert desk.hint == "A cut begins on an edge."
    desk.keys("ArrowUp", "Enter", "ArrowDown", "Enter")
    assert desk.hint == "Go on, to an edge."
    desk.keys("ArrowDown", "Enter")
    assert desk.shape["cuts"] == [[[0, 1], [0, 0], [12, 1]]]
    assert desk.reading("shares") == "2 equal"
    desk.says("2 equal shares: halves.")
    desk.keys("Backspace")
    assert "cuts" not in desk.shape


def test_shares_are_cut_in_one_way_after_the_other(desk):
    desk.show(BOX, panel=True)
    desk.press("Cut")
    seen = []
    for _ in range(5):
        desk.press("Cut into 4 equal shares")
        seen.append(desk.shape["cuts"])
        assert desk.facts["shares"] == 4
        assert desk.facts["equal_shares"] is True
    assert seen[0] == seen[4]
    assert len({str(cuts) for cuts in seen}) == 4
    desk.page.evaluate("kit.outside('shape', {points: [[0, 0], [4, 0], [0, 3]], closed: true})")
    desk.press("Cut into 2 equal shares")
    assert desk.hint == "Draw a rectangle or a circle for that."


def test_moving_a_point_takes_the_cuts_away_in_the_same_step(desk):
    cut = {"points": BOX, "closed": True, "cuts": [[[4, 2], [4, 6]]]}
    desk.show(cut)
    desk.drag(desk.spot([7, 2]), desk.spot([8, 2]))
    assert "cuts" not in desk.shape
    desk.press("Undo")
    assert desk.shape == cut


def test_a_shape_from_outside_is_shown_and_is_a_new_beginning(desk):
    desk.show(TRIANGLE)
    desk.drag(desk.spot([4, 6]), desk.spot([4, 7]))
    outside = {"points": BOX, "closed": True}
    desk.page.evaluate("shape => kit.outside('shape', shape)", outside)
    assert desk.reading("name") == "rectangle"
    assert not desk.allows("Undo")
    desk.drag(desk.spot([7, 6]), desk.spot([8, 8]))
    desk.press("Reset")
    assert desk.shape == outside


def test_a_shape_from_outside_ends_a_drag(desk):
    desk.show(TRIANGLE)
    desk.drag(desk.spot([4, 6]), desk.spot([4, 7]), let_go=False)
    desk.page.evaluate("shape => kit.outside('shape', shape)", {"points": BOX, "closed": True})
    desk.page.mouse.move(*desk.spot([0, 0]))
    desk.page.mouse.up()
    assert desk.points == BOX


def test_every_change_is_seen_before_it_is_told(desk):
    desk.show(TRIANGLE)
    desk.page.evaluate("""() => {
      window.seen = [];
      document.querySelector(".kit-polygon").addEventListener("kit:change", (event) => {
        const sides = document.querySelector("[data-reading=sides] strong").textContent;
        window.seen.push([event.currentTarget.facts().points, Number(sides), kit.saves]);
      });
    }""")
    desk.press("Clear")
    desk.click([1, 1], [3, 1])
    assert desk.page.evaluate("seen") == [[0, 0, 1], [1, 0, 2], [2, 1, 3]]


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
def test_each_reading_and_its_marks_are_shown_alone_or_hidden_alone(desk, name):
    def visible():
        return {
            part
            for part, where in READ.items()
            if desk.page.locator(where).is_visible()
            and desk.page.locator(where).get_attribute("d") != ""
        }

    desk.show("square", show=[])
    assert visible() == set()
    desk.page.evaluate("name => kit.outside('show', [name])", name)
    assert visible() == {name}
    assert desk.page.locator(".polygon-reading:visible").count() == 1


@pytest.mark.parametrize(("count", "many"), [("", 0), ("sides", 3), ("vertices", 3)])
def test_sides_or_vertices_are_numbered(desk, count, many):
    desk.show(TRIANGLE, count=count)
    texts = desk.page.locator(".polygon-numbers text").all_text_contents()
    assert texts == [str(at) for at in range(1, many + 1)]


def test_what_is_hidden_is_not_said(desk):
    desk.show(BOX, show=[], hints=False)
    desk.handle(1).focus()
    desk.keys("Shift+ArrowRight")
    desk.says("8 across, 2 down")
    said = desk.page.locator("#kit-live").inner_text()
    assert said == "8 across, 2 down"
    assert "trapezoid" not in desk.page.locator("body").inner_text()


def test_a_paper_that_cannot_be_drawn_on_is_a_picture_with_words(desk):
    desk.show(BOX, movable=False)
    page = desk.page
    assert page.get_by_role("button").count() == 0
    assert page.locator("[tabindex]:visible").count() == 0
    assert page.locator(".kit-grip circle:not(.kit-grip-ring):visible").count() == 0
    assert page.get_by_role("img").get_attribute("aria-label") == (
        "A closed shape. 6 right; 4 down; 6 left; 4 up;"
    )
    desk.drag(desk.spot([7, 2]), desk.spot([5, 4]))
    desk.click([4, 4])
    assert desk.points == BOX


def test_points_of_a_picture_can_be_left_out(desk):
    desk.show(BOX, movable=False, show_points=False)
    assert desk.page.locator(".polygon-point:visible").count() == 0
    desk.show(BOX, movable=False)
    assert desk.page.locator(".polygon-point:visible").count() == 4


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
def test_a_switch_shows_and_hides(desk, group, switch, trait, value):
    desk.show(BOX, panel=True)
    before = desk.page.evaluate("name => kit.get(name)", trait)
    tab = desk.page.get_by_role("button", name=group, exact=True)
    if tab.get_attribute("aria-expanded") == "false":
        tab.click()
    tile = desk.page.get_by_role("switch", name=switch, exact=True)
    checked = tile.get_attribute("aria-checked")
    tile.click()
    now = desk.page.evaluate("name => kit.get(name)", trait)
    assert sorted(now) == sorted(value) if isinstance(value, list) else now == value
    assert tile.get_attribute("aria-checked") != checked
    tile.click()
    again = desk.page.evaluate("name => kit.get(name)", trait)
    assert sorted(again) == sorted(before) if isinstance(before, list) else again == before


def test_a_trapezoid_is_defined_in_the_panel(desk):
    desk.show(BOX, panel=True, show=["also"], vocabulary="uk")
    desk.press("Paper")
    assert desk.page.get_by_text("A trapezium has").is_visible()
    assert "trapezium" in desk.reading("also")
    desk.press("1 pair pairs of parallel sides")
    assert desk.page.evaluate("kit.get('trapezoid')") == "exclusive"
    assert "trapezium" not in desk.reading("also")
    assert (
        "By the other definition this is a trapezium, too"
        in desk.page.locator(".polygon-note").inner_text()
    )


@pytest.mark.parametrize("paper", ["Triangles", "Plain"])
def test_another_paper_takes_shape_and_guide_along(desk, paper):
    desk.show(TRIANGLE, guide="square", panel=True)
    desk.press("Paper")
    desk.press(paper)
    grid = desk.page.evaluate("kit.get('grid')")
    check_shape(desk.shape, grid)
    check_shape(desk.page.evaluate("kit.get('guide')"), grid)
    desk.grid = grid
    for point, old in zip(desk.points, TRIANGLE, strict=True):
        assert math.dist(place(tuple(point), grid), place(tuple(old), "square")) < 71
    assert desk.facts["closed"] is True


def test_a_guide_is_chosen_by_its_picture_and_taken_away_again(desk):
    desk.show(panel=True)
    desk.press("Shapes")
    desk.press("Guide: star")
    assert desk.page.evaluate("kit.get('guide')") == PolygonDrawer("star").shape
    assert desk.page.get_by_role("button", name="Next stroke").is_visible()
    desk.press("Guide: star")
    assert desk.page.evaluate("kit.get('guide')") is None
    assert desk.page.locator(".polygon-stroke").is_hidden()


def test_a_turned_shape_keeps_its_name(desk):
    desk.show(BOX, panel=True)
    desk.press("Shapes")
    desk.press("Turn")
    assert desk.points == [[6, 1], [6, 7], [2, 7], [2, 1]]
    assert desk.reading("name") == "rectangle"
    desk.press("Flip")
    assert desk.points == [[2, 1], [2, 7], [6, 7], [6, 1]]
    desk.press("Undo")
    desk.press("Undo")
    assert desk.points == BOX


def test_movement_needs_no_animation(desk):
    desk.show(BOX)
    still = desk.page.evaluate("""() => [...document.querySelectorAll(".kit-polygon *")]
      .every((each) => ["0s", ""].includes(getComputedStyle(each).transitionDuration)
        && getComputedStyle(each).animationName === "none")""")
    assert still


EVERYTHING = {"show": list(READINGS), "panel": True, "guide": "star", "follow": True}


@pytest.mark.screens("board", "tablet", "phone")
@pytest.mark.parametrize("traits", [{}, EVERYTHING], ids=["plain", "everything"])
@pytest.mark.parametrize("group", ["", "Show", "Shapes", "Cut", "Paper"])
def test_whatever_is_pressed_is_large_enough_and_nothing_is_cut_off(desk, traits, group):
    if group and not traits:
        return
    desk.show(BOX, **traits)
    tab = desk.page.get_by_role("button", name=group, exact=True)
    if group and tab.get_attribute("aria-expanded") == "false":
        tab.click()
    found = desk.page.evaluate("""() => {
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
def test_nothing_lies_over_another_and_the_screen_is_not_scrolled(desk, screen, traits):
    desk.show(BOX, **traits)
    found = desk.page.evaluate("""() => {
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
    paper = desk.page.locator(".polygon-sheet").bounding_box()
    assert paper["width"] > 0.8 * min(screen.width, screen.height)


@pytest.mark.screens("board", "tablet", "phone")
def test_text_is_large_enough_for_children(desk):
    desk.show(BOX, **{**EVERYTHING, "count": "vertices"})
    sizes = desk.page.evaluate("""() => {
      const scale = document.querySelector(".polygon-paper > svg").getScreenCTM().a;
      return [...document.querySelectorAll(".kit-polygon *")]
        .filter((each) => each.checkVisibility() && [...each.childNodes]
          .some((child) => child.nodeType === 3 && child.data.trim()))
        .map((each) => [each.textContent, parseFloat(getComputedStyle(each).fontSize)
          * (each.tagName === "text" ? scale : 1)]);
    }""")
    assert len(sizes) > 24
    assert [text for text in sizes if text[1] < 17.5] == []


def test_given_no_height_it_takes_no_more_than_the_screen(desk, screen):
    desk.show(BOX, panel=True, room="")
    assert desk.page.evaluate("document.documentElement.scrollHeight") <= screen.height
    assert desk.page.locator(".polygon-sheet").bounding_box()["height"] > 0.85 * screen.height


def test_the_font_of_the_kit_is_used_in_one_weight(desk):
    desk.show(BOX, **EVERYTHING)
    styles = desk.page.evaluate("""() => [...document.querySelectorAll(".kit-polygon *")]
      .map((each) => getComputedStyle(each))
      .map(({ fontFamily, fontWeight }) => fontFamily.split(",")[0] + " " + fontWeight)""")
    assert set(styles) == {'"Kit Reading" 400'}


def test_a_drag_is_painted_in_its_frame_with_24_vertices_on_a_slow_processor(desk):
    ring = [
        [
            round(400 + 330 * math.cos(math.tau * at / 24)),
            round(400 + 330 * math.sin(math.tau * at / 24)),
        ]
        for at in range(24)
    ]
    desk.show(ring, grid="plain", show=list(READINGS))
    desk.page.context.new_cdp_session(desk.page).send("Emulation.setCPUThrottlingRate", {"rate": 4})
    desk.page.evaluate("""() => {
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
    start, end = desk.spot(ring[0]), desk.spot([760, 500])
    desk.page.mouse.move(*start)
    desk.page.mouse.down()
    for step in range(1, 25):
        desk.page.mouse.move(*(a + (b - a) * step / 24 for a, b in zip(start, end, strict=True)))
    desk.page.mouse.up()
    seen = desk.page.evaluate("frames_seen")
    assert len(seen) >= 10
    assert max(seen) < 1
    assert math.dist(desk.points[0], [760, 500]) < 2


def test_a_view_that_has_ended_is_silent(desk):
    desk.show(BOX)
    desk.page.evaluate("kit.end.abort()")
    desk.handle(0).focus()
    desk.keys("Shift+ArrowRight")
    desk.drag(desk.spot([7, 2]), desk.spot([5, 4]))
    desk.press("Clear")
    assert desk.points == BOX
    desk.page.evaluate("shape => kit.outside('shape', shape)", NOTHING)
    assert desk.reading("name") == "rectangle"
