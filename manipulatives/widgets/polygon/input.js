/** What keys, taps on the paper and screen readers do. */
import { onKeys } from "../shared/keys.js";
import { pointIn } from "../shared/svg.js";
import { outlineOf } from "./state/outline.js";
import { nearest, place, same } from "./state/paper.js";

/**
 * Listen to everything but drags.
 * @param {{
 *   frame: import("../shared/frame.js").Frame,
 *   work: import("./actions.js").Work,
 *   actions: import("./actions.js").Actions,
 *   pen: ReturnType<typeof import("./pen.js").makePen>,
 * }} parts of the widget
 * @returns {void}
 */
export function useInput({ frame: { root, lifetime, get }, work, actions, pen }) {
  const { hand, sheet, cutting, state, shape, grid, isCutting, view } = work;

  onKeys(root, (key, event) => {
    if (!get("movable") || !(event.target instanceof HTMLElement)) {
      return false;
    }
    if (key === "Escape") {
      const any = hand.picked !== null || cutting.begun() || hand.said !== "";
      const was = work.drop();
      if (was) {
        state.slide(was);
      }
      view.paint();
      return any || was !== null;
    }
    if (work.isHeld()) {
      return false;
    }
    const index = sheet.points().indexOf(event.target);
    return event.target === sheet.pen ? pen.key(key) : index >= 0 && pen.pointKey(index, key);
  }, lifetime);

  sheet.drawing.addEventListener("click", (event) => {
    if (get("movable")) {
      actions.tapPaper(pointIn(sheet.drawing, event));
    }
  }, lifetime);

  // A click that no pointer made comes from a screen reader.
  sheet.handles.addEventListener("click", (event) => {
    const index = event.target instanceof HTMLElement ? sheet.points().indexOf(event.target) : -1;
    if (event.detail === 0 && index >= 0 && get("movable")) {
      actions.tap({ index, added: false });
    }
  }, lifetime);

  // Where a mouse or pen is over the paper, the side that would come next is seen.
  sheet.drawing.addEventListener("pointermove", (event) => {
    const { points, closed } = shape();
    if (event.pointerType === "touch" || !get("movable") || isCutting()) {
      return;
    }
    const point = nearest(pointIn(sheet.drawing, event), grid());
    const next = { points: [...points, point], closed: false };
    const wrong = points.length > 1 && outlineOf(next, grid()).meetings.length > 0 &&
      !same(point, points[0]);
    sheet.preview(closed || hand.picked !== null ? [] : [...points.slice(-1), point]
      .map((each) => place(each, grid())), wrong);
  }, lifetime);
  sheet.drawing.addEventListener("pointerleave", () => {
    if (!cutting.begun()) {
      sheet.preview([], false);
    }
  }, lifetime);
}
