/** The number line on the screen: the numbers of the chart, and a hop for each count. */
import { html, put, svg } from "../shared/svg.js";
import { numbers } from "./count.js";
import { readable } from "./hints.js";
import { hopsOutline, marksApart, multiplesOn, numbersApart, piece } from "./line.js";

/**
 * @typedef {import("./count.js").Settings} Settings
 * @typedef {import("./count.js").Marks} Marks
 */

// In sizes of the type: the drawing is 6.2 high.
const BASE = 4.2;
const BELOW = 5.6;
const HOP = 2.6;
const TIP = 1.4;
const DIGIT = 0.66;

/**
 * Make a number line.
 * @returns {{
 *   frame: HTMLElement, measure: () => void,
 *   paint: (marks: Marks, settings: Settings) => void,
 * }} the line; the place for it has another size; show what was done
 */
export function makeStrip() {
  const axis = svg("path", { class: "chart-axis" });
  const ticks = svg("path", { class: "chart-ticks" });
  const hopped = svg("path", { class: "chart-hops" });
  const labels = svg("g", { class: "chart-labels" });
  const dot = svg("circle", { class: "chart-dot" });
  const named = svg("text", { class: "chart-named" });
  const length = svg("text", { class: "chart-length" });
  const drawing = svg("svg", { role: "img" }, axis, ticks, hopped, labels, dot, named, length);
  const frame = html("div", { class: "chart-line" }, drawing);
  let drawn = "";
  // In pixels; asked for once, since the page would have to be laid out for every answer.
  let size = { breadth: 0, em: 0 };

  return {
    frame,
    measure() {
      const em = parseFloat(getComputedStyle(drawing).fontSize);
      size = { breadth: frame.clientWidth, em };
    },
    paint(marks, settings) {
      const { counted } = marks;
      const { breadth, em } = size;
      // Not on the page yet, or not shown.
      if (breadth === 0) {
        return;
      }
      const { low, high } = piece(settings, counted, numbers(settings)[0]);
      const room = (DIGIT * String(high).length + 0.5) * em;
      const inner = breadth - room;
      const place = (/** @type {number} */ number) =>
        Math.round(10 * (room / 2 + (inner * (number - low)) / (high - low))) / 10;
      const base = BASE * em;
      const now = [low, high, breadth, em, settings.step].join();
      if (now !== drawn) {
        drawn = now;
        // Beyond its ends the line goes on, unless there are no numbers.
        const left = low > 0 ? 0 : place(low);
        put(axis, { d: `M${left} ${base}H${breadth}` });
        put(ticks, { d: multiplesOn({ low, high }, marksApart({ low, high })).map((number) =>
          `M${place(number)} ${base}v${(number % 10 ? 0.35 : 0.6) * em}`).join("") });
        const apart = numbersApart({ low, high }, inner, room, settings.step);
        labels.replaceChildren(...multiplesOn({ low, high }, apart).map((number) =>
          svg("text", { "x": place(number), "y": BELOW * em, "data-number": number })));
      }
      const canBeRead = readable(marks, settings);
      const at = counted[counted.length - 1];
      const x = at === undefined ? 0 : place(at);
      for (const label of labels.children) {
        const number = Number(label.getAttribute("data-number"));
        const near = at !== undefined && Math.abs(place(number) - x) < room;
        const text = canBeRead(number) && !near ? String(number) : "";
        if (label.textContent !== text) {
          label.textContent = text;
        }
      }
      put(hopped, { d: hopsOutline(counted, { low, high }, place, base, HOP * em) });
      put(dot, { cx: x, cy: base, r: at === undefined ? 0 : 0.42 * em });
      put(named, { x, y: BELOW * em });
      named.textContent = at === undefined || !canBeRead(at) ? "" : String(at);
      hopLength(counted, place, em);
      put(drawing, { "aria-label": inWords(counted) });
    },
  };

  /**
   * Write how long the last hop is, above it.
   * @param {number[]} counted
   * @param {(number: number) => number} place
   * @param {number} em
   */
  function hopLength(counted, place, em) {
    const [from, to] = counted.slice(-2);
    if (to === undefined) {
      length.textContent = "";
      return;
    }
    const high = Math.min(HOP * em, Math.abs(place(to) - place(from)) * 0.7);
    put(length, { x: (place(from) + place(to)) / 2, y: Math.max(TIP, BASE - high / em) * em - 6 });
    length.textContent = `${to > from ? "+" : "\u2212"}${Math.abs(to - from)}`;
  }
}

/**
 * @param {number[]} counted
 * @returns {string} what is to be seen on the line
 */
function inWords(counted) {
  const hops = counted.length - 1;
  if (hops < 1) {
    return counted.length ? `Number line at ${counted[0]}` : "Number line";
  }
  const many = hops === 1 ? "1 hop" : `${hops} hops`;
  return `Number line: ${many} from ${counted[0]} to ${counted[hops]}`;
}
