/** A cut on its way: point after point, from edge to edge. */
import { onCircle, onEdges } from "./state/cuts.js";
import { cutBy, sharesOf } from "./state/shares.js";
import { cutPoints } from "./state/spots.js";

/**
 * @typedef {import("./state/paper.js").Grid} Grid
 * @typedef {import("./state/paper.js").Shape} Shape
 * @typedef {import("./state/spots.js").CutPoint} CutPoint
 * @typedef {ReturnType<typeof makeCutting>} Cutting
 */

const MOST = 12;
const ON = "A cut ends on an edge.";

/**
 * @param {import("./drawing.js").Sheet} sheet
 * @param {() => { shape: Shape, grid: Grid }} now
 * @returns {{
 *   begun: () => boolean,
 *   points: () => CutPoint[],
 *   show: (on: boolean) => void,
 *   drop: () => boolean,
 *   through: (point: CutPoint) => Shape | string,
 * }} whether a cut has begun; where it can go through; show that, or not; forget it, and say
 *   whether there was one; go through a point, and answer with the shape that was cut, or with what
 *   to do next
 */
export function makeCutting(sheet, now) {
  /** @type {CutPoint[]} */
  let path = [];

  function preview() {
    sheet.preview(path.map(({ spot }) => spot), false);
  }

  const cutting = {
    begun: () => path.length > 0,
    points() {
      const { shape, grid } = now();
      return cutPoints(shape, grid);
    },
    /** @param {boolean} on */
    show(on) {
      sheet.showSpots(on ? cutting.points().map(({ spot }) => spot) : []);
    },
    drop() {
      const any = path.length > 0;
      path = [];
      preview();
      return any;
    },
    /** @param {CutPoint} point */
    through(point) {
      const { shape, grid } = now();
      const rings = sharesOf(shape, grid)?.rings ?? [];
      const cuts = shape.cuts ?? [];
      if (cuts.length >= MOST) {
        return "There are as many cuts as can be.";
      }
      const next = [...path, point];
      const cut = next.map((each) => each.point);
      if (next.length === 1) {
        const at = shape.curve ? onCircle(point.point) : point.point;
        if (!onEdges(at, rings)) {
          return "A cut begins on an edge.";
        }
        path = next;
        preview();
        return "Now tap where the cut goes.";
      }
      const after = cutBy(shape, rings, cut);
      if (after === ON) {
        path = next;
        preview();
        return "Go on, to an edge.";
      }
      if (typeof after === "string") {
        return after;
      }
      cutting.drop();
      return after.length > rings.length
        ? { ...shape, cuts: [...cuts, cut] }
        : "A cut goes through the inside.";
    },
  };
  return cutting;
}
