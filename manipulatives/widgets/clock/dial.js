/**
 * The state of a clock and how it changes, without anything drawn. Python's maths/time/dial.py
 * knows the same facts; both are held to the same cases.
 *
 * @typedef {object} Dial
 * @property {number} hour where the hour hand stands, 0 to 719 minutes of its half day
 * @property {number} minute where the minute hand stands, 0 to 59
 * @property {"am" | "pm"} half the half of the day
 *
 * @typedef {"hour" | "minute"} Hand
 *
 * @typedef {object} Rules
 * @property {"geared" | "free"} mode whether each hand carries the other
 * @property {"turns" | "steps"} hour_drag geared, whether the hour hand turns or goes by hours
 * @property {number} snap minutes between the places where a hand stays
 */

export const HOUR = 60;
const HALF_DAY = 720;
const DAY = 1440;
const DEGREES = { hour: 0.5, minute: 6 };
/** @type {Record<string, number>} */
const WAYS = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };
// The larger step for each step.
/** @type {Record<number, number>} */
const LARGER = { 1: 5, 5: 15, 15: 30, 30: 60, 60: 180 };

/**
 * The remainder that is never negative.
 * @param {number} number
 * @param {number} size
 * @returns {number} from 0 to below size
 */
export function wrap(number, size) {
  return ((number % size) + size) % size;
}

/**
 * What is true of a dial, as goals and mistakes ask for it.
 * @param {Dial} dial
 * @returns {{ minutes: number | null, hour_hand: number, minute_hand: number, half: string,
 *   meant: number, lag: number }} as Python's dial_facts
 */
export function facts({ hour, minute, half }) {
  const lag = wrap(hour - minute + 30, HOUR) - 30;
  const meant = wrap(hour - lag, HALF_DAY);
  const minutes = lag === 0 ? hour : null;
  return { minutes, hour_hand: hour, minute_hand: minute, half, meant, lag };
}

/**
 * The dial at a time.
 * @param {number} time minutes since midnight; below 0 and from 1440 on are other days
 * @returns {Dial} the dial
 */
export function dialAt(time) {
  const hour = wrap(time, HALF_DAY);
  return { hour, minute: hour % HOUR, half: wrap(time, DAY) < HALF_DAY ? "am" : "pm" };
}

/**
 * The time that a dial means: what it shows, or else the nearest time with this minute hand.
 * @param {Dial} dial
 * @returns {number} minutes since midnight
 */
export function timeMeant(dial) {
  return facts(dial).meant + (dial.half === "pm" ? HALF_DAY : 0);
}

/**
 * How far a clock went from one dial to another, the shorter way.
 * @param {Dial} from
 * @param {Dial} to
 * @returns {number} minutes, -720 to 719
 */
export function minutesBetween(from, to) {
  return wrap(timeMeant(to) - timeMeant(from) + HALF_DAY, DAY) - HALF_DAY;
}

/**
 * The dial after a hand was turned.
 * @param {Dial} dial as it was when the hand was taken
 * @param {Hand} hand
 * @param {number} degrees how far it was turned since, clockwise, over any number of turns
 * @param {Rules} rules
 * @returns {Dial} the new dial; the hand is at a place of the snap, or still where it was taken
 */
export function turned(dial, hand, degrees, rules) {
  const { from, step, first, go } = track(dial, hand, rules);
  const to = from + degrees / DEGREES[hand];
  const place = first + step * Math.floor((to - first) / step + 0.5);
  return go(Math.abs(to - from) <= Math.abs(to - place) ? from : place);
}

/**
 * The dial after a key was pressed on a hand.
 * @param {Dial} dial
 * @param {Hand} hand
 * @param {string} key such as "ArrowUp" or "Shift+ArrowUp"
 * @param {Rules} rules
 * @returns {Dial | null} the new dial, or null when the key means nothing here
 */
export function keyed(dial, hand, key, rules) {
  const { from, step, first, turn, go } = track(dial, hand, rules);
  const home = from - (from % turn) + first;
  const way = WAYS[key.replace("Shift+", "")];
  if (way) {
    const larger = hand === "hour" && step < HOUR ? HOUR : LARGER[step];
    return go(key.startsWith("Shift") ? from + way * larger : next(from, way, step, first));
  }
  switch (key) {
    case "Home":
      return go(home);
    case "End":
      return go(home + turn - step);
    default:
      return null;
  }
}

/**
 * The dial after a step button was pressed. A geared hour hand goes by whole hours, since the
 * minute hand's buttons do the rest; a free one by quarters, which come near enough to any place.
 * @param {Dial} dial
 * @param {Hand} hand
 * @param {number} way 1 on, -1 back
 * @param {Rules} rules
 * @returns {Dial} the new dial
 */
export function pressed(dial, hand, way, rules) {
  const { from, step, first, go } = track(dial, hand, rules);
  if (hand === "minute") {
    return go(next(from, way, step, first));
  }
  return go(rules.mode === "geared" ? from + way * HOUR : next(from, way, Math.max(step, 15), 0));
}

/**
 * The places that a hand moves between. They are counted in minutes: of the day when the hands
 * are geared, else of the hand's own turn.
 * @param {Dial} dial
 * @param {Hand} hand
 * @param {Rules} rules
 * @returns {{ from: number, step: number, first: number, turn: number,
 *   go: (to: number) => Dial }} where the hand is, how far its places are apart, the first of
 *   them in a turn, how long a turn is, and the dial with the hand elsewhere
 */
function track(dial, hand, { mode, hour_drag: hourDrag, snap }) {
  const turn = hand === "hour" ? HALF_DAY : HOUR;
  if (mode === "free") {
    const go = (/** @type {number} */ to) => ({ ...dial, [hand]: wrap(to, turn) });
    return { from: dial[hand], step: snap, first: 0, turn, go };
  }
  const from = timeMeant(dial);
  return hand === "hour" && hourDrag === "steps"
    ? { from, step: HOUR, first: from % HOUR, turn, go: dialAt }
    : { from, step: snap, first: 0, turn, go: dialAt };
}

/**
 * @param {number} from
 * @param {number} way
 * @param {number} step
 * @param {number} first
 * @returns {number} the next of the places that are a step apart
 */
function next(from, way, step, first) {
  const steps = (from - first) / step;
  return first + step * (way > 0 ? Math.floor(steps) + 1 : Math.ceil(steps) - 1);
}
