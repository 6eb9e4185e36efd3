/**
 * Shapes that are ready to be traced, drawn stroke by stroke, or cut: Python's
 * maths/ready_shapes.py in the browser.
 *
 * @typedef {import("./paper.js").Grid} Grid
 * @typedef {import("./paper.js").Shape} Shape
 */
import { range, rounded } from "./paper.js";

const RADIUS = 320;
const NOTCH = (3 - Math.sqrt(5)) / 2;
/** @type {Record<string, number>} */
const REGULAR = { triangle: 3, pentagon: 5, hexagon: 6, heptagon: 7, octagon: 8 };
const ORDER = [
  "triangle", "right triangle", "square", "rectangle", "rhombus", "parallelogram", "trapezoid",
  "kite", "pentagon", "hexagon", "heptagon", "octagon", "star", "pentagram", "circle",
  "half circle", "quarter circle",
];
// The numbers of the points one after the other.
/** @type {Record<Grid, Record<string, string>>} */
const POINTS = {
  square: {
    "triangle": "4 1 7 7 1 7",
    "right triangle": "1 1 7 7 1 7",
    "square": "2 2 6 2 6 6 2 6",
    "rectangle": "1 2 7 2 7 6 1 6",
    "rhombus": "4 1 6 4 4 7 2 4",
    "parallelogram": "3 2 7 2 5 6 1 6",
    "trapezoid": "3 2 5 2 7 6 1 6",
    "kite": "4 0 6 3 4 8 2 3",
    "pentagon": "4 1 7 3 6 7 2 7 1 3",
    "hexagon": "2 1 6 1 8 4 6 7 2 7 0 4",
    "octagon": "3 1 5 1 7 3 7 5 5 7 3 7 1 5 1 3",
    "star": "4 0 5 3 8 3 6 5 7 8 4 6 1 8 2 5 0 3 3 3",
    "pentagram": "4 0 7 8 0 3 8 3 1 8",
    "circle": "4 4 4 1",
    "half circle": "1 5 7 5",
    "quarter circle": "2 6 2 2",
  },
  triangle: {
    "triangle": "4 0 4 6 -2 6",
    "right triangle": "1 2 3 6 -1 6",
    "rectangle": "0 2 6 2 4 6 -2 6",
    "rhombus": "0 2 4 2 4 6 0 6",
    "parallelogram": "0 2 5 2 5 5 0 5",
    "trapezoid": "2 2 5 2 5 5 -1 5",
    "kite": "4 0 5 2 0 8 1 2",
    "pentagon": "4 0 5 3 3 6 -1 6 0 3",
    "hexagon": "2 1 5 1 5 4 2 7 -1 7 -1 4",
    "star": "4 0 4 2 6 2 4 4 4 6 2 6 0 8 0 6 -2 6 0 4 0 2 2 2",
    "pentagram": "4 0 3 6 0 3 5 3 -1 6",
    "circle": "2 4 5 4",
    "half circle": "-1 4 5 4",
    "quarter circle": "-1 6 1 2",
  },
  plain: {
    "right triangle": "150 150 650 650 150 650",
    "square": "160 160 640 160 640 640 160 640",
    "rectangle": "100 160 700 160 700 640 100 640",
    "rhombus": "400 100 600 400 400 700 200 400",
    "parallelogram": "250 220 730 220 550 580 70 580",
    "trapezoid": "280 200 520 200 700 600 100 600",
    "kite": "400 60 600 280 400 740 200 280",
    "circle": "400 400 400 100",
    "half circle": "100 520 700 520",
    "quarter circle": "180 620 180 160",
  },
};

/**
 * @param {Grid} grid
 * @returns {Record<string, Shape>} the shapes that are ready on a paper, by name
 */
export function readyShapes(grid) {
  /** @type {Record<string, number[][]>} */
  const points = {};
  for (const [name, text] of Object.entries(POINTS[grid])) {
    const numbers = text.split(" ").map(Number);
    points[name] = range(numbers.length / 2).map((at) => numbers.slice(2 * at, 2 * at + 2));
  }
  if (grid === "plain") {
    for (const [name, sides] of Object.entries(REGULAR)) {
      points[name] = around(sides, 1);
    }
    points.star = around(10, NOTCH);
    points.pentagram = range(5).map((turn) => points.pentagon[(2 * turn) % 5]);
  }
  return Object.fromEntries(ORDER.filter((name) => points[name]).map((name) => {
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
