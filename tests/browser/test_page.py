"""The page in a browser: opened from a disk and over http, with the network refused."""

from __future__ import annotations

import functools
import http.server
import threading

import anywidget
import ipywidgets
import pytest
import traitlets
from nbformat.v4 import new_markdown_cell, new_notebook

from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.notebook.writing import notebook_of
from manipulatives.outputs.page import page_of, page_of_file
from manipulatives.outputs.page.blocks import view
from manipulatives.outputs.page.document import document
from manipulatives.outputs.page.saved import SavedWidgets, states_of, with_parts
from support.chromium import SETTLED, reload, visit
from support.files import ROOT

LESSON = Lesson(
    "Market clock",
    seed=7,
    rounds=(
        Round("time.read_hour", seed=11, tasks=2),
        Round("time.set_hands", seed=12, tasks=2),
    ),
)


class Counter(anywidget.AnyWidget):
    """A number that grows when it is pressed; it tells everything that happens to it."""

    _esm = """
    export default {
      initialize({ model }) {
        globalThis.begun = (globalThis.begun ?? 0) + 1;
        return { triple: () => 3 * model.get("number") };
      },
      render({ model, el, signal }) {
        const button = document.createElement("button");
        button.className = "counter";
        const paint = () => { button.textContent = `${model.get("name")} ${model.get("number")}`; };
        model.on("change:number", paint);
        button.addEventListener("click", () => {
          model.set("number", model.get("number") + 1);
          model.save_changes();
        }, { signal });
        paint();
        el.append(button);
        return () => { globalThis.tidied = (globalThis.tidied ?? 0) + 1; button.remove(); };
      },
    };
    """
    _css = ".counter { letter-spacing: 3px; }"
    name = traitlets.Unicode("bell").tag(sync=True)
    number = traitlets.Int(0).tag(sync=True)


class Stall(anywidget.AnyWidget):
    """A parent that reaches its children in every way that a host offers."""

    _esm = """
    export default {
      async render({ model, el, host, signal }) {
        const part = (className) => {
          const made = document.createElement("div");
          made.className = className;
          el.append(made);
          return made;
        };
        const widget = await host.getWidget(model.get("child"));
        await widget.render({ el: part("child") });
        part("exports").textContent = `triple ${widget.exports.triple()}`;
        for (const reference of model.get("more")) {
          await (await host.getWidget(reference)).render({ el: part("more") });
        }
        const child = await host.getModel(model.get("child"));
        const twice = part("twice");
        const paint = () => { twice.textContent = `twice ${2 * child.get("number")}`; };
        child.on("change:number", paint);
        paint();
        const ten = Object.assign(document.createElement("button"), { className: "ten" });
        ten.addEventListener("click", () => {
          child.set("number", 10);
          child.save_changes();
        }, { signal });
        el.append(ten);
        const short = new AbortController();
        const gone = part("gone");
        await widget.render({ el: gone, signal: short.signal });
        const close = Object.assign(document.createElement("button"), { className: "close" });
        close.addEventListener("click", () => short.abort(), { signal });
        el.append(close);
        const wrong = part("wrong");
        try { await host.getWidget("bell"); } catch (error) { wrong.textContent = error.message; }
      },
    };
    """
    child = anywidget.WidgetTrait().tag(sync=True)
    more = traitlets.List().tag(sync=True, **ipywidgets.widget_serialization)


class Bytes(anywidget.AnyWidget):
    """Something that JSON cannot hold, two levels down."""

    _esm = """
    export default { render({ model, el }) {
      const { sound } = model.get("tower");
      el.textContent = `${sound.constructor.name} ${new Uint8Array(sound.buffer).join()}`;
    } };
    """
    tower = traitlets.Dict({"sound": b"\x01\xfe"}).tag(sync=True)


def widget_of(esm, **traits):
    """A widget with this front end."""
    return type("Widget", (anywidget.AnyWidget,), {"_esm": esm, **traits})()


def page_with(*widgets):
    """A page that shows these widgets one below the other."""
    saved = SavedWidgets(states_of(with_parts(widgets)))
    body = [view(saved.add(widget.model_id)) for widget in widgets]
    return document(title="Host", key="host", language="en-US", body=body, saved=saved.script())


@pytest.fixture
def show(quiet_page, tmp_path):
    """Open a page from the disk."""

    def opened(text):
        path = tmp_path / "a page & more.html"
        path.write_text(text, encoding="utf-8")
        quiet_page.goto(path.as_uri())
        quiet_page.wait_for_selector("main:not([aria-busy])")
        return quiet_page

    return opened


