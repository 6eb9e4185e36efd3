/**
 * What a finger, a button or a key does to the shape: points are put, picked, added and taken
 * away, strokes of the guide are drawn, cuts are made.
 */
import { NOTHING, betweenPoints, flipped, inserted, moved } from "./state/moves.js";
import { putPoint, removed, turned } from "./state/moves.js";
import { nearest, same } from "./state/paper.js";
import { waysToShare } from "./state/shares.js";
import { nearestPoint } from "./state/spots.js";
import { pointName } from "./state/tell.js";
import { strokes } from "./state/words.js";

/**
 * @typedef {import("./state/paper.js").Grid} Grid
 * @typedef {import("./state/paper.js").Shape} Shape
 * @typedef {import("./state/paper.js").Spot} Spot
 * @typedef {import("./state/spots.js").CutPoint} CutPoint
 *
 * @typedef {object} Hand
 * @property {number | null} picked the point that goes where the paper is tapped
 * @property {number} stop the point that the key Tab leads to
 * @property {Spot} pen where the pen is
 * @property {string} said the sentence of the last stroke, or what was wrong with the last tap
 *
 * @typedef {object} Work what is worked on, and with
 * @property {Hand} hand
 * @property {import("./drawing.js").Sheet} sheet
 * @property {import("./cutting.js").Cutting} cutting
 * @property {import("../shared/state/undoable.js").Undoable<Shape>} state
 * @property {() => Shape} shape
 * @property {() => Grid} grid
 * @property {() => Shape | null} guide
 * @property {() => boolean} isCutting
 * @property {() => boolean} isHeld whether a finger holds a point
 * @property {() => Shape | null} drop let go of all, and say what the shape was before
 * @property {import("./view.js").View} view
 *
 * @typedef {ReturnType<typeof makeActions>} Actions
 */

