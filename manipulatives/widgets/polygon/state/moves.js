/**
 * How a shape changes: points put, moved, added and taken away, the whole turned or put on other
 * paper. What cannot be done is answered with a sentence that says why.
 *
 * @typedef {import("./paper.js").Grid} Grid
 * @typedef {import("./paper.js").Shape} Shape
 * @typedef {import("./paper.js").Spot} Spot
 * @typedef {Shape | string} After
 */
import { SPACES, dots, ends, nearest, onPaper, place, same, way, within } from "./paper.js";

const MOST = 40;
/** @type {Record<string, [number, number]>} */
const WAYS = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowDown: [0, 1],
  ArrowUp: [0, -1],
};

/** @type {Shape} */
export const NOTHING = { points: [], closed: false };

/**
 * @param {Shape} shape
 * @param {number[]} point
 * @returns {After} the shape with one more point; on the first it is closed
 */
export function putPoint({ points, closed }, point) {
  const last = points[points.length - 1];
  if (closed) {
    return "The shape is closed. Its points can be moved.";
  }
  if (last && same(last, point)) {
    return "There is a point already.";
  }
  if (points.length > 1 && same(points[0], point)) {
    return joined({ points, closed });
  }
  return points.length < MOST
    ? { points: [...points, point], closed }
    : "There are as many points as can be.";
}

/**
 * @param {Shape} shape
 * @returns {After} the shape, closed
 */
function joined({ points }) {
  return points.length > 2 ? { points, closed: true } : "A closed shape needs three points.";
}

/**
 * @param {Shape} shape
 * @param {number} index
 * @param {number[]} point
 * @param {Grid} grid
 * @returns {Shape} the shape with a point elsewhere; the centre of a circle takes all of it along
 */
export function moved({ points, closed, curve, cuts }, index, point, grid) {
  let after = points.map((each, at) => (at === index ? point : each));
  if (curve === "circle" && index === 0) {
    const edge = place(points[1], grid);
    const [from, to] = [points[0], point].map((each) => place(each, grid));
    const spot = { x: edge.x + to.x - from.x, y: edge.y + to.y - from.y };
    const other = nearest(spot, grid);
    const there = place(other, grid);
    // The size of a circle stays: where its edge would not fit, it turns the point around.
    const fits = Math.hypot(there.x - spot.x, there.y - spot.y) < 1;
    after = [point, fits ? other : opposite(points[0], points[1], point, grid)];
  }
  if (curve && same(after[0], after[1])) {
    after = points;
  }
  const stays = curve === "circle" && cuts ? { cuts } : {};
  return { points: after, closed, ...(curve ? { curve } : {}), ...stays };
}

/**
 * @param {number[]} centre
 * @param {number[]} edge
 * @param {number[]} point where the centre goes
 * @param {Grid} grid
 * @returns {number[]} a point of the paper on the other side of the circle
 */
function opposite(centre, edge, point, grid) {
  const [across, down] = way(centre, edge);
  const ways = [[-across, -down], [across, -down], [-across, down]];
  const found = ways.map(([right, below]) => [point[0] + right, point[1] + below])
    .find((each) => onPaper(each, grid));
  return found ?? edge;
}

/**
 * @param {Shape} shape
 * @param {number} index
 * @returns {Shape} the shape without a point; of a curve nothing is left
 */
export function removed({ points, closed, curve }, index) {
  if (curve) {
    return NOTHING;
  }
  const left = points.filter((_, at) => at !== index);
  return { points: left, closed: closed && left.length > 2 };
}

/**
 * @param {Shape} shape
 * @param {number} index the point before it
 * @param {number[]} point
 * @returns {After} the shape with a point more on a side
 */
export function inserted({ points, closed, curve }, index, point) {
  if (curve) {
    return "A curve has no more points.";
  }
  return points.length < MOST
    ? { points: [...points.slice(0, index + 1), point, ...points.slice(index + 1)], closed }
    : "There are as many points as can be.";
}

/**
 * @param {Shape} shape
 * @param {number} index the point before it
 * @param {Grid} grid
 * @returns {number[]} a free point of the paper near the middle of a side
 */