@pytest.fixture
def served(tmp_path):
    """A plain web folder, and what was asked of it."""
    asked = []

    class Handler(http.server.SimpleHTTPRequestHandler):
        def log_request(self, code="-", _size="-"):
            asked.append((self.path, int(code)))

    handler = functools.partial(Handler, directory=tmp_path)
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}", asked
    server.shutdown()
    server.server_close()


@pytest.mark.screens("board", "tablet", "phone")
def test_a_lesson_opens_from_the_disk_without_any_request(show):
    opened = show(page_of(notebook_of(LESSON)))
    opened.wait_for_selector(".kit-round .kit-clock svg")
    assert opened.title() == "Market clock"
    wide, whole = opened.evaluate("[document.documentElement.scrollWidth, innerWidth]")
    assert wide <= whole


def test_over_http_it_asks_for_itself_alone(quiet_page, served, tmp_path):
    address, asked = served
    (tmp_path / "monday.html").write_text(page_of(notebook_of(LESSON)), encoding="utf-8")
    quiet_page.goto(f"{address}/monday.html")
    quiet_page.wait_for_selector(".kit-round .kit-clock svg")
    quiet_page.wait_for_load_state("networkidle")
    assert asked == [("/monday.html", 200)]


def test_text_uses_the_font_of_the_kit(show):
    opened = show(page_of(notebook_of(LESSON)))
    opened.evaluate("document.fonts.ready.then(() => true)")
    loaded = opened.evaluate("[...document.fonts].map(({ family, status }) => [family, status])")
    assert [(family.strip('"'), status) for family, status in loaded] == [("Kit Reading", "loaded")]
    assert opened.evaluate("getComputedStyle(document.body).fontFamily").startswith('"Kit Reading"')


def test_hostile_text_runs_nothing(show):
    text = "</script><img src=x onerror=document.title=1><script>document.title=1</script>"
    rounds = (Round("time.read_hour", seed=11, tasks=2, title=text),)
    opened = show(page_of(notebook_of(Lesson(text, seed=7, rounds=rounds))))
    opened.wait_for_selector(".kit-round .kit-clock svg")
    assert opened.title() == text
    assert opened.evaluate("document.scripts.length") == 2


def test_the_page_refuses_code_and_requests_that_are_not_its_own(show, noise):
    opened = show(page_with(Counter()))
    opened.evaluate(
        """() => {
          const script = document.createElement("script");
          script.textContent = "document.title = 'run'";
          document.body.append(script);
          const picture = document.createElement("img");
          picture.setAttribute("onerror", "document.title = 'run'");
          picture.src = "http://127.0.0.1:9/a.png";
          document.body.append(picture);
        }"""
    )
    refused = opened.evaluate("fetch('http://127.0.0.1:9/').catch(({ name }) => name)")
    assert refused == "TypeError"
    assert opened.title() == "Host"
    assert all("Content Security Policy" in each for each in noise)
    noise.clear()


def test_a_trait_goes_both_ways_between_views(show):
    first = Counter(name="bell", number=3)
    opened = show(page_with(first, first))
    bells = opened.locator(".counter")
    assert bells.all_inner_texts() == ["bell 3", "bell 3"]
    bells.nth(1).click()
    assert bells.all_inner_texts() == ["bell 4", "bell 4"]


def test_two_widgets_of_a_class_share_code_and_style_but_no_state(show):
    opened = show(page_with(Counter(name="bell"), Counter(name="ferry", number=7)))
    counters = opened.locator(".counter")
    counters.nth(0).click()
    assert counters.all_inner_texts() == ["bell 1", "ferry 7"]
    styles = "[...document.querySelectorAll('style')].filter((s) => /counter/.test(s.textContent))"
    assert opened.evaluate(f"{styles}.length") == 1
    spacing = opened.evaluate("getComputedStyle(document.querySelector('.counter')).letterSpacing")
    assert spacing == "3px"
    assert opened.evaluate("begun") == 2


@pytest.fixture
def stall(show):
    """A parent with one child on its own and two in a list, one of them the same."""
    bell, ferry = Counter(name="bell", number=2), Counter(name="ferry", number=7)
    return show(page_with(Stall(child=bell, more=[ferry, bell])))


def test_both_forms_of_reference_lead_to_a_child(stall):
    assert stall.locator(".child").inner_text() == "bell 2"
    assert stall.locator(".more").all_inner_texts() == ["ferry 7", "bell 2"]
    assert stall.locator(".wrong").inner_text() == '"bell" is no reference to a widget.'


def test_a_child_offers_what_it_set_itself_up_with(stall):
    assert stall.locator(".exports").inner_text() == "triple 6"


