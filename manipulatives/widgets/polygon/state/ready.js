/**
 * Shapes that are ready to be traced, drawn stroke by stroke, or cut, as in Python's maths.
 *
 * @typedef {import("./paper.js").Grid} Grid
 * @typedef {import("./paper.js").Shape} Shape
 */
import SHAPES from "../../../data/shapes.json" with { type: "json" };
import { range, rounded } from "./paper.js";

const RADIUS = 320;
const NOTCH = (3 - Math.sqrt(5)) / 2;

/**
 * @param {Grid} grid
 * @returns {Record<string, Shape>} the shapes that are ready on a paper, by name
 */
export function readyShapes(grid) {
  /** @type {Record<string, number[][]>} */
  const points = { ...SHAPES.points[grid] };
  if (grid === "plain") {
    for (const [name, sides] of Object.entries(SHAPES.regular)) {
      points[name] = around(sides, 1);
    }
    points.star = around(10, NOTCH);
    points.pentagram = range(5).map((turn) => points.pentagon[(2 * turn) % 5]);
  }
  return Object.fromEntries(SHAPES.order.filter((name) => points[name]).map((name) => {
    const curve = name.endsWith("circle") ? { curve: name } : {};
    return [name, { points: points[name], closed: true, ...curve }];
  }));
}

/**
 * @param {number} many
 * @param {number} inward how far from the middle every second one is
 * @returns {number[][]} points around the middle of plain paper
 */
function around(many, inward) {
  return range(many).map((index) => {
    const turn = (2 * Math.PI * index) / many;
    const far = RADIUS * (index % 2 ? inward : 1);
    return [rounded(400 + far * Math.sin(turn)), rounded(400 - far * Math.cos(turn))];
  });
}
