/**
 * What is true of a polygon: its angles, its sides, and the lines it can be folded on. Python's
 * maths/shapes/properties.py in the browser, which says why on plain paper some sizes count as
 * equal.
 *
 * @typedef {import("./paper.js").Grid} Grid
 *
 * @typedef {object} Properties corners and sides by their numbers, from 0
 * @property {number[]} tips corners that stick out
 * @property {number[]} right corners with a right angle
 * @property {number[][]} equal sides that are equally long, in groups, the largest first
 * @property {number[][]} parallel pairs of parallel sides
 * @property {number[]} mirrors mirror line k swaps corner i with corner k - i
 * @property {boolean} regular
 * @property {boolean} parallelogram
 * @property {boolean} kite
 *
 * @typedef {ReturnType<typeof measure>} Measured
 */
import { alike, cross, inner, nearNought, pairs, range, way } from "./paper.js";

/**
 * @param {number[][]} polygon its corners in order around it
 * @param {Grid} grid
 * @returns {Properties}
 */
export function propertiesOf(polygon, grid) {
  const measured = measure(polygon, grid);
  if (polygon.length > 4) {
    return manySided(measured);
  }
  return polygon.length === 3 ? triangle(measured) : quadrilateral(measured);
}

/**
 * @param {number[][]} polygon
 * @param {Grid} grid
 */
function measure(polygon, grid) {
  const many = polygon.length;
  const steps = pairs(polygon).map(([start, end]) => way(start, end));
  const before = (/** @type {number} */ at) => (at + many - 1) % many;
  const area = pairs(polygon).reduce((sum, [one, other]) => sum + cross(one, other), 0);
  const square = (/** @type {number[]} */ step) => inner(step, step, grid);
  return {
    many,
    grid,
    steps,
    squares: steps.map(square),
    apart: polygon.map((one) => polygon.map((other) => square(way(one, other)))),
    tips: range(many).filter((at) => cross(steps[before(at)], steps[at]) > 0 === area > 0),
  };
}

/**
 * @param {Measured} measured
 * @returns {number[]} corners with a right angle, the one nearest to it first
 */
function rightAngles({ tips, steps, squares, many, grid }) {
  return tips
    .map((at) => {
      const last = (at + many - 1) % many;
      const product = inner(steps[last], steps[at], grid);
      return { at, product, both: squares[last] * squares[at] };
    })
    .filter(({ product, both }) => nearNought(product, both, grid))
    .sort((a, b) => a.product ** 2 / a.both - b.product ** 2 / b.both || a.at - b.at)
    .map(({ at }) => at);
}

/**
 * @param {Measured} measured
 * @returns {number[][]} pairs of parallel sides, the most nearly parallel first
 */
function parallels({ many, steps, squares, grid }) {
  return combinations(many)
    .filter(([one, other]) => other - one > 1 && other - one < many - 1)
    .map((pair) => {
      const [one, other] = pair;
      return { pair, product: 2 * cross(steps[one], steps[other]),
        both: squares[one] * squares[other] };
    })
    .filter(({ product, both }) => nearNought(product, both, grid))
    .sort((a, b) => a.product ** 2 / a.both - b.product ** 2 / b.both || inOrder(a.pair, b.pair))
    .map(({ pair }) => pair);
}

/**
 * @param {Measured} measured
 * @returns {number[][]} sides in groups of equal length
 */
function equalSides({ many, squares, grid }) {
  let left = range(many).sort((a, b) => squares[a] - squares[b] || a - b);
  /** @type {number[][]} */
  const groups = [];
  for (;;) {
    /** @type {number[]} */
    let longest = [];
    left.forEach((side, start) => {
      const run = left.slice(start).filter((each) => alike(squares[side], squares[each], grid));
      longest = run.length > longest.length ? run : longest;
    });
    if (longest.length < 2) {
      return groups;
    }
    const group = longest;
    groups.push([...group].sort((a, b) => a - b));
    left = left.filter((side) => !group.includes(side));
  }
}

/**
 * @param {Measured} measured
 * @returns {number[]} mirror lines that leave all distances between corners as they are
 */
function mirrorLines({ many, apart, grid }) {
  const all = combinations(many);
  return range(many).filter((line) => all.every(([one, other]) =>
    alike(apart[one][other], apart[(line - one + many) % many][(line - other + many) % many],
      grid)));
}

/**
 * @param {Measured} measured
 * @returns {Properties}
 */