def test_parent_and_child_widgets_listen_to_each_other(stall):
    assert stall.locator(".twice").inner_text() == "twice 4"
    stall.locator(".child button").click()
    assert stall.locator(".twice").inner_text() == "twice 6"
    stall.locator(".ten").click()
    assert stall.locator(".twice").inner_text() == "twice 20"
    assert stall.locator(".child").inner_text() == "bell 10"


def test_a_view_ends_with_its_signal_and_the_others_stay(stall):
    stall.locator(".close").click()
    assert stall.locator(".gone").inner_text() == ""
    assert stall.evaluate("tidied") == 1
    stall.locator(".child button").click()
    assert stall.locator(".child").inner_text() == "bell 3"


def test_bytes_arrive_as_bytes(show):
    assert show(page_with(Bytes())).locator("main").inner_text().strip() == "DataView 1,254"


NOTEBOOK_ONLY = "This part works only in the notebook."
REMEDY = "Open the notebook in Jupyter to use it."


def notices(page):
    """What a page says of the parts that it cannot show."""
    return page.locator(".kit-sorry, .kit-note").all_inner_texts()


def form():
    """A form of a library whose front end a page does not have."""
    rows = [ipywidgets.HBox([ipywidgets.Text(), ipywidgets.Button()]) for _ in range(12)]
    return ipywidgets.VBox(rows)


def test_a_page_whose_parts_all_need_a_kernel_says_so_once_and_what_to_do(show):
    opened = show(page_with(form(), form()))
    assert notices(opened) == [f"{NOTEBOOK_ONLY} {REMEDY}"]


def test_a_page_with_a_few_such_parts_says_it_once_a_part_and_once_what_to_do(show):
    opened = show(page_with(form(), Counter(name="bell"), form()))
    assert notices(opened) == [f"{NOTEBOOK_ONLY} {REMEDY}", NOTEBOOK_ONLY]
    assert opened.locator(".counter").inner_text() == "bell 0"


def test_the_page_of_the_lesson_maker_says_once_that_it_works_in_the_notebook(show):
    opened = show(page_of_file(ROOT / "notebooks" / "make-a-lesson.ipynb"))
    assert notices(opened) == [f"{NOTEBOOK_ONLY} {REMEDY}"]


def test_a_box_puts_widgets_side_by_side(show):
    bell, ferry = Counter(name="bell"), Counter(name="ferry")
    opened = show(page_with(ipywidgets.HBox([bell, ipywidgets.VBox([ferry]), ipywidgets.Text()])))
    assert opened.locator(".counter").all_inner_texts() == ["bell 0", "ferry 0"]
    assert notices(opened) == [f"{NOTEBOOK_ONLY} {REMEDY}"]
    left, right = (opened.locator(".counter").nth(place).bounding_box() for place in (0, 1))
    assert left["x"] + left["width"] <= right["x"]
    assert left["y"] == right["y"]


@pytest.mark.parametrize(
    "esm",
    [
        "export default { render() { throw new Error('no'); } };",
        "export default { async render() { throw new Error('no'); } };",
        "export default { initialize() { throw new Error('no'); }, render() {} };",
        "export default () => { throw new Error('no'); };",
        "export const nothing = 1;",
        "this is no module",
        "import './elsewhere.js'; export default { render() {} };",
    ],
)
def test_a_failing_widget_says_so_and_the_rest_works(show, noise, esm):
    opened = show(page_with(Counter(name="bell"), widget_of(esm), Counter(name="ferry")))
    assert opened.locator(".kit-sorry").inner_text() == "This part cannot be shown. The rest works."
    opened.locator(".counter").nth(1).click()
    assert opened.locator(".counter").all_inner_texts() == ["bell 0", "ferry 1"]
    assert noise
    noise.clear()


def test_an_error_in_a_listener_does_not_stop_the_others(show, noise):
    esm = """
    export default { render({ model, el }) {
      model.on("change:number", () => { throw new Error("no"); });
      model.on("change:number", () => { el.textContent = `heard ${model.get("number")}`; });
      el.addEventListener("click", () => model.set("number", 5));
      el.textContent = "press";
    } };
    """
    opened = show(page_with(widget_of(esm, number=traitlets.Int(0).tag(sync=True))))
    opened.get_by_text("press").click()
    assert opened.locator("main").inner_text().strip() == "heard 5"
    assert [each for each in noise if "no" in each]
    noise.clear()


@pytest.mark.parametrize(
    "esm",
    [
        "export function render({ el }) { el.textContent = 'old form'; }",
        "export default () => ({ render({ el }) { el.textContent = 'old form'; } });",
        "export default async () => ({ render({ el }) { el.textContent = 'old form'; } });",
    ],
)
def test_a_module_may_have_any_of_its_forms(show, esm):
    assert show(page_with(widget_of(esm))).locator("main").inner_text().strip() == "old form"


