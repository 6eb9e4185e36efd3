/** Blocks, columns and mats as elements, made once and filled by mats.js. */
import WORDS from "../../data/place_words.json" with { type: "json" };
import { button } from "../shared/controls.js";
import { html, icon, svg } from "../shared/svg.js";
import { outlines } from "./state/block.js";
import { PLACES, named } from "./state/places.js";

/**
 * @typedef {import("./state/places.js").Place} Place
 * @typedef {import("./state/rows.js").Spot} Spot
 * @typedef {{ signal: AbortSignal }} Lifetime
 *
 * @typedef {object} Column
 * @property {HTMLElement} head
 * @property {HTMLElement} foot
 * @property {HTMLElement} digit in the foot, between the steps
 * @property {HTMLElement} handle what takes the focus and the pointer
 * @property {HTMLElement} heap over the blocks: a finger on it does not scroll the page
 * @property {SVGGElement} boxes
 * @property {SVGGElement} group holds the blocks
 * @property {SVGGElement[]} blocks
 * @property {Spot[]} spots where they lie on the field
 *
 * @typedef {object} MatView
 * @property {HTMLElement} root
 * @property {HTMLElement} name
 * @property {HTMLElement} field
 * @property {SVGSVGElement} drawing
 * @property {SVGGElement} traces where blocks were before they were traded
 * @property {SVGPathElement} rules between the columns
 * @property {SVGPathElement} ring
 * @property {Record<Place, Column>} columns
 */

const MINUS = "M5 12H19";
const PLUS = "M5 12H19M12 5V19";

/**
 * Draw a block.
 * @param {Place} place
 * @returns {SVGGElement} its origin is its top left corner, its lengths are units
 */
export function drawBlock(place) {
  const paths = outlines(place).map(({ part, d }) => svg("path", { class: `block-${part}`, d }));
  return svg("g", { class: `block block-${place}` }, ...paths);
}

/**
 * Move a block.
 * @param {SVGElement} block
 * @param {Spot} spot
 * @param {number} unit
 * @returns {void}
 */
export function moveBlock(block, { x, y }, unit) {
  block.style.transform = `translate(${x.toFixed(1)}px,${y.toFixed(1)}px) scale(${unit})`;
}

/**
 * A mat without blocks.
 * @param {(place: Place, more: 1 | -1) => void} step one block more or less
 * @param {Lifetime} lifetime
 * @returns {MatView}
 */
export function makeMat(step, lifetime) {
  const columns = /** @type {Record<Place, Column>} */ (
    Object.fromEntries(PLACES.map((place) => [place, makeColumn(place, step, lifetime)])));
  const each = PLACES.map((place) => columns[place]);
  const traces = svg("g", { class: "blocks-traces" });
  const rules = svg("path", { class: "blocks-rules" });
  const ring = svg("path", { class: "blocks-ring" });
  const drawing = svg(
    "svg", { role: "img" }, rules, traces, ...each.flatMap(({ boxes, group }) => [boxes, group]),
    ring,
  );
  const name = html("div", { class: "blocks-name" });
  const handles = each.map(({ handle }) => handle);
  const heads = html("div", { class: "blocks-heads" }, ...each.map(({ head }) => head));
  const field = html("div", { class: "blocks-field" }, drawing, heads, ...handles);
  const root = html(
    "div", { class: "blocks-mat", role: "group" }, name,
    field,
    html("div", { class: "blocks-feet" }, ...each.map(({ foot }) => foot)),
  );
  return { root, name, field, drawing, traces, rules, ring, columns };
}

/**
 * @param {Place} place
 * @param {(place: Place, more: 1 | -1) => void} step
 * @param {Lifetime} lifetime
 * @returns {Column}
 */
function makeColumn(place, step, lifetime) {
  const heap = html("div", { class: "blocks-heap" });
  const digit = html("div", { class: "blocks-digit" });
  const name = named(place, 1);
  return {
    foot: html(
      "div", { class: `blocks-foot of-${place}` },
      button([icon(MINUS)], () => step(place, -1), lifetime, { "aria-label": `One ${name} less` }),
      digit,
      button([icon(PLUS)], () => step(place, 1), lifetime, { "aria-label": `One ${name} more` }),
    ),
    digit,
    head: html("div", { class: `blocks-head of-${place}`, "aria-hidden": true }),
    heap,
    handle: html("div", {
      class: "blocks-column", role: "spinbutton", tabindex: 0, "aria-label": WORDS.heads[place],
      "aria-valuemin": 0,
    }, heap),
    boxes: svg("g", { class: `blocks-boxes of-${place}` }),
    group: svg("g", {}),
    blocks: [],
    spots: [],
  };
}

/**
 * A box with a band around it, for blocks that are too many to lie apart.
 * @param {number} x
 * @param {number} y
 * @param {number} side
 * @returns {SVGElement}
 */
export function drawBox(x, y, side) {
  const band = `M${x} ${y + side / 2}H${x + side}M${x + side / 2} ${y}V${y + side}`;
  const sides = { x, y, width: side, height: side, rx: side / 6 };
  return svg("g", {}, svg("rect", sides), svg("path", { d: band }));
}
