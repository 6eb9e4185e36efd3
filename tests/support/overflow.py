"""Elements of a page that overflow, found by a script for any browser."""

from __future__ import annotations

LEAVING = """(() => {
  const SLACK = 3;
  const shown = (each) => each.checkVisibility({ visibilityProperty: true });
  const named = (each) => `${each.tagName.toLowerCase()}.${each.getAttribute("class") ?? ""}`;
  const scrolls = (each) => getComputedStyle(each).overflow !== "visible";
  const held = (each, end) => {
    for (let room = each.parentElement; room && room !== end; room = room.parentElement) {
      if (scrolls(room)) {
        return true;
      }
    }
    return false;
  };
  const wide = document.documentElement.clientWidth;
  const said = new Set();
  if (document.scrollingElement.scrollWidth > wide) {
    said.add(`the page is ${document.scrollingElement.scrollWidth} wide, the window ${wide}`);
  }
  for (const room of document.querySelectorAll(".kit-manipulative")) {
    const { left, top, right, bottom } = room.getBoundingClientRect();
    for (const each of room.querySelectorAll("*")) {
      const box = each.getBoundingClientRect();
      if (each.ownerSVGElement || box.width < 2 || !shown(each) || held(each, room)) {
        continue;
      }
      if (box.left < left - SLACK || box.right > right + SLACK
        || box.top < top - SLACK || box.bottom > bottom + SLACK) {
        said.add(`${named(each)} leaves ${named(room)}`);
      }
    }
  }
  for (const each of document.querySelectorAll("button, p, h1, h2, h3, output")) {
    const spilt = each.scrollWidth > each.clientWidth + 2;
    if (shown(each) && each.clientWidth > 2 && spilt && !scrolls(each)) {
      said.add(`${named(each)} is too narrow for ${each.textContent}`);
    }
  }
  return [...said];
})()"""
"""An expression: a sentence for each thing that is wider or higher than where it stands."""
