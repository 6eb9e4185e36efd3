/**
 * What is said of a shape, as Python's words/shape_remarks.py says it, and of the strokes that
 * draw it, as words/shape_strokes.py does.
 *
 * @typedef {import("./paper.js").Grid} Grid
 * @typedef {import("./paper.js").Shape} Shape
 * @typedef {import("./paper.js").Wording} Wording
 * @typedef {import("./look.js").Look} Look
 * @typedef {{ shape: Shape, say: string }} Stroke
 */
import SHAPE_WORDS from "../../../data/shape_words.json" with { type: "json" };
import { looked } from "./look.js";
import { inWords, isPentagram, isStar } from "./names.js";
import { outlineOf } from "./outline.js";
import { range, way } from "./paper.js";

/** @type {Record<string, any>} */
const WORDS = SHAPE_WORDS;

/**
 * @param {Shape} shape
 * @param {Grid} grid
 * @param {Wording} wording
 * @param {Look} [look] the shape, looked at already
 * @returns {string | null} what a pupil should hear about a shape
 */
export function remark(shape, grid, wording, look = looked(shape, grid)) {
  const { outline, shares } = look;
  if (shares && shares.many > 1) {
    return sharesInWords(shares, wording);
  }
  if (shape.curve) {
    return WORDS.curves[shape.curve];
  }
  return trouble(outline, shape) ?? noVertices(outline) ?? star(look);
}

/**
 * @param {import("./outline.js").Outline} outline
 * @param {Shape} shape
 * @returns {string | null}
 */
function trouble(outline, { points, closed }) {
  if (outline.fault === "few") {
    return WORDS.few[new Set(points.map(String)).size];
  }
  if (isPentagram(outline)) {
    return "A pentagram: five strokes that cross. It is no polygon.";
  }
  return outline.fault && ((closed && WORDS.closed[outline.fault]) || WORDS.open[outline.fault]);
}

/**
 * @param {import("./outline.js").Outline} outline
 * @returns {string | null}
 */
function noVertices({ repeated, straight: { length: many } }) {
  if (repeated.length) {
    return "Two points in one place count once.";
  }
  if (many === 1) {
    return "One point is on a straight side: no vertex.";
  }
  return many ? `${many} points are on straight sides: no vertices.` : null;
}

/**
 * @param {Look} look
 * @returns {string | null}
 */
function star({ outline: { sides }, found }) {
  return found && isStar(found, sides)
    ? `Star: ${sides} sides, ${sides} vertices, ${found.tips.length} of them points.`
    : null;
}

/**
 * @param {import("./shares.js").Shares} shares
 * @param {Wording} wording
 * @returns {string}
 */
export function sharesInWords({ many, equal, alike }, { vocabulary }) {
  if (!equal) {
    return `${many} shares that are not equal.`;
  }
  const called = WORDS.shares[vocabulary][many];
  const parts = `${many} equal shares${called ? `: ${called}` : ""}.`;
  return alike ? parts : `${parts} Equal, but not alike in shape.`;
}

/**
 * @param {Shape} shape
 * @param {Grid} grid
 * @param {Wording} wording
 * @param {Look} [look] the shape, looked at already
 * @returns {string | null} where books differ about a shape, for teachers
 */
export function teachersNote(shape, grid, wording, look = looked(shape, grid)) {
  if (shape.curve === "circle") {
    return "Some books say that a circle has one curved side. Here straight sides are counted.";
  }
  if (shape.curve) {
    return "Some books call the corners beside a curved side vertices. Here a vertex is where " +
      "two straight sides meet.";
  }
  if (isPentagram(look.outline)) {
    return "A polygon's sides do not cross. The outline of this star is one: it has ten sides " +
      "and ten vertices, five of them points.";
  }
  if (!look.found?.parallelogram) {
    return null;
  }
  const name = inWords("trapezoid", wording);
  return wording.trapezoid === "inclusive"
    ? `By the other definition this is no ${name}, since both pairs of sides are parallel.`
    : `By the other definition this is a ${name}, too, since it has parallel sides.`;
}

/**
 * @param {Shape} shape
 * @param {Grid} grid
 * @returns {Stroke[]} the strokes that draw a shape
 */
