/**
 * What is marked on a shape: right angles, equal sides, parallel sides, mirror lines, numbers, and
 * where sides meet by mistake. Lengths are in hundredths of a space, the same as in Python's
 * drawings/polygon_marks.py.
 *
 * @typedef {import("./paper.js").Grid} Grid
 * @typedef {import("./paper.js").Shape} Shape
 * @typedef {import("./paper.js").Spot} Spot
 * @typedef {{ role: string, points: Spot[], text: string }} Mark a chain of straight lines; of a
 *   crossing and a number only where it is
 */
import SIZES from "../../../data/shape_marks.json" with { type: "json" };
import { DIRECTIONS } from "./cuts.js";
import { looked } from "./look.js";
import { sidesOf } from "./outline.js";
import { pairs, place, range } from "./paper.js";

const MOST_GROUPS = 4;
const FOLDED = 1e-6;

/**
 * @param {Shape} shape
 * @param {Grid} grid
 * @param {string[]} shown of right_angles, equal_sides, parallel, mirror_lines and crossing
 * @param {string} counted what is numbered: "sides", "vertices" or ""
 * @param {import("./look.js").Look} [look] the shape, looked at already
 * @returns {Mark[]}
 */
export function marksOf(shape, grid, shown, counted, look = looked(shape, grid)) {
  if (shape.curve) {
    return onCurve(shape, grid, shown);
  }
  const { outline, found } = look;
  const spots = outline.turns.map((turn) => place(turn, grid));
  const marks = numbers(spots, shape.closed, counted);
  if (shown.includes("crossing")) {
    const sides = sidesOf(spots.map(({ x, y }) => [x, y]), shape.closed);
    for (const { one, other } of outline.meetings) {
      marks.push(mark("crossing", [contact(...sides[one], ...sides[other])]));
    }
  }
  return found ? [...marks, ...onPolygon(spots, found, shown)] : marks;
}

/**
 * @param {Spot[]} spots
 * @param {import("./properties.js").Properties} found
 * @param {string[]} shown
 * @returns {Mark[]}
 */
function onPolygon(spots, found, shown) {
  const many = spots.length;
  /** @type {Mark[]} */
  const marks = [];
  if (shown.includes("mirror_lines")) {
    marks.push(...found.mirrors.map((index) => mirror(spots, index)));
  }
  if (shown.includes("right_angles")) {
    marks.push(...found.right.map((at) =>
      right(spots[at], spots[(at + many - 1) % many], spots[(at + 1) % many])));
  }
  const sides = pairs(spots);
  if (shown.includes("equal_sides")) {
    found.equal.slice(0, MOST_GROUPS).forEach((group, index) => {
      marks.push(...group.flatMap((side) => ticks(sides[side], index + 1)));
    });
  }
  if (shown.includes("parallel")) {
    parallelGroups(found).slice(0, MOST_GROUPS).forEach((group, index) => {
      marks.push(...group.flatMap((side) => arrows(sides[side], index + 1, sides[group[0]])));
    });
  }
  return marks;
}

/**
 * @param {Shape} shape
 * @param {Grid} grid
 * @param {string[]} shown
 * @returns {Mark[]}
 */
function onCurve({ points, curve }, grid, shown) {
  const [start, end] = points.map((point) => place(point, grid));
  const [across, down] = [end.x - start.x, end.y - start.y];
  const other = { x: start.x - down, y: start.y + across };
  const [folds, angles, lengths] = ["mirror_lines", "right_angles", "equal_sides"]
    .map((name) => shown.includes(name));
  if (curve === "half circle") {
    const centre = middle(start, end);
    const top = { x: centre.x + down / 2, y: centre.y - across / 2 };
    return folds ? [line(centre, top)] : [];
  }
  if (curve === "circle") {
    return [];
  }
  const turn = Math.sqrt(0.5);
  const arc = { x: start.x + (across - down) * turn, y: start.y + (across + down) * turn };
  return [
    ...(folds ? [line(start, arc)] : []),
    ...(angles ? [right(start, end, other)] : []),
    ...(lengths ? [...ticks([start, end], 1), ...ticks([start, other], 1)] : []),
  ];
}

