/**
 * What a clock looks like and what it shows, in words. Where nothing is read out on the face,
 * the hands are described and not the time: what is asked is never told.
 */
import { facts, timeMeant } from "./dial.js";
import { inDigits, inWords } from "./words.js";

/**
 * @typedef {import("./dial.js").Dial} Dial
 * @typedef {{ vocabulary: "us" | "uk", half_day: boolean }} Told how the time is told
 */

/**
 * Where the hour hand stands.
 * @param {number} hour 0 to 719
 * @returns {string} such as "between 4 and 5, nearer 5"
 */
export function hourPlace(hour) {
  const passed = Math.floor(hour / 60) || 12;
  const coming = (passed % 12) + 1;
  const past = hour % 60;
  if (past === 0) {
    return `exactly on the ${passed}`;
  }
  return past === 30
    ? `halfway between ${passed} and ${coming}`
    : `between ${passed} and ${coming}, nearer ${past < 30 ? passed : coming}`;
}

/**
 * Where the minute hand stands.
 * @param {number} minute 0 to 59
 * @returns {string} such as "exactly on the 7" or "2 marks past the 7"
 */
export function minutePlace(minute) {
  const passed = Math.floor(minute / 5) || 12;
  const past = minute % 5;
  return past
    ? `${past} mark${past > 1 ? "s" : ""} past the ${passed}`
    : `exactly on the ${passed}`;
}

/**
 * Where both hands stand.
 * @param {Dial} dial
 * @returns {string} one sentence for each hand
 */
export function handsInWords({ hour, minute }) {
  return `Short hand ${hourPlace(hour)}. Long hand ${minutePlace(minute)}.`;
}

/**
 * The time in digits.
 * @param {Dial} dial
 * @param {Told} told
 * @returns {string} such as "4:35", or only dashes when no clock can show the dial
 */
export function readingInDigits(dial, { vocabulary, half_day: halfDay }) {
  return facts(dial).lag ? "\u2013:\u2013\u2013" : inDigits(timeMeant(dial), vocabulary, halfDay);
}

/**
 * The time in words.
 * @param {Dial} dial
 * @param {Told} told
 * @returns {string} such as "four thirty-five", or what is wrong with the hour hand
 */
export function readingInWords(dial, { vocabulary, half_day: halfDay }) {
  return whyNoTime(dial) ?? inWords(timeMeant(dial), vocabulary, null, halfDay);
}

/**
 * What is wrong with the hour hand, as Python's why_no_time says it.
 * @param {Dial} dial
 * @returns {string | null} one sentence, or null when a clock can show the dial
 */
export function whyNoTime(dial) {
  const { lag, meant } = facts(dial);
  const belongs = hourPlace(meant);
  const further = `a little further ${lag > 0 ? "back" : "on"}`;
  return lag
    ? `The short hand belongs ${belongs === hourPlace(dial.hour) ? further : belongs}.`
    : null;
}
