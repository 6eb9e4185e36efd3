"""The fixtures that tests share.

js(module, function, calls) -> list
    What a function of the kit's JavaScript returns: ``js("clock/dial.js", "facts", [[dial]])``.
    One Node process for all calls of the list, so pass thousands at once.

browser
    A Chromium for the whole run. Tests with it carry the marker ``browser`` and run last.

quiet_page
    A new page. It may reach this machine only; the test fails at its end when anything else
    was asked for, or an error came to the console. ``noise`` is the list of these complaints:
    a test that provokes one on purpose looks at the list and clears it. What may come at any
    time, even after the test, is named in the list ``forgiven`` by a part of its words.

screen
    The screen of quiet_page, the board unless the test says otherwise:
    ``@pytest.mark.screens("board", "tablet", "phone")`` runs it once on each.
"""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

import hypothesis
import pytest
from playwright.sync_api import sync_playwright

from support.chromium import REMEDY, arguments, find_chromium, keep_inside
from support.node import call
from support.screens import SCREENS, Screen

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from playwright.sync_api import Browser, Page

# How many of like cases with a browser a usual run tries; SLOW_TESTS=1 tries all.
MOST_CASES = 2

# A slow machine must not fail a test.
hypothesis.settings.register_profile("kit", hypothesis.settings(), deadline=None)
hypothesis.settings.load_profile("kit")


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    """Run a test marked ``screens`` once on each screen that it names."""
    marker = metafunc.definition.get_closest_marker("screens")
    if marker is not None:
        metafunc.parametrize("screen", marker.args, indirect=True)


def pytest_make_parametrize_id(val: object) -> str | None:
    """Name a function by its name, because its repr differs in every process."""
    return getattr(val, "__name__", None) if callable(val) else None


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Mark the browser tests and put them last; leave out what only a thorough run tries.

    Playwright keeps an event loop running in this thread once it has begun; whatever wants a
    loop of its own goes before it.
    """
    for item in items:
        if "browser" in getattr(item, "fixturenames", ()):
            item.add_marker("browser")
    items.sort(key=lambda item: item.get_closest_marker("browser") is not None)
    if "SLOW_TESTS" not in os.environ:
        left_out = _only_thorough(items)
        config.hook.pytest_deselected(items=[item for item in items if id(item) in left_out])
        items[:] = [item for item in items if id(item) not in left_out]


def _only_thorough(items: list[pytest.Item]) -> set[int]:
    """Return those of many like cases that only a thorough run tries.

    Of like tests with a browser a usual run tries the first and one in the middle, so that it is
    done in a quarter of an hour.
    """
    groups: dict[tuple[str, str], list[pytest.Item]] = {}
    for item in items:
        if item.path.parent.name == "browser":
            name = getattr(item, "originalname", item.name)
            groups.setdefault((str(item.path), name), []).append(item)
    left_out = set()
    for group in groups.values():
        kept = {len(group) * place // MOST_CASES for place in range(MOST_CASES)}
        if len(group) > MOST_CASES:
            left_out |= {id(item) for place, item in enumerate(group) if place not in kept}
    return left_out


@pytest.fixture(scope="session")
def js() -> Callable[..., list]:
    """Call the kit's JavaScript."""
    return call


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """A Chromium; without one the test is skipped, or fails where CI is set."""
    with sync_playwright() as playwright:
        executable = find_chromium(playwright)
        if executable is None:
            if os.environ.get("CI", "") not in ("", "0", "false"):
                pytest.fail(REMEDY)
            pytest.skip(REMEDY)
        chromium = playwright.chromium.launch(executable_path=executable, args=arguments())
        yield chromium
        chromium.close()


@pytest.fixture
def screen(request: pytest.FixtureRequest) -> Screen:
    """The screen of the page: "board", "tablet" or "phone"."""
    return SCREENS[getattr(request, "param", "board")]


@pytest.fixture
def noise() -> list[str]:
    """The requests outside this machine, and the errors on the console."""
    return []


@pytest.fixture
def forgiven() -> list[str]:
    """Parts of messages that this test ignores."""
    return []


@pytest.fixture
def quiet_page(
    browser: Browser, screen: Screen, noise: list[str], forgiven: list[str]
) -> Iterator[Page]:
    """A page that must log no errors and request nothing outside this machine."""
    context = browser.new_context(
        viewport={"width": screen.width, "height": screen.height},
        has_touch=screen.touch,
        service_workers="block",
    )
    context.set_default_timeout(15_000)
    keep_inside(context, noise)
    yield context.new_page()
    context.close()
    left = [each for each in noise if not any(words in each for words in forgiven)]
    assert not left, "The page was to stay quiet, but " + "; ".join(left)
