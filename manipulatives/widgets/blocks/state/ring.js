/**
 * A ring drawn by hand: whether it is one, and what it goes round.
 *
 * @typedef {{ x: number, y: number }} Point
 */

// The ends of a ring may be apart by so much of its length.
const OPEN = 0.25;

/**
 * Whether a line that was drawn goes round, so that its ends may be joined.
 * @param {Point[]} line
 * @param {number} least how large it must be across, at least
 * @returns {boolean}
 */
export function isRing(line, least) {
  const xs = line.map(({ x }) => x);
  const ys = line.map(({ y }) => y);
  const across = Math.max(...xs) - Math.min(...xs);
  const down = Math.max(...ys) - Math.min(...ys);
  const long = line.reduce((sum, point, at) => sum + (at ? apart(point, line[at - 1]) : 0), 0);
  return line.length > 3 && across >= least && down >= least &&
    apart(line[0], line[line.length - 1]) <= OPEN * long;
}

/**
 * Whether a point is inside of a ring.
 * @param {Point[]} ring its last point is joined to the first
 * @param {Point} point
 * @returns {boolean}
 */
export function rings(ring, { x, y }) {
  let within = false;
  ring.forEach((one, at) => {
    const other = ring[(at || ring.length) - 1];
    const between = (one.y > y) !== (other.y > y);
    if (between && x < one.x + ((other.x - one.x) * (y - one.y)) / (other.y - one.y)) {
      within = !within;
    }
  });
  return within;
}

/**
 * @param {Point} one
 * @param {Point} other
 * @returns {number}
 */
function apart(one, other) {
  return Math.hypot(one.x - other.x, one.y - other.y);
}