function triangle(measured) {
  const equal = equalSides(measured);
  const regular = equal[0]?.length === 3;
  let mirrors = regular ? [0, 1, 2] : [];
  if (equal.length && !regular) {
    const [one, other] = equal[0];
    mirrors = [(2 * (other - one === 1 ? other : one)) % 3];
  }
  const right = regular ? [] : rightAngles(measured).slice(0, 1);
  return { ...plain(measured), right, equal, mirrors, regular };
}

/**
 * @param {Measured} measured
 * @returns {Properties}
 */
function quadrilateral(measured) {
  const { steps: [[a, b], , [c, d]], squares, grid } = measured;
  const gap = inner([a + c, b + d], [a + c, b + d], grid);
  if (grid === "plain" ? 400 * gap > Math.min(...squares) : gap) {
    return otherQuadrilateral(measured);
  }
  const right = rightAngles(measured).sort((one, other) => one - other);
  const rectangle = right.length === 4;
  const rhombus = equalSides(measured)[0]?.length === 4;
  return {
    ...plain(measured),
    right: rectangle ? right : [],
    equal: rhombus ? [[0, 1, 2, 3]] : [[0, 2], [1, 3]],
    parallel: [[0, 2], [1, 3]],
    mirrors: range(4).filter((line) => (line % 2 ? rectangle : rhombus)),
    regular: rectangle && rhombus,
    parallelogram: true,
    kite: rhombus,
  };
}

/**
 * @param {Measured} measured
 * @returns {Properties}
 */
function otherQuadrilateral(measured) {
  const convex = measured.tips.length === 4;
  const mirrors = mirrorLines(measured).sort((a, b) => (a % 2) - (b % 2) || a - b).slice(0, 1);
  let parallel = convex ? parallels(measured).slice(0, 1) : [];
  if (mirrors.length) {
    parallel = convex && mirrors[0] % 2 ? [mirrors[0] === 1 ? [0, 2] : [1, 3]] : [];
  }
  let equal = equalSides(measured);
  if (equal[0]?.length === 4) {
    const order = range(4).sort((a, b) => measured.squares[a] - measured.squares[b] || a - b);
    equal = [order.slice(0, 2), order.slice(2)].map((two) => two.sort((a, b) => a - b));
  }
  return {
    ...plain(measured),
    right: rightAngles(measured).slice(0, 2).sort((a, b) => a - b),
    equal,
    parallel,
    mirrors,
    kite: convex && mirrors.length > 0 && mirrors[0] % 2 === 0,
  };
}

/**
 * @param {Measured} measured
 * @returns {Properties}
 */
function manySided(measured) {
  const { many } = measured;
  if (isEven(measured)) {
    const half = many / 2;
    const parallel = many % 2 ? [] : range(half).map((side) => [side, side + half]);
    const all = range(many);
    return { ...plain(measured), equal: [all], parallel, mirrors: all, regular: true };
  }
  return {
    ...plain(measured),
    right: rightAngles(measured).sort((a, b) => a - b),
    equal: equalSides(measured),
    parallel: parallels(measured).sort(inOrder),
    mirrors: wholeSymmetry(mirrorLines(measured), many),
  };
}

/**
 * @param {Measured} measured
 * @returns {boolean} whether corners so many sides apart are always equally far from each other
 */
function isEven({ many, apart, grid }) {
  return range(Math.floor(many / 2)).every((step) => {
    const far = range(many).map((at) => apart[at][(at + step + 1) % many]);
    return alike(Math.min(...far), Math.max(...far), grid);
  });
}

/**
 * @param {number[]} lines
 * @param {number} many
 * @returns {number[]} as many mirror lines as one symmetry has, evenly spaced
 */
function wholeSymmetry(lines, many) {
  const steps = range(many + 1).filter((step) => many % step === 0);
  const symmetries = steps.flatMap((step) => range(step).map((first) =>
    range(many / step).map((turn) => first + turn * step)));
  return symmetries.find((wanted) => wanted.every((line) => lines.includes(line))) ?? [];
}

/**
 * @param {Measured} measured
 * @returns {Properties} of a polygon of which nothing special is true
 */
function plain({ tips }) {
  return { tips, right: [], equal: [], parallel: [], mirrors: [], regular: false,
    parallelogram: false, kite: false };
}

/**
 * @param {number} many
 * @returns {number[][]} all pairs of different numbers below
 */
function combinations(many) {
  return range(many).flatMap((one) =>
    range(many - one - 1).map((further) => [one, one + further + 1]));
}

/**
 * @param {number[]} one
 * @param {number[]} other
 * @returns {number}
 */
function inOrder(one, other) {
  return one[0] - other[0] || one[1] - other[1];
}
