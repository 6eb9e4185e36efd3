/**
 * What a finger, a button or a key does to the shape: points are put, picked, added and taken
 * away, strokes of the guide are drawn, cuts are made.
 */
import { NOTHING, betweenPoints, inserted, moved, putPoint, removed } from "./moves.js";
import { nearest, same } from "../exact/paper.js";
import { waysToShare } from "../exact/shares.js";
import { nearestPoint } from "./spots.js";
import { pointName } from "../words/tell.js";
import { strokes } from "../words/words.js";

/**
 * @typedef {import("../exact/paper.js").Grid} Grid
 * @typedef {import("../exact/paper.js").Shape} Shape
 * @typedef {import("../exact/paper.js").Spot} Spot
 * @typedef {import("./spots.js").CutPoint} CutPoint
 *
 * @typedef {object} Desk what is worked on, and with
 * @property {{ picked: number | null, stop: number, pen: Spot, said: string }} hand the point that
 *   goes where the paper is tapped, the point that the key Tab leads to, where the pen is, and the
 *   sentence of the last stroke, or what was wrong with the last tap
 * @property {import("../drawing/drawing.js").Sheet} sheet
 * @property {ReturnType<typeof import("./cutting.js").makeCutting>} cutting
 * @property {() => Shape} shape
 * @property {() => Grid} grid
 * @property {() => Shape | null} guide
 * @property {() => boolean} isCutting
 * @property {() => void} paint
 * @property {() => void} paintTools
 * @property {(next: Shape | string, sentence: string, shown?: string) => void} change go to another
 *   shape in one step and say a sentence, and show one; or say why not
 * @property {(sentence: string) => void} refuse show and say why nothing was done
 * @property {(sentence: string) => void} say
 * @property {(index: number | null) => void} focusOn a point, or the pen
 *
 * @typedef {ReturnType<typeof makeActs>} Acts
 */

/** @param {Desk} desk */
export function makeActs(desk) {
  const { hand, sheet, cutting, shape, grid, isCutting, change, focusOn } = desk;

  const acts = {
    /**
     * A point or the plus on a side was tapped.
     * @param {{ index: number, added: boolean }} taken
     */
    tap({ index, added }) {
      const { points, closed } = shape();
      if (added) {
        acts.insert(index - 1);
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
        acts.cut(nearestPoint(cutting.points(), spot));
      } else if (picked !== null) {
        const after = moved(shape(), picked, nearest(spot, grid()), grid());
        change(after, `${pointName(shape(), picked)}.`);
      } else {
        acts.putAt(nearest(spot, grid()));
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
        acts.insert(hand.picked);
      }
    },

    /** Take away the point that is picked, or the cut that was begun or made last. */
    remove() {
      const { cuts } = shape();
      if (!isCutting() && hand.picked !== null) {
        acts.removePoint(hand.picked);
      } else if (cutting.drop()) {
        desk.paint();
      } else if (isCutting() && cuts) {
        change(withCuts(shape(), cuts.slice(0, -1)), "The last cut is gone.");
      }
    },

    /** Take back the last point, or the last cut. */
    takeBack() {
      const { points: { length: many } } = shape();
      if (isCutting()) {
        acts.remove();
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
      desk.paintTools();
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

    /** @returns {import("../words/words.js").Stroke | undefined} the next stroke of the guide */
    nextStroke() {
      const guide = desk.guide();
      const all = guide ? strokes(guide, grid()) : [];
      const now = JSON.stringify(withCuts(shape()));
      const done = all.findIndex(({ shape: after }) => JSON.stringify(after) === now);
      return all[done + 1];
    },

    drawStroke() {
      const next = acts.nextStroke();
      if (next) {
        change(next.shape, next.say, next.say);
      }
    },
  };

  /** @param {number | null} index of the point that goes where the paper is tapped */
  function pick(index) {
    hand.picked = index;
    hand.said = "";
    hand.stop = index ?? hand.stop;
    desk.paint();
    const name = index === null ? "Let go." : `${pointName(shape(), index)}.`;
    desk.say(index === null ? name : `${name} Now tap where it goes.`);
  }

  return acts;
}

/**
 * @param {Shape} shape
 * @param {number[][][]} [cuts]
 * @returns {Shape} the shape with these cuts instead, or without any
 */
function withCuts({ points, closed, curve }, cuts = []) {
  return { points, closed, ...(curve ? { curve } : {}), ...(cuts.length ? { cuts } : {}) };
}
