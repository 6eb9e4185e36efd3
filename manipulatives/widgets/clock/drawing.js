/** The clock face as elements, made once and moved from then on. */
import FACE from "../../data/clock_face.json" with { type: "json" };
import { grip, html, put, svg } from "../shared/svg.js";
import { angleOfHand, arcDashes, around } from "./face.js";
import { handOutline, sectorOutline, turnBetween } from "./face.js";

/**
 * @typedef {import("./dial.js").Dial} Dial
 * @typedef {import("./dial.js").Hand} Hand
 * @typedef {ReturnType<typeof drawFace>} Face
 */

/** @type {Hand[]} */
export const HANDS = ["hour", "minute"];
export const HAND_NAMES = { hour: "Short hand", minute: "Long hand" };

const DIGIT_HEIGHT = 0.7;

/**
 * Draw a clock face.
 * @returns {{
 *   frame: HTMLElement,
 *   drawing: SVGSVGElement,
 *   handles: Record<Hand, HTMLElement>,
 *   show: (shown: Record<string, any>) => void,
 *   stand: (dial: Dial, minutes?: number) => void,
 *   fit: () => void,
 * }} the drawing in its frame, and what a finger takes; show the parts whose traits are on; move
 *   the hands to a dial, the shorter way or by so many minutes of a geared clock; fit the handles
 *   to the size on the screen
 */
export function drawFace() {
  const sector = svg("path", { class: "clock-sector", d: sectorOutline() });
  const arc = put(ring("arc", 60), { "stroke-dashoffset": -FACE.arc.gap / 12 });
  const fives = twelve(minuteNumber);
  const hands = { hour: drawHand("hour"), minute: drawHand("minute") };
  const handles = { hour: makeHandle("hour"), minute: makeHandle("minute") };
  // From below to above, by their traits. Over the broad hand the narrow one leaves both to be
  // seen; numerals are read over a hand.
  /** @type {Record<string, SVGElement>} */
  const parts = {
    sector,
    ticks: svg("g", {}, drawTicks("minute_ticks", 60), drawTicks("five_ticks", 12)),
    arc,
    minute_numbers: svg("g", {}, ...fives),
    hands: svg("g", {}, hands.hour, hands.minute),
    numerals: svg("g", {}, ...twelve(numeral)),
  };
  const { rim, hub, field } = FACE;
  const drawing = svg(
    "svg", { role: "img" },
    svg("circle", { class: "clock-disc", r: rim.radius, "stroke-width": rim.width }),
    ...Object.values(parts),
    svg("circle", { class: "clock-hub", r: hub.radius }),
  );
  const frame = html("div", { class: "clock-face" }, drawing, handles.hour, handles.minute);
  // Whole turns are counted, so that a hand that passes the 12 does not swing back all around.
  const angles = { hour: 0, minute: 0 };
  let half = 1;

  function fit() {
    const unit = Math.min(frame.clientWidth, frame.clientHeight) / (2 * half);
    frame.style.setProperty("--unit", `${unit}px`);
  }

  return {
    frame,
    drawing,
    handles,
    fit,
    show(shown) {
      half = shown.minute_numbers ? field.numbered : field.plain;
      put(drawing, { viewBox: `${-half} ${-half} ${2 * half} ${2 * half}` });
      frame.classList.toggle("is-movable", shown.movable);
      frame.classList.toggle("is-counted", shown.arc);
      for (const [name, part] of Object.entries(parts)) {
        put(part, { display: shown[name] === false ? "none" : null });
      }
      fit();
    },
    stand(dial, minutes = 0) {
      for (const hand of HANDS) {
        const near = turnBetween(angles[hand], angleOfHand(dial, hand));
        const far = minutes * (hand === "hour" ? 0.5 : 6);
        angles[hand] += near + 360 * Math.round((minutes && far - near) / 360);
        hands[hand].style.transform = `rotate(${angles[hand]}deg)`;
        handles[hand].style.transform = hands[hand].style.transform;
      }
      put(sector, { transform: `rotate(${30 * Math.floor(dial.hour / 60)})` });
      put(arc, { "stroke-dasharray": arcDashes(dial.minute) });
      fives.forEach((five, index) => {
        five.classList.toggle("is-passed", index > 0 && 5 * index <= dial.minute);
      });
    },
  };
}

