/**
 * The geometry of the clock face. Angles are degrees clockwise from the 12; x runs to the right,
 * y downward, the centre is the origin, and the dial's radius is 100 units.
 * Proportions are those of data/clock_face.json, which the drawing on paper takes too.
 *
 * @typedef {{ x: number, y: number }} Point
 * @typedef {import("./dial.js").Hand} Hand
 * @typedef {import("./dial.js").Dial} Dial
 */
import FACE from "../../data/clock_face.json" with { type: "json" };
import { wrap } from "./dial.js";

// Two hands nearer to each other than this at a finger are told apart by their grips.
const UNSURE = 4;

/**
 * The point on a circle.
 * @param {number} degrees
 * @param {number} radius
 * @returns {Point}
 */
export function around(degrees, radius) {
  const turn = (degrees * Math.PI) / 180;
  return { x: radius * Math.sin(turn), y: -radius * Math.cos(turn) };
}

/**
 * The angle of a point seen from the centre.
 * @param {Point} point
 * @returns {number} above -180, to 180
 */
export function angleOf({ x, y }) {
  return (Math.atan2(x, -y) * 180) / Math.PI;
}

/**
 * The shorter way from one angle to another; across the centre, it is the way clockwise.
 * @param {number} from
 * @param {number} to
 * @returns {number} degrees clockwise, above -180, to 180
 */
export function turnBetween(from, to) {
  return 180 - wrap(180 + from - to, 360);
}

/**
 * The angle of a hand.
 * @param {Dial} dial
 * @param {Hand} hand
 * @returns {number} 0 to below 360
 */
export function angleOfHand(dial, hand) {
  return hand === "hour" ? dial.hour / 2 : dial.minute * 6;
}

/**
 * How far a point is from a hand.
 * @param {Dial} dial
 * @param {Hand} hand
 * @param {Point} point
 * @returns {{ line: number, grip: number }} in units, from the line between the centre and the
 *   tip, and from the middle of its grip
 */
export function distances(dial, hand, { x, y }) {
  const { length, grip } = FACE[hand];
  const tip = around(angleOfHand(dial, hand), 1);
  const along = x * tip.x + y * tip.y;
  const to = (/** @type {number} */ reach) => Math.hypot(x - reach * tip.x, y - reach * tip.y);
  return { line: to(Math.min(length, Math.max(0, along))), grip: to(grip) };
}

/**
 * The hand that a finger takes: the one whose line is nearer, or, where that cannot be told, the
 * one whose grip is.
 * @param {Dial} dial
 * @param {Point} point
 * @returns {Hand}
 */
export function nearerHand(dial, point) {
  const hour = distances(dial, "hour", point);
  const minute = distances(dial, "minute", point);
  const nearer = minute.line - hour.line;
  return (Math.abs(nearer) > UNSURE ? nearer : minute.grip - hour.grip) > 0 ? "hour" : "minute";
}

/**
 * The outline of a hand that points to the 12.
 * @param {Hand} hand
 * @returns {string} the `d` of a path
 */
export function handOutline(hand) {
  const { minute, hour } = FACE;
  const neck = hour.length - hour.head;
  const right = hand === "minute"
    ? [[minute.tip / 2, minute.length], [minute.width / 2, 0]]
    : [[0, hour.length], [hour.spread / 2, neck], [hour.width / 2, neck], [hour.width / 2, 0]];
  const left = right.map(([x, y]) => [-x, y]).reverse();
  return `M${[...left, ...right].map(([x, y]) => `${x} ${-y}`).join("L")}Z`;
}

/**
 * The piece of the dial between the 12 and the 1; turned, it is the piece of any hour.
 * @returns {string} the `d` of a path
 */
export function sectorOutline() {
  const { radius } = FACE.sector;
  const { x, y } = around(30, radius);
  return `M0 0V${-radius}A${radius} ${radius} 0 0 1 ${x} ${y}Z`;
}

/**
 * The way of the minute hand from the 12, in pieces of five minutes each and a last one of what
 * is over.
 * @param {number} minute where it stands, 0 to 59
 * @returns {string} dashes, on a circle that is sixty minutes long and begins half a gap late
 */
export function arcDashes(minute) {
  const gap = FACE.arc.gap / 6;
  const dashes = [];
  let passed = 0;
  for (; passed + 5 < minute; passed += 5) {
    dashes.push(5 - gap, gap);
  }
  return [...dashes, Math.max(0, minute - passed - gap / 2), 60].join(" ");
}