/** @param {Work} work */
export function makeActions(work) {
  const { hand, sheet, cutting, state, shape, grid, isCutting, view } = work;

  const actions = {
    /**
     * A point or the plus on a side was tapped.
     * @param {{ index: number, added: boolean }} taken
     */
    tap({ index, added }) {
      const { points, closed } = shape();
      if (added) {
        actions.insert(index - 1);
      } else if (!closed && index === 0 && points.length > 1) {
        change(putPoint(shape(), points[0]), "Closed.");
      } else {
        pick(index === hand.picked ? null : index);
      }
    },

    /**
     * The paper was tapped.
     * @param {Spot} spot
     */
    tapPaper(spot) {
      const { picked } = hand;
      // Keys go on where the finger was.
      hand.pen = spot;
      focusOn(picked);
      if (isCutting()) {
        actions.cut(nearestPoint(cutting.points(), spot));
      } else if (picked !== null) {
        const after = moved(shape(), picked, nearest(spot, grid()), grid());
        change(after, `${pointName(shape(), picked)}.`);
      } else {
        actions.putAt(nearest(spot, grid()));
      }
    },

    /** @param {number[]} point that is put, or closes the shape */
    putAt(point) {
      const { points: [first], points: { length: before } } = shape();
      const onPen = sheet.pen.matches(":focus");
      const closes = first && same(point, first);
      change(putPoint(shape(), point), closes ? "Closed." : `Point ${before + 1}.`);
      hand.stop = shape().closed ? 0 : shape().points.length - 1;
      if (shape().closed && onPen) {
        focusOn(0);
      }
    },

    /**
     * A new point on the side after a point; it is picked, to be put where it is wanted.
     * @param {number} index
     */
    insert(index) {
      const after = inserted(shape(), index, betweenPoints(shape(), index, grid()));
      change(after, "A new point.");
      if (typeof after !== "string") {
        pick(index + 1);
        focusOn(index + 1);
      }
    },

    /** @param {number} index of the point that is taken away */
    removePoint(index) {
      change(removed(shape(), index), "The point is gone.");
      const { points: { length: left } } = shape();
      focusOn(left ? Math.min(index, left - 1) : null);
    },

    add() {
      if (hand.picked !== null) {
        actions.insert(hand.picked);
      }
    },

    /** Take away the point that is picked, or the cut that was begun or made last. */
    remove() {
      const { cuts } = shape();
      if (!isCutting() && hand.picked !== null) {
        actions.removePoint(hand.picked);
      } else if (cutting.drop()) {
        view.paint();
      } else if (isCutting() && cuts) {
        change(withCuts(shape(), cuts.slice(0, -1)), "The last cut is gone.");
      }
    },

    /** Take back the last point, or the last cut. */
    takeBack() {
      const { points: { length: many } } = shape();
      if (isCutting()) {
        actions.remove();
      } else if (many) {
        change(removed(shape(), many - 1), "The last point is gone.");
      }
    },

    clear() {
      const cuts = isCutting() && shape().cuts;
      change(cuts ? withCuts(shape()) : NOTHING, cuts ? "No cuts." : "The paper is empty.");
    },

    /** @param {CutPoint | undefined} through */
    cut(through) {
      const after = through ? cutting.through(through) : "Draw a shape to cut.";
      change(after, "");
      view.paintTools();
    },

    /** @param {number} many the next way to cut into so many equal shares */
    share(many) {
      const ways = waysToShare(shape(), grid(), many);
      const now = JSON.stringify(shape().cuts);
      const next = ways.findIndex((cuts) => JSON.stringify(cuts) === now) + 1;
      change(ways.length
        ? withCuts(shape(), ways[next % ways.length])
        : "Draw a rectangle or a circle for that.", "");
    },

    /** @returns {import("./state/words.js").Stroke | undefined} the next stroke of the guide */
    nextStroke() {
      const guide = work.guide();
      const all = guide ? strokes(guide, grid()) : [];
      const now = JSON.stringify(withCuts(shape()));
      const done = all.findIndex(({ shape: after }) => JSON.stringify(after) === now);
      return all[done + 1];
    },

    drawStroke() {
      const next = actions.nextStroke();
      if (next) {
        change(next.shape, next.say, next.say);
      }
    },

    undo() {
      if (cutting.drop()) {
        view.paint();
      } else if (!work.isHeld()) {
        work.drop();
        if (state.undo()) {
          view.tell("Undone.");
        }
      }
    },

    reset() {
      work.drop();
      if (state.reset()) {
        view.tell("As it was at first.");
      }
    },

    turn() {
      change(turned(shape(), grid()), "Turned.");
    },

    flip() {
      change(flipped(shape(), grid()), "Turned over.");
    },

    /**
     * A point was taken hold of.
     * @param {import("./hold.js").Taken} taken
     */
    taken({ index, added }) {
      hand.stop = added ? hand.stop : index;
      hand.said = "";
      focusOn(added ? null : index);
    },

    /**
     * All is let go of.
     * @param {Shape} was the shape when the first point was taken
     * @param {import("./hold.js").Taken} taken
     */
    settle(was, { index, added }) {
      hand.picked = null;
      if (state.settle(was)) {
        hand.stop = index;
        focusOn(index);
        view.tell(added ? "A new point." : `${pointName(shape(), index)}.`);
      }
    },

    change,
    focusOn,
  };

  /**
   * Go to another shape in one step, or say why not.
   * @param {Shape | string} next
   * @param {string} sentence what is said then
   * @param {string} [shown] what stands below the paper then
   */
  function change(next, sentence, shown = "") {
    if (typeof next === "string") {
      view.refuse(next);
    } else if (!work.isHeld()) {
      hand.said = shown;
      hand.picked = null;
      cutting.drop();
      if (state.act(next)) {
        view.tell(sentence);
      } else {
        view.paint();
      }
    }
  }

  /** @param {number | null} index of a point, null for the pen */
  function focusOn(index) {
    const element = index === null ? sheet.pen : sheet.points()[index];
    if (element && !element.hidden) {
      element.focus({ preventScroll: true });
    }
  }

  /** @param {number | null} index of the point that goes where the paper is tapped */
  function pick(index) {
    hand.picked = index;
    hand.said = "";
    hand.stop = index ?? hand.stop;
    view.paint();
    const name = index === null ? "Let go." : `${pointName(shape(), index)}.`;
    view.say(index === null ? name : `${name} Now tap where it goes.`);
  }

  return actions;
}

/**
 * @param {Shape} shape
 * @param {number[][][]} [cuts]
 * @returns {Shape} the shape with these cuts instead, or without any
 */
function withCuts({ points, closed, curve }, cuts = []) {
  return { points, closed, ...(curve ? { curve } : {}), ...(cuts.length ? { cuts } : {}) };
}