/**
 * @param {string} role
 * @param {Spot[]} points
 * @param {string} [text]
 * @returns {Mark}
 */
function mark(role, points, text = "") {
  return { role, points, text };
}

/**
 * @param {Spot} corner
 * @param {Spot} before
 * @param {Spot} after
 * @returns {Mark}
 */
function right(corner, before, after) {
  const [one, other] = [unit(corner, before), unit(corner, after)];
  const shorter = Math.min(distance(corner, before), distance(corner, after));
  const far = Math.min(SIZES.right.side, SIZES.right.share * shorter);
  const side = on(corner, one, far);
  return mark("right", [side, on(side, other, far), on(corner, other, far)]);
}

/**
 * @param {[Spot, Spot]} side
 * @param {number} many
 * @returns {Mark[]}
 */
function ticks([start, end], many) {
  const [along, scale] = [unit(start, end), scaleOf(start, end)];
  const sideways = { x: -along.y, y: along.x };
  const { half, gap, along: shift } = SIZES.equal;
  const base = on(middle(start, end), along, shift * distance(start, end));
  return range(many).map((at) => {
    const spot = on(base, along, (at - (many - 1) / 2) * gap * scale);
    return mark("equal", [on(spot, sideways, -half * scale), on(spot, sideways, half * scale)]);
  });
}

/**
 * @param {[Spot, Spot]} side
 * @param {number} many
 * @param {[Spot, Spot]} first of the parallel sides, whose direction the others take
 * @returns {Mark[]}
 */
function arrows([start, end], many, first) {
  const leading = unit(...first);
  const there = unit(start, end);
  const sign = there.x * leading.x + there.y * leading.y < 0 ? -1 : 1;
  const along = { x: sign * there.x, y: sign * there.y };
  const sideways = { x: -along.y, y: along.x };
  const scale = scaleOf(start, end);
  const { half, long, gap } = SIZES.parallel;
  const base = on(middle(start, end), there, SIZES.parallel.along * distance(start, end));
  return range(many).map((at) => {
    const tip = on(base, along, (at - (many - 1) / 2) * gap * scale);
    const tail = on(tip, along, -long * scale);
    const [one, other] = [-half, half].map((off) => on(tail, sideways, off * scale));
    return mark("parallel", [one, tip, other]);
  });
}

/**
 * @param {import("./properties.js").Properties} found
 * @returns {number[][]} parallel sides together, however many there are of one direction
 */
function parallelGroups({ parallel }) {
  /** @type {number[][]} */
  const groups = [];
  for (const pair of parallel) {
    const home = groups.find((group) => pair.some((side) => group.includes(side)));
    if (home) {
      home.push(...pair.filter((side) => !home.includes(side)));
    } else {
      groups.push([...pair]);
    }
  }
  return groups;
}

/**
 * @param {Spot[]} spots
 * @param {number} index
 * @returns {Mark}
 */
function mirror(spots, index) {
  const many = spots.length;
  const middles = spots.map((spot, at) => middle(spot, spots[(index - at + many) % many]));
  const one = farthest(middles[0], middles);
  return line(one, farthest(one, middles));
}

/**
 * @param {Spot} from
 * @param {Spot[]} spots
 * @returns {Spot}
 */
function farthest(from, spots) {
  const far = spots.map((spot) => distance(from, spot));
  return spots[far.indexOf(Math.max(...far))];
}

/**
 * @param {Spot} one
 * @param {Spot} other
 * @returns {Mark}
 */
function line(one, other) {
  const along = unit(one, other);
  const { beyond } = SIZES.mirror;
  return mark("mirror", [on(one, along, -beyond), on(other, along, beyond)]);
}