export function betweenPoints({ points }, index, grid) {
  const two = [points[index], points[(index + 1) % points.length]];
  const [a, b] = two.map((each) => place(each, grid));
  const spot = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  if (grid === "plain") {
    return nearest(spot, grid);
  }
  const far = (/** @type {number[]} */ dot) => {
    const { x, y } = place(dot, grid);
    return (x - spot.x) ** 2 + (y - spot.y) ** 2;
  };
  return dots(grid)
    .filter((dot) => !points.some((point) => same(point, dot)))
    .reduce((best, dot) => (far(dot) < far(best) - 1e-6 ? dot : best));
}

/**
 * @param {Shape} shape
 * @param {Grid} grid
 * @returns {After} a quarter turn further, on triangle dots a sixth
 */
export function turned(shape, grid) {
  if (grid !== "triangle") {
    const most = ends(0, grid)[1];
    return changed(shape, ([across, down]) => [most - down, across]);
  }
  // Around the middle dot; then it is moved to where there is room for it.
  const points = shape.points.map(([across, down]) => [6 - down, across + down - 2]);
  const downs = points.map(([, down]) => down);
  const shift = within(0, -Math.min(...downs), SPACES - Math.max(...downs));
  for (const below of [shift, 0, -1, 1, -2, 2]) {
    for (const right of [0, -1, 1, -2, 2, -3, 3, -4, 4]) {
      const there = points.map(([across, down]) => [across + right, down + below]);
      if (there.every((point) => onPaper(point, grid))) {
        return withPoints(shape, there);
      }
    }
  }
  return "There is no room to turn it.";
}

/**
 * @param {Shape} shape
 * @param {Grid} grid
 * @returns {After} turned over, left to right
 */
export function flipped(shape, grid) {
  const most = ends(0, grid)[1];
  const over = changed(shape, ([across, down]) =>
    [most - across - (grid === "triangle" ? down : 0), down]);
  // What is on the left of a curve's straight side comes to be on its right.
  const { points: [start, end], curve } = over;
  if (curve === "half circle") {
    return { ...over, points: [end, start] };
  }
  if (curve !== "quarter circle") {
    return over;
  }
  const [from, to] = [start, end].map((each) => place(each, grid));
  const spot = { x: from.x + to.y - from.y, y: from.y + from.x - to.x };
  const other = nearest(spot, grid);
  const there = place(other, grid);
  return Math.hypot(there.x - spot.x, there.y - spot.y) < 1
    ? { ...over, points: [start, other] }
    : "Turned over it does not fit.";
}

/**
 * @param {Shape} shape
 * @param {(point: number[]) => number[]} change
 * @returns {Shape}
 */
function changed(shape, change) {
  return withPoints(shape, shape.points.map(change));
}

/**
 * @param {Shape} shape
 * @param {number[][]} points
 * @returns {Shape} the shape with other points and without cuts
 */
function withPoints({ closed, curve }, points) {
  return { points, closed, ...(curve ? { curve } : {}) };
}

/**
 * @param {Shape} shape
 * @param {Grid} from
 * @param {Grid} to
 * @returns {Shape} the shape on other paper, each point where it was or near by
 */
export function converted(shape, from, to) {
  const after = changed(shape, (point) => nearest(place(point, from), to));
  return after.curve && same(after.points[0], after.points[1]) ? NOTHING : after;
}

/**
 * @param {number[]} point
 * @param {string} key such as "ArrowUp"
 * @param {Grid} grid
 * @param {number} far how many points further
 * @returns {number[]} where it leads, on the paper
 */
export function stepped(point, key, grid, far) {
  const [right, below] = WAYS[key];
  let there = point;
  for (let step = 0; step < far; step += 1) {
    const [across, down] = there;
    // Rows of triangle dots are half a space apart: the way goes left and right by turns.
    const even = down % 2 === 0;
    const lean = below > 0 ? Number(even) - 1 : Number(even);
    const leans = grid === "triangle" && below ? [lean, -below - lean] : [0];
    const next = leans.map((sideways) => [across + right + sideways, down + below])
      .find((each) => onPaper(each, grid));
    if (!next) {
      break;
    }
    there = next;
  }
  return there;
}