export function strokes(shape, grid) {
  if (shape.curve) {
    return curved(shape, grid);
  }
  const outline = outlineOf(shape, grid);
  const many = shape.points.length;
  if (!many) {
    return [];
  }
  const first = shape.closed ? outline.corners[0] : 0;
  const order = range(many).map((at) => (at + first) % many)
    .filter((index) => !outline.repeated.includes(index));
  const points = order.map((index) => shape.points[index]);
  const done = [{ shape: open(points.slice(0, 1)), say: "Begin here, with the first point." }];
  let side = 0;
  for (let at = 1; at < points.length; at += 1) {
    const turns = outline.corners.includes(order[at - 1]);
    side += Number(turns);
    const chain = open(points.slice(0, at + 1));
    const words = stepInWords(way(points[at - 1], points[at]), grid);
    const say = `Side ${side}${turns ? "" : " goes on"}: ${words}.`;
    done.push({ shape: chain, say: say + crossing(chain, grid) });
  }
  if (shape.closed && points.length > 1) {
    side += Number(outline.corners.includes(order[order.length - 1]));
    done.push({ shape: { points, closed: true }, say: `Side ${side}: back to the first point.` });
  }
  return done;
}

/**
 * @param {number[][]} points
 * @returns {Shape}
 */
function open(points) {
  return { points, closed: false };
}

/**
 * @param {Shape} shape
 * @param {Grid} grid
 * @returns {Stroke[]}
 */
function curved({ points, curve }, grid) {
  const whole = { points, closed: true, curve };
  const begun = open(points.slice(0, 1));
  if (curve === "circle") {
    return [
      { shape: begun, say: "Begin with the centre." },
      { shape: whole, say: "All around, always as far from the centre." },
    ];
  }
  return [
    { shape: begun, say: "Begin here, with the first corner." },
    { shape: open(points), say: `Side 1: ${stepInWords(way(points[0], points[1]), grid)}.` },
    {
      shape: whole,
      say: curve === "half circle"
        ? "The curved side goes back to the first corner."
        : "The curved side, then side 2 straight back.",
    },
  ];
}

/**
 * @param {Shape} chain
 * @param {Grid} grid
 * @returns {string} what is added when the newest side crosses one before it
 */
function crossing(chain, grid) {
  const { meetings, corners } = outlineOf(chain, grid);
  const newest = corners.length - 2;
  const found = meetings.some(({ kind, other }) => kind === "crossing" && other === newest);
  return found ? " It crosses." : "";
}

/**
 * @param {number[]} step
 * @param {Grid} grid
 * @returns {string} where a step goes, in dots where there are any
 */
export function stepInWords([across, down], grid) {
  if (grid === "plain") {
    return direction(across, down);
  }
  const parts = grid === "square"
    ? [[across, "right", "left"], [down, "down", "up"]]
    : onTriangles(across, down);
  return parts
    .filter(([many]) => many)
    .map(([many, on, back]) => `${Math.abs(Number(many))} ${Number(many) > 0 ? on : back}`)
    .join(", ");
}

/**
 * @param {number} across
 * @param {number} down
 * @returns {string}
 */
function direction(across, down) {
  const level = across > 0 ? "to the right" : "to the left";
  const upright = down > 0 ? "down" : "up";
  if (5 * Math.abs(down) <= 2 * Math.abs(across)) {
    return level;
  }
  return 5 * Math.abs(across) <= 2 * Math.abs(down)
    ? `straight ${upright}`
    : `${upright} and ${level}`;
}

/**
 * A step as steps in two of the six directions that are next to each other.
 * @param {number} across
 * @param {number} down
 * @returns {(number | string)[][]} how many, and in which direction, or in which other way
 */
function onTriangles(across, down) {
  const leaning = ["down right", "up left"];
  if (across * down >= 0) {
    return [[across, "right", "left"], [down, ...leaning]];
  }
  // The sideways part is counted downward, like down itself.
  const sideways = Math.sign(down) * Math.min(Math.abs(across), Math.abs(down));
  return [
    [across + sideways, "right", "left"],
    [sideways, "down left", "up right"],
    [down - sideways, ...leaning],
  ];
}