/**
 * @param {number[]} a
 * @param {number[]} b
 * @param {number[]} c
 * @param {number[]} d
 * @returns {Spot} where the side from a to b and the side from c to d meet by mistake
 */
function contact(a, b, c, d) {
  const area = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0]);
  if (area) {
    const share = ((c[0] - a[0]) * (d[1] - c[1]) - (c[1] - a[1]) * (d[0] - c[0])) / area;
    return { x: a[0] + share * (b[0] - a[0]), y: a[1] + share * (b[1] - a[1]) };
  }
  const along = [a, b, c, d].sort((one, other) => one[0] - other[0] || one[1] - other[1]);
  return { x: (along[1][0] + along[2][0]) / 2, y: (along[1][1] + along[2][1]) / 2 };
}

/**
 * @param {Spot[]} spots
 * @param {boolean} closed
 * @param {string} counted
 * @returns {Mark[]} numbers beside the sides or the corners, outside of a polygon
 */
function numbers(spots, closed, counted) {
  const areas = pairs(spots).map(([one, other]) => one.x * other.y - one.y * other.x);
  const area = areas.reduce((sum, each) => sum + each, 0);
  // Less than one is no area at all, but a trace of rounding.
  const turn = area < -1 ? -1 : 1;
  const returns = closed && spots.length > 2;
  const sides = returns ? pairs(spots) : pairs(spots).slice(0, -1);
  const outward = sides.map(([start, end]) => {
    const along = unit(start, end);
    return { x: along.y * turn, y: -along.x * turn };
  });
  /** @type {Spot[]} */
  let places = [];
  if (counted === "sides") {
    places = sides.map((side, at) => on(middle(...side), outward[at], SIZES.number.side));
  } else if (counted === "vertices" && sides.length) {
    const last = outward.length - 1;
    places = spots.map((spot, at) => {
      const before = outward[at - 1] ?? outward[returns ? last : 0];
      return on(spot, halfway(before, outward[at] ?? outward[last]), SIZES.number.corner);
    });
  }
  return places.map((spot, at) => mark("number", [spot], String(at + 1)));
}

/**
 * @param {Spot} one
 * @param {Spot} other
 * @returns {Spot} the direction in the middle of two
 */
function halfway(one, other) {
  const [x, y] = [one.x + other.x, one.y + other.y];
  const far = Math.hypot(x, y);
  return far > FOLDED ? { x: x / far, y: y / far } : one;
}

/**
 * @param {Spot} one
 * @param {Spot} other
 * @returns {number}
 */
export function distance(one, other) {
  return Math.hypot(other.x - one.x, other.y - one.y);
}

/**
 * @param {Spot} one
 * @param {Spot} other
 * @returns {Spot}
 */
export function middle(one, other) {
  return { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 };
}

/**
 * @param {Spot} start
 * @param {Spot} end
 * @returns {Spot} a step of length 1 from one place towards another
 */
function unit(start, end) {
  const far = distance(start, end);
  return { x: (end.x - start.x) / far, y: (end.y - start.y) / far };
}

/**
 * @param {Spot} start
 * @param {Spot} step
 * @param {number} far
 * @returns {Spot}
 */
function on(start, step, far) {
  return { x: start.x + step.x * far, y: start.y + step.y * far };
}

/**
 * @param {Spot} start
 * @param {Spot} end
 * @returns {number}
 */
function scaleOf(start, end) {
  return Math.min(1, distance(start, end) / SIZES.equal.full);
}

/**
 * @param {Shape} shape
 * @param {Grid} grid
 * @param {number[]} point of a cut
 * @returns {Spot} where it is
 */
export function cutSpot({ points, curve }, grid, [across, down]) {
  if (!curve) {
    return place([across, down], grid);
  }
  const [centre, edge] = points.map((point) => place(point, grid));
  const turn = (2 * Math.PI * across) / DIRECTIONS;
  const far = distance(centre, edge) * down;
  return { x: centre.x + far * Math.sin(turn), y: centre.y - far * Math.cos(turn) };
}
