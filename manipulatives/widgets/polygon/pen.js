/** Drawing and moving with keys: what a key does to the pen, and to a point that has the focus. */
import { moved, stepped } from "./state/moves.js";
import { nearest, place } from "./state/paper.js";
import { nearestPoint, pointToward } from "./state/spots.js";
import { cutName, placeName } from "./state/tell.js";

/**
 * @typedef {import("./actions.js").Work} Work
 * @typedef {import("./actions.js").Actions} Actions
 * @typedef {import("./state/paper.js").Grid} Grid
 */

const ARROW = /^(Shift\+)?(Arrow\w+)$/;
// How far a point goes with a key, and the pen, and the pen with Shift.
/** @type {Record<Grid, [number, number, number]>} */
const STEPS = { square: [1, 1, 3], triangle: [1, 1, 3], plain: [10, 20, 100] };

/**
 * The pen of those who draw with keys.
 * @param {Work} work
 * @param {Actions} actions
 * @param {() => void} roved the key Tab leads to another point now
 * @returns {{
 *   paint: (hidden: boolean) => void,
 *   key: (key: string) => boolean,
 *   pointKey: (index: number, key: string) => boolean,
 * }} show where it is, unless it has no use; use a key on the pen, or on a point, and say whether
 *   it means something
 */
export function makePen({ hand, sheet, cutting, shape, grid, isCutting, view }, actions, roved) {
  const { change, focusOn } = actions;

  /** @returns {number[]} the point of the paper where the pen is */
  function penPoint() {
    return nearest(hand.pen, grid());
  }

  function cutPoint() {
    return isCutting() ? nearestPoint(cutting.points(), hand.pen) : undefined;
  }

  /** @returns {string} where the pen is, in words */
  function where() {
    const through = cutPoint();
    return through ? cutName(shape(), through.point, grid()) : placeName(penPoint(), grid());
  }

  const pen = {
    /** @param {boolean} hidden */
    paint(hidden) {
      const through = cutPoint();
      sheet.pen.hidden = hidden || (isCutting() ? !through : shape().closed);
      sheet.movePen(through?.spot ?? place(penPoint(), grid()));
      sheet.pen.ariaLabel = `${isCutting() ? "Cut" : "Pen"}, ${where()}`;
    },

    /** @param {string} key */
    key(key) {
      const arrow = ARROW.exec(key);
      const [first] = shape().points;
      if (arrow) {
        lead(arrow[2], Boolean(arrow[1]));
      } else if (key === "Home" && first && !isCutting()) {
        hand.pen = place(first, grid());
        pen.paint(false);
        view.say("At the first point.");
      } else if (key === "Delete" || key === "Backspace") {
        actions.takeBack();
      } else if (key !== "Enter" && key !== " ") {
        return false;
      } else if (isCutting()) {
        actions.cut(cutPoint());
      } else {
        actions.putAt(penPoint());
      }
      return true;
    },

    /**
     * @param {number} index
     * @param {string} key
     */
    pointKey(index, key) {
      const arrow = ARROW.exec(key);
      const last = shape().points.length - 1;
      /** @type {Record<string, number>} */
      const ways = { ArrowRight: index + 1, ArrowDown: index + 1, ArrowLeft: index - 1,
        ArrowUp: index - 1, Home: 0, End: last };
      if (key in ways) {
        hand.stop = (ways[key] + last + 1) % (last + 1);
        roved();
        focusOn(hand.stop);
      } else if (arrow) {
        const [step] = STEPS[grid()];
        const point = stepped(shape().points[index], arrow[2], grid(), step);
        change(moved(shape(), index, point, grid()), placeName(point, grid()));
      } else if (key === "Enter" || key === " ") {
        actions.tap({ index, added: false });
      } else if (key === "Delete" || key === "Backspace") {
        actions.removePoint(index);
      } else if (key === "Insert" || key.endsWith("+")) {
        actions.insert(index);
      } else {
        return false;
      }
      return true;
    },
  };

  /**
   * @param {string} arrow
   * @param {boolean} further
   */
  function lead(arrow, further) {
    const [, small, large] = STEPS[grid()];
    const through = cutPoint();
    hand.pen = through
      ? pointToward(cutting.points(), through, arrow).spot
      : place(stepped(penPoint(), arrow, grid(), further ? large : small), grid());
    pen.paint(false);
    view.say(where());
  }

  return pen;
}