/**
 * @param {Hand} hand
 * @returns {SVGElement} the hand with its grip
 */
function drawHand(hand) {
  const sign = grip(FACE.grip.radius);
  put(sign, { transform: `translate(0 ${-FACE[hand].grip})` });
  const outline = { d: handOutline(hand), "stroke-width": 2 * FACE.minute.halo };
  return svg("g", { class: `clock-${hand}` }, svg("path", outline), sign);
}

/**
 * What lies over a hand to be taken, and takes the focus. It is no part of the drawing, because
 * not every browser heeds `touch-action` there.
 * @param {Hand} hand
 * @returns {HTMLElement} a slider
 */
function makeHandle(hand) {
  const handle = html("div", {
    class: "clock-handle",
    role: "slider",
    tabindex: 0,
    "aria-label": HAND_NAMES[hand],
    "aria-valuemin": 0,
    "aria-valuemax": hand === "hour" ? 719 : 59,
  });
  handle.style.setProperty("--length", `${FACE[hand].length}`);
  handle.style.setProperty("--from", `${hand === "hour" ? 0 : FACE.hour.length + 3}`);
  return handle;
}

/**
 * @param {"arc" | "five_ticks" | "minute_ticks"} kind
 * @param {number} pieces
 * @returns {SVGElement} a broad circle from the 12 on, so many pieces long
 */
function ring(kind, pieces) {
  const { inner, outer } = FACE[kind];
  return svg("circle", {
    class: `clock-${kind}`,
    r: (inner + outer) / 2,
    "stroke-width": outer - inner,
    pathLength: pieces,
    fill: "none",
    transform: "rotate(-90)",
  });
}

/**
 * @param {"five_ticks" | "minute_ticks"} kind
 * @param {number} number
 * @returns {SVGElement} so many marks of the dial, as the dashes of a circle
 */
function drawTicks(kind, number) {
  const { inner, outer, width } = FACE[kind];
  const dash = (width * number) / (Math.PI * (inner + outer));
  return put(ring(kind, number), {
    "stroke-dasharray": `${dash} ${1 - dash}`,
    "stroke-dashoffset": dash / 2,
  });
}

/**
 * @param {number} index 0 for the 12
 * @returns {SVGElement} the numeral, with a light edge where a hand passes below
 */
function numeral(index) {
  const { radius, size, halo } = FACE.numerals;
  return put(digits(index || 12, index, radius, size), { "stroke-width": halo });
}

/**
 * @param {number} index 0 for the 12
 * @returns {SVGElement} its minutes outside the dial, on the spot that marks them as counted
 */
function minuteNumber(index) {
  const { radius, size, badge } = FACE.minute_numbers;
  const { x, y } = around(30 * index, radius);
  const spot = svg("circle", { cx: x, cy: y, r: badge });
  return svg("g", { class: "clock-five" }, spot, digits(5 * index, index, radius, size));
}

/**
 * @param {number} number
 * @param {number} index of its place, 0 for the 12
 * @param {number} radius where its middle is
 * @param {number} size of the type
 * @returns {SVGElement}
 */
function digits(number, index, radius, size) {
  const { x, y } = around(30 * index, radius);
  const base = y + (size * DIGIT_HEIGHT) / 2;
  return svg("text", { x, y: base, "font-size": size }, String(number));
}

/**
 * @param {(index: number) => SVGElement} make
 * @returns {SVGElement[]} one for each numeral, from the 12 on
 */
function twelve(make) {
  return Array.from({ length: 12 }, (_, index) => make(index));
}
