"""A round whose view ends: nothing of it waits, listens or answers any more."""

from __future__ import annotations

import base64

import pytest
from browser.harness import in_script

from manipulatives.widgets.round import PupilRound, play

# What a page counts of the observers that a widget makes. Its live region is the document's own,
# so a sentence that is due there may still be said.
COUNT = """
window.live = { timers: new Map(), listeners: [], resizes: 0, sounds: 0 };
const { setTimeout: start, clearTimeout: stop } = window;
window.setTimeout = (call, delay, ...given) => {
  const id = start(() => { live.timers.delete(id); call(...given); }, delay);
  live.timers.set(id, String(call));
  return id;
};
window.clearTimeout = (id) => { live.timers.delete(id); stop(id); };
const { addEventListener } = EventTarget.prototype;
EventTarget.prototype.addEventListener = function (type, call, options) {
  // On the window the test's own browser driver listens; the kit's linter forbids it to widgets.
  if (this && this !== window && !(this instanceof AbortSignal)) {
    live.listeners.push([this, type, options?.signal]);
  }
  addEventListener.call(this ?? window, type, call, options);
};
window.ResizeObserver = class extends ResizeObserver {
  observe(...given) { super.observe(...given); live.resizes += 1; }
  disconnect() { super.disconnect(); live.resizes = 0; }
};
window.AudioContext = class extends AudioContext {
  constructor() { super(); live.sounds += 1; }
  close() { live.sounds -= 1; return super.close(); }
};
"""
MODEL = """
const models = {};
function model(name, state) {
  const listeners = [];
  models[name] = listeners;
  return {
    get: (trait) => state[trait],
    set(trait, value) {
      window.sets.push(`${name} ${trait}`);
      state[trait] = value;
      listeners.filter(([event]) => event === `change:${trait}`).forEach(([, call]) => call());
    },
    on: (event, call) => listeners.push([event, call]),
    off(event, call) {
      const at = listeners.findIndex((each) => each[0] === event && each[1] === call);
      listeners.splice(at, 1);
    },
    save_changes() {},
    send() {},
  };
}
window.sets = [];
window.models = models;
window.end = new AbortController();
const { default: widget } = await import(CODE);
const child = model("child", {});
const round = model("round", STATE);
window.round = round;
await widget.render({
  model: round,
  el: document.querySelector("#place"),
  signal: end.signal,
  host: {
    getModel: async () => child,
    getWidget: async () => ({ render: ({ el }) => el.append("the manipulative") }),
  },
});
window.root = document.querySelector(".kit-round");
window.ready = true;
"""
LEFT = """() => ({
  timers: [...live.timers.values()],
  listeners: live.listeners.filter(([, , signal]) => !signal?.aborted)
    .map(([target, type]) => `${type} on ${target.constructor.name}`),
  models: Object.values(models).flat().map(([event]) => event),
  resizes: live.resizes,
  sounds: live.sounds,
  inPage: document.querySelectorAll(".kit-round").length,
})"""
NOTHING = {"timers": [], "listeners": [], "models": [], "resizes": 0, "sounds": 0, "inPage": 0}
LIVE_REGION_MS = 250
A_LITTLE_MS = 100


def open_round(page, widget):
    """Show a round on a page that counts its observers."""
    state = {
        name: value
        for name, value in widget.get_state().items()
        if name in ("tasks", "setup", "timer", "place", "answers", "python")
    }
    text = base64.b64encode(widget._esm.encode()).decode()  # noqa: SLF001 - it is what hosts are sent
    code = in_script(f"data:text/javascript;base64,{text}")
    script = MODEL.replace("STATE", in_script({**state, "manipulative": "anywidget:child"}))
    page.set_content(
        '<!doctype html><html lang="en"><meta charset="utf-8"><title>A round</title>'
        f"<style>{widget._css}</style>"  # noqa: SLF001 - it is what hosts are sent
        f'<div id="place"></div><script>{COUNT}</script>'
        f'<script type="module">{script.replace("CODE", code)}</script>'
    )
    page.wait_for_function("window.ready")


def end(page):
    """End the view; return what is left of it when what it said last was said."""
    page.evaluate("window.end.abort()")
    page.wait_for_function(
        "![...live.timers.values()].some((call) => call.includes('region.textContent'))"
    )
    page.evaluate("window.sets.length = 0")
    return page.evaluate(LEFT)


def send(page, event, detail=None):
    page.evaluate(
        "([event, detail]) => root.dispatchEvent(new CustomEvent(event, { detail }))",
        [event, detail],
    )


def board(**setting):
    return play("time.read_hour", tasks=2, seed=90213, seconds=60, timer="shown", **setting)


def test_a_boards_round_that_ends_leaves_nothing_behind(quiet_page):
    page = quiet_page
    open_round(page, board())
    send(page, "kit:next")
    running = page.evaluate(LEFT)
    assert running["timers"]
    assert running["resizes"] == 1
    assert set(running["models"]) == {
        *(f"change:{name}" for name in ("place", "timer", "tasks", "answers")),
        "msg:custom",
    }
    assert len(running["listeners"]) > 10
    # A question that Python was asked and has not answered.
    for _ in range(4):
        send(page, "kit:next")
    page.get_by_role("button", name="Own numbers").click()
    page.locator(".round-own").fill("4:00")
    page.keyboard.press("Enter")
    page.get_by_text("One moment").wait_for()
    assert end(page) == NOTHING
    for event in ("kit:next", "kit:back", "kit:answers", "kit:timer", "kit:again"):
        send(page, event)
    page.evaluate("round.set('place', { task: 1, step: 0, phase: 'ask' })")
    assert page.evaluate("window.sets") == ["round place"]


def test_a_beat_ends_with_its_round(quiet_page):
    page = quiet_page
    open_round(page, board(count_aloud=5))
    while page.evaluate("root.dataset.phase") != "wipe":
        send(page, "kit:next")
    page.get_by_role("button", name="Beat", exact=True).click()
    page.get_by_role("button", name="Stop", exact=True).wait_for()
    assert page.evaluate("live.timers.size") > 0
    assert end(page) == NOTHING


def test_a_tone_ends_with_its_round(quiet_page):
    page = quiet_page
    page.clock.install(time="2026-03-02T09:00:00")
    open_round(page, board())
    page.clock.pause_at("2026-03-02T09:05:00")
    page.get_by_role("button", name="Tone when time is up").click()
    send(page, "kit:next")
    page.clock.run_for(60_000 + A_LITTLE_MS)
    assert page.evaluate("live.sounds") == 1
    page.evaluate("window.end.abort()")
    page.clock.run_for(LIVE_REGION_MS)
    assert page.evaluate(LEFT) == NOTHING


@pytest.mark.parametrize("stage", ["watch", "try"])
def test_a_pupils_round_that_ends_leaves_nothing_behind(quiet_page, stage):
    page = quiet_page
    made = board()
    open_round(page, PupilRound(tasks=made.tasks, setup=made.setup, timer=made.timer))
    send(page, "kit:begin", {"saved": None})
    # The example plays, or the timer runs.
    if stage == "try":
        page.get_by_role("button", name="My turn").click()
        page.locator("[data-key='4']").click()
    assert page.evaluate("root.dataset.stage") == stage
    running = page.evaluate(LEFT)
    assert running["timers"]
    assert running["listeners"]
    assert end(page) == NOTHING
    send(page, "kit:begin", {"saved": None})
    assert page.evaluate("window.sets") == []
