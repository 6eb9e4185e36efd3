/** The number line: a jump for each part, not to scale, so that small jumps can be seen too. */
import { MINUS } from "../shared/signs.js";
import { html, put, svg } from "../shared/svg.js";
import { startOf } from "./written.js";

/**
 * @typedef {import("./written.js").Sum} Sum
 * @typedef {{ from: number, to: number, jump: number }} Hop
 */

// Units of the drawing: one line of type, the height of a row, its breadth.
const TYPE = 30;
const ROW = 150;
const WIDE = 800;
const NARROW = 340;
const EDGE = 60;
// So broad is a jump with its number.
const JUMP = 110;

/**
 * How many units of breadth a number line has.
 * @param {number} pixels that it is broad
 * @param {number} type the least size of its type in pixels
 * @returns {number} fewer where it is narrow, so that its type stays large
 */
export function unitsFor(pixels, type) {
  return Math.max(NARROW, Math.min(WIDE, (pixels * TYPE) / type));
}

/**
 * The jumps of a sum, in rows.
 * @param {Sum} sum
 * @param {number} most jumps in a row
 * @returns {Hop[][]} at least one row
 */
export function hopsOf(sum, most) {
  const way = sum.operation === "+" ? 1 : -1;
  let here = startOf(sum);
  const hops = sum.jumps.map((jump) => {
    const from = here;
    here += way * jump;
    return { from, to: here, jump };
  });
  const rows = [hops.slice(0, most)];
  for (let next = most; next < hops.length; next += most) {
    rows.push(hops.slice(next, next + most));
  }
  return rows;
}

/**
 * Where the ends of jumps are on a row.
 * @param {number[]} jumps
 * @returns {number[]} from the start on, as shares of the row
 */
export function ends(jumps) {
  const sizes = jumps.map((jump) => (jump ? 1.2 + Math.log10(jump) : 0));
  const all = sizes.reduce((sum, size) => sum + size, 0) || 1;
  let soFar = 0;
  return [0, ...sizes.map((size) => {
    soFar += size;
    return soFar / all;
  })];
}

/**
 * Make a number line.
 * @returns {{ element: HTMLElement, paint: (sum: Sum, last: Sum) => void }} paint shows the jumps
 *   of a sum, with room for those of the last one
 */
export function makeLine() {
  const drawing = svg("svg");
  const element = html("div", { class: "columns-line", role: "img" }, drawing);
  return {
    element,
    paint(sum, last) {
      const type = parseFloat(getComputedStyle(element).fontSize) || TYPE;
      const wide = unitsFor(element.clientWidth, type);
      const most = Math.floor((wide - 2 * EDGE) / JUMP);
      const rows = hopsOf(sum, most);
      const whole = hopsOf(last, most);
      const back = sum.operation === "-";
      const high = Math.max(rows.length, whole.length) * ROW;
      put(drawing, { viewBox: `0 0 ${wide} ${high}` });
      element.style.aspectRatio = `${wide} / ${high}`;
      drawing.replaceChildren(...rows.flatMap((hops, row) => {
        const room = (whole[row] ?? []).length >= hops.length ? whole[row] : hops;
        const places = ends(room.map(({ jump }) => jump))
          .map((share) => EDGE + (back ? 1 - share : share) * (wide - 2 * EDGE));
        const base = (row + 1) * ROW - 1.7 * TYPE;
        const start = hops.length ? hops[0].from : startOf(sum);
        return [
          svg("path", { class: "columns-axis", d: `M${EDGE / 3} ${base}H${wide - EDGE / 3}` }),
          ...mark(places[0], base, start),
          ...hops.flatMap((hop, index) => leap(hop, places[index], places[index + 1], base, back)),
        ];
      }));
      const hops = rows.flat();
      const told = hops.map(({ jump, to }) => `${back ? "back" : "on"} ${jump} to ${to}`);
      const way = told.join(", ") || "no jump";
      put(element, { "aria-label": `Number line from ${startOf(sum)}: ${way}.` });
    },
  };
}

/**
 * @param {number} x
 * @param {number} base
 * @param {number} number
 * @returns {SVGElement[]} a place on the line with its number
 */
function mark(x, base, number) {
  return [
    svg("path", { class: "columns-axis", d: `M${x} ${base - 10}V${base + 10}` }),
    svg("text", { x, "y": base + 1.35 * TYPE, "font-size": TYPE }, String(number)),
  ];
}

/**
 * @param {Hop} hop
 * @param {number} from
 * @param {number} to
 * @param {number} base
 * @param {boolean} back
 * @returns {SVGElement[]}
 */
function leap({ to: number, jump }, from, to, base, back) {
  const middle = (from + to) / 2;
  const sign = back ? MINUS : "+";
  const tip = back ? 10 : -10;
  const arc = `M${from} ${base}Q${middle} ${base - 96} ${to} ${base}`;
  const head = `M${to + 0.7 * tip} ${base - 17}L${to} ${base}L${to + 1.9 * tip} ${base - 4}`;
  const place = { "class": "columns-jump", "x": middle, "y": base - 58, "font-size": TYPE };
  return [
    svg("path", { class: "columns-hop", d: arc + head }),
    svg("text", place, `${sign}${jump}`),
    ...mark(to, base, number),
  ];
}