def test_in_print_all_stages_follow_each_other(show):
    opened = show(page_of(notebook_of(LESSON)))
    opened.wait_for_selector(".kit-round .kit-clock svg")
    opened.emulate_media(media="print")
    titles = opened.locator("main h2:not(.kit-round *)")
    clocks = opened.locator(".kit-clock .clock-face")
    stood = [opened.locator("h1"), titles.nth(0), clocks.nth(0), titles.nth(1), clocks.nth(1)]
    boxes = [each.bounding_box() for each in stood]
    assert [box["y"] for box in boxes] == sorted(box["y"] for box in boxes)
    assert all(box["height"] > 20 for box in boxes)
    assert not opened.locator("button:visible").count()
    ground = opened.evaluate("getComputedStyle(document.body).backgroundColor")
    assert ground == "rgba(0, 0, 0, 0)"


def test_a_page_that_is_only_read_shows_nothing_to_press(quiet_page, tmp_path):
    file = tmp_path / "guide.html"
    cells = [new_markdown_cell(text) for text in ("# Guide", "Read this.", "## More", "And this.")]
    file.write_text(page_of(new_notebook(cells=cells)), "utf-8")
    visit(quiet_page, file.as_uri())
    assert quiet_page.locator("button:visible").count() == 0
    words = quiet_page.locator("body").inner_text().split("\n")
    assert [line for line in words if line] == ["Guide", "Read this.", "More", "And this."]
    assert quiet_page.evaluate("document.body.scrollHeight <= innerHeight")


# What Chromium does now and then to a page from a disk, done here every time: a storage that is
# asked for before the browser has answered the page has nothing and keeps nothing.
LOST_WHEN_EARLY = """
let committed = false;
const query = navigator.permissions.query.bind(navigator.permissions);
navigator.permissions.query = (asked) => query(asked).finally(() => { committed = true; });
for (const name of ["localStorage", "sessionStorage"]) {
  const whole = window[name];
  const lost = new Map();
  let store = null;
  Object.defineProperty(window, name, { get() {
    store ??= committed ? whole : Object.create({
      getItem: (key) => lost.get(key) ?? null,
      setItem: (key, text) => lost.set(key, text),
    });
    return store;
  } });
}
window.loads = JSON.parse(window.name || "0") + 1;
window.name = window.loads;
"""


@pytest.fixture
def stored_lesson(quiet_page):
    """Opens a lesson in a browser that loses what is asked of it too early; returns its page."""

    def opened(audience):
        quiet_page.add_init_script(LOST_WHEN_EARLY)
        # From a web server, for from a disk Chromium itself might lose the storage of this script.
        address = "http://127.0.0.1/clock.html"
        html = page_of(notebook_of(LESSON), audience=audience)
        quiet_page.route(address, lambda way: way.fulfill(body=html, content_type="text/html"))
        visit(quiet_page, address)
        quiet_page.wait_for_function(SETTLED)
        return quiet_page

    return opened


def test_a_board_uses_its_storage_only_when_the_browser_has_committed_the_page(stored_lesson):
    page = stored_lesson("board")
    for _ in range(3):
        page.keyboard.press("PageDown")
    stood = page.locator(".kit-round:visible").inner_text()
    reload(page)
    assert page.evaluate("window.loads") == 2
    assert page.locator(".kit-round:visible").inner_text() == stood


def test_a_pupils_page_uses_its_storage_only_when_the_browser_has_committed_it(stored_lesson):
    page = stored_lesson("pupils")
    page.get_by_role("button", name="Start", exact=True).click()
    page.locator(".kit-round:visible").wait_for()
    reload(page)
    assert page.evaluate("window.loads") == 2
    page.get_by_role("button", name="Carry on").click()


def test_without_javascript_it_says_what_is_missing(browser, tmp_path):
    path = tmp_path / "monday.html"
    path.write_text(page_of(notebook_of(LESSON)), encoding="utf-8")
    context = browser.new_context(java_script_enabled=False)
    opened = context.new_page()
    opened.goto(path.as_uri())
    assert "This page needs JavaScript" in opened.locator("body").inner_text()
    assert opened.get_by_text("Market clock").first.is_visible()
    context.close()


def test_a_browser_that_cannot_unpack_says_so(quiet_page, tmp_path):
    quiet_page.add_init_script("delete globalThis.DecompressionStream;")
    file = tmp_path / "clock.html"
    file.write_text(page_of(notebook_of(LESSON)), "utf-8")
    quiet_page.goto(file.as_uri())
    assert quiet_page.locator(".kit-sorry").inner_text() == (
        "This browser is too old for this page. Try another one."
    )
