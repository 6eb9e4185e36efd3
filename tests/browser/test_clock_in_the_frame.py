"""A drag is painted in the frame that it happens in."""

from __future__ import annotations

import math

from browser.harness import open_widget

from manipulatives import Clock

# What the eye sees of a hand: where it stands now, not where a transition will bring it.
SEEN = """() => {
  const hand = document.querySelector(".clock-minute");
  const { a, b } = new DOMMatrix(getComputedStyle(hand).transform);
  return (Math.atan2(b, a) * 180 / Math.PI + 360) % 360;
}"""
WATCH = """(seen) => {
  window.frames_seen = [];
  addEventListener("pointermove", () => requestAnimationFrame(() => {
    window.frames_seen.push(eval(seen)());
  }), { capture: true });
}"""
PLACE = """(selector) => {
  const { x, y, width, height } = document.querySelector(selector).getBoundingClientRect();
  return [x + width / 2, y + height / 2];
}"""


def test_the_minute_hand_is_under_the_finger_in_the_same_frame(quiet_page):
    open_widget(quiet_page, Clock(time="4:00", snap=1))
    centre = quiet_page.evaluate(PLACE, ".clock-disc")
    grip = quiet_page.evaluate(PLACE, ".clock-minute .kit-grip")
    radius = math.dist(centre, grip)
    quiet_page.mouse.move(*grip)
    quiet_page.mouse.down()
    quiet_page.evaluate(WATCH, SEEN)
    wanted = [6.0 * minute for minute in (5, 10, 20, 25)]
    for angle in wanted:
        turn = math.radians(angle)
        before = quiet_page.evaluate("window.frames_seen.length")
        quiet_page.mouse.move(
            centre[0] + radius * math.sin(turn), centre[1] - radius * math.cos(turn)
        )
        quiet_page.wait_for_function("(before) => window.frames_seen.length > before", arg=before)
    quiet_page.mouse.up()
    seen = quiet_page.evaluate("window.frames_seen")
    assert len(seen) == len(wanted)
    for angle, stood in zip(wanted, seen, strict=True):
        assert abs(stood - angle) < 0.5
