/**
 * What is true of a shape, as goals and mistakes ask for it: Python's words/shape_facts.py in the
 * browser.
 *
 * @typedef {import("./paper.js").Grid} Grid
 * @typedef {import("./paper.js").Shape} Shape
 * @typedef {import("./paper.js").Wording} Wording
 * @typedef {import("./look.js").Look} Look
 */
import { looked } from "./look.js";
import { isPentagram, kindsOf, namesOf } from "./names.js";
import { outlineOf } from "./outline.js";
import { alike, inner, place, range, same, way } from "./paper.js";

const HAND = 40;
// Straight sides, vertices, corners, right angles, equal sides, mirror lines.
/** @type {Record<string, (number | null)[]>} */
const CURVES = {
  "circle": [0, 0, 0, 0, 0, null],
  "half circle": [1, 0, 2, 0, 0, 1],
  "quarter circle": [2, 1, 3, 1, 2, 1],
};

/**
 * @param {Shape} shape
 * @param {Grid} grid
 * @param {Wording} wording
 * @param {Shape | null} [guide] what is to be traced
 * @param {Look} [look] the shape, looked at already
 * @returns {Facts}
 */
export function facts(shape, grid, wording, guide, look = looked(shape, grid)) {
  const found = shape.curve ? curved(shape, wording) : straight(shape, look, wording);
  const { shares } = look;
  const cut = shares && shares.many > 1 ? shares : null;
  return {
    ...found,
    shares: shares?.many ?? 0,
    equal_shares: cut && cut.equal,
    same_shape: cut && cut.alike,
    traced: guide ? traced(shape, guide, grid) : null,
  };
}

/**
 * @param {Shape} shape
 * @param {Wording} wording
 * @returns {Facts}
 */
function curved({ points, curve = "" }, wording) {
  const [sides, vertices, corners, rightAngles, equalSides, mirrorLines] = CURVES[curve];
  return {
    closed: true,
    sides,
    curved_sides: 1,
    vertices,
    corners,
    points: points.length,
    crossing: false,
    fault: null,
    name: curve,
    tips: 0,
    right_angles: rightAngles,
    equal_sides: equalSides,
    regular: false,
    convex: true,
    parallel: 0,
    mirror_lines: mirrorLines,
    ...kindsOf(null, 0, wording),
  };
}

/**
 * @param {Shape} shape
 * @param {Look} look
 * @param {Wording} wording
 * @returns {Facts}
 */
function straight(shape, { outline, found }, wording) {
  const { sides, corners: { length: corners } } = outline;
  return {
    closed: shape.closed,
    sides,
    curved_sides: 0,
    vertices: corners,
    corners,
    points: shape.points.length,
    crossing: outline.meetings.length > 0,
    fault: outline.fault,
    name: namesIn({ outline, found }, wording)[0] ?? null,
    tips: found && found.tips.length,
    right_angles: found && found.right.length,
    equal_sides: found && (found.equal[0]?.length ?? 0),
    regular: found && found.regular,
    convex: found && found.tips.length === sides,
    parallel: found && found.parallel.length,
    mirror_lines: found && found.mirrors.length,
    ...kindsOf(found, sides, wording),
  };
}

/**
 * @param {Shape} shape
 * @param {Grid} grid
 * @param {Wording} wording
 * @param {Look} [look] the shape, looked at already
 * @returns {string[]} everything that a shape is called, the most particular name first
 */
export function called(shape, grid, wording, look = looked(shape, grid)) {
  return shape.curve ? [shape.curve] : namesIn(look, wording);
}

/**
 * @param {Pick<Look, "outline" | "found">} look
 * @param {Wording} wording
 * @returns {string[]}
 */
function namesIn({ outline, found }, wording) {
  if (!found) {
    return isPentagram(outline) ? ["pentagram"] : [];
  }
  return namesOf(found, outline.sides, wording);
}

/**
 * @param {Shape} shape
 * @param {Shape} guide
 * @param {Grid} grid
 * @returns {boolean} whether it is the shape that was to be traced, wherever it was begun
 */
export function traced(shape, guide, grid) {
  const near = (/** @type {number[]} */ one, /** @type {number[]} */ other) =>
    isNear(one, other, grid);
  if (shape.closed !== guide.closed || shape.curve !== guide.curve) {
    return false;
  }
  if (shape.curve) {
    const [[a, b], [c, d]] = [shape.points, guide.points];
    const [one, other] = [way(a, b), way(c, d)];
    const right = shape.curve === "circle"
      ? alike(inner(one, one, grid), inner(other, other, grid), grid)
      : near(b, d);
    return near(a, c) && right;
  }
  const [ours, theirs] = [shape, guide].map((each) => outlineOf(each, grid).turns);
  const many = ours.length;
  const shifts = shape.closed ? range(many) : [0];
  return many === theirs.length && (!many || [theirs, [...theirs].reverse()].some((path) =>
    shifts.some((shift) => ours.every((turn, at) => near(turn, path[(at + shift) % many])))));
}

/**
 * @param {number[]} one
 * @param {number[]} other
 * @param {Grid} grid
 * @returns {boolean} whether a hand that meant the one may have drawn the other
 */
function isNear(one, other, grid) {
  if (grid !== "plain") {
    return same(one, other);
  }
  const [{ x: a, y: b }, { x: c, y: d }] = [place(one, grid), place(other, grid)];
  return (a - c) ** 2 + (b - d) ** 2 <= HAND * HAND;
}
