/** What is read out beside the paper, each in a box with its name and its value. */
import { html, put } from "../shared/svg.js";

/** @typedef {[key: string, value: (facts: Facts, names: string[]) => unknown]} Reading */

const NONE = "\u2013";

/** @type {Reading[]} */
const READINGS = [
  ["name", (_, names) => names[0]],
  ["also", (_, names) => names.slice(1).join(", ")],
  ["sides", ({ sides }) => sides],
  ["vertices", ({ corners }) => corners],
  ["right_angles", ({ right_angles: many }) => many],
  ["equal_sides", ({ equal_sides: many }) => many],
  ["parallel", ({ parallel }) => parallel],
  ["mirror_lines", (facts) => (facts.name === "circle" ? "no end" : facts.mirror_lines)],
  ["regular", ({ regular }) => yes(regular)],
  ["convex", ({ convex }) => yes(convex)],
  ["shares", ({ shares, equal_shares: equal }) =>
    (equal === null ? shares : `${shares} ${equal ? "equal" : "unequal"}`)],
];
/** @type {Record<string, string>} */
export const LABELS = {
  name: "Name",
  also: "Also",
  sides: "Sides",
  vertices: "Vertices",
  right_angles: "Right angles",
  equal_sides: "Equal sides",
  parallel: "Parallel pairs",
  mirror_lines: "Mirror lines",
  regular: "Regular",
  convex: "Convex",
  shares: "Shares",
};

/**
 * @param {Fact} fact
 * @returns {string | null}
 */
function yes(fact) {
  return typeof fact === "boolean" ? (fact ? "yes" : "no") : null;
}

/**
 * @param {string} key
 * @param {Facts} facts
 * @returns {string} what a reading is called; sides and corners of a curve are told apart
 */
function labelOf(key, { curved_sides: curved }) {
  const other = { sides: "Straight sides", vertices: "Corners" }[key];
  return (curved && other) || LABELS[key];
}

/**
 * @param {HTMLElement} element
 * @param {string} text
 */
export function write(element, text) {
  // What is written already needs no new layout.
  if (element.textContent !== text) {
    element.textContent = text;
  }
}

/**
 * The readings.
 * @returns {{
 *   readings: HTMLElement,
 *   read: (show: string[], facts: Facts, names: string[]) => string,
 * }} the boxes; fill those that are shown, and say what has changed in them
 */
export function makeReadings() {
  const boxes = READINGS.map(([key]) => {
    const [label, value] = [html("span"), html("strong")];
    return { label, value, box: html("div", { "class": "polygon-reading", "data-reading": key },
      label, value) };
  });
  const readings = html("div", { class: "polygon-readings" }, ...boxes.map(({ box }) => box));
  /** @type {Map<string, string>} */
  let before = new Map();
  return {
    readings,
    read(show, facts, names) {
      const now = new Map();
      READINGS.forEach(([key, valueOf], index) => {
        const { box, label, value } = boxes[index];
        const found = valueOf(facts, names);
        const text = found === null || found === undefined || found === "" ? NONE : String(found);
        write(value, text);
        write(label, labelOf(key, facts));
        const shown = show.includes(key) && (key !== "shares" || facts.shares !== 0);
        box.hidden = !shown;
        put(box, { "data-long": key === "also" || key === "name" ? true : null });
        if (shown && text !== NONE) {
          now.set(key, `${label.textContent}: ${text}.`);
        }
      });
      readings.hidden = boxes.every(({ box }) => box.hidden);
      const changed = [...now].filter(([key, text]) => before.get(key) !== text);
      before = now;
      return changed.map(([, text]) => text).join(" ");
    },
  };
}
