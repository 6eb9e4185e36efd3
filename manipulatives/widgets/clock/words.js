/**
 * Clock times in digits and in words, as Python's words/clock_digits.py and words/clock.py give
 * them. A time is a whole number of minutes since midnight, 0 to 1439; a dial reading is one too.
 * @typedef {"us" | "uk"} Vocabulary
 * @typedef {"digital" | "relative"} Style
 */

import { belowHundred } from "../shared/state/small_numbers.js";

/**
 * The time as a twelve-hour clock writes it.
 * @param {number} minute the time
 * @param {Vocabulary} [vocabulary] how a.m. and p.m. are written
 * @param {boolean} [halfDay] with a.m. or p.m., or noon or midnight after 12:00
 * @returns {string} such as "4:35" or "4:35 p.m."
 */
export function inDigits(minute, vocabulary = "us", halfDay = false) {
  const past = String(minute % 60).padStart(2, "0");
  const digits = `${twelve(Math.floor(minute / 60))}:${past}`;
  return halfDay ? `${digits} ${halfName(minute, vocabulary)}` : digits;
}

/**
 * The time in the words that the kit says it in.
 * @param {number} minute the time
 * @param {Vocabulary} [vocabulary] its usual style is meant when none is given
 * @param {Style | null} [style] "four thirty-five" or "twenty-five to five"
 * @param {boolean} [halfDay] with a.m. or p.m., and noon and midnight by name
 * @returns {string} such as "four thirty-five"
 */
export function inWords(minute, vocabulary = "us", style = null, halfDay = false) {
  const usual = vocabulary === "uk" ? "relative" : "digital";
  const mark = halfDay ? ` ${halfName(minute, vocabulary)}` : "";
  if (minute % 60 > 0 && (style ?? usual) === "digital") {
    return digital(minute) + mark;
  }
  const { lead, hour } = relative(minute);
  if (halfDay && hour % 12 === 0) {
    return lead + nameOfTwelve(hour);
  }
  const oclock = lead || halfDay ? "" : " o'clock";
  return lead + belowHundred(twelve(hour)) + oclock + mark;
}

/**
 * @param {number} minute the time, not on the hour
 * @returns {string} its digits in words
 */
function digital(minute) {
  const past = minute % 60;
  const hour = belowHundred(twelve(Math.floor(minute / 60)));
  return `${hour} ${past < 10 ? "oh " : ""}${belowHundred(past)}`;
}

/**
 * @param {number} minute the time
 * @returns {{ lead: string, hour: number }} what comes before which hour of the day; 24 is its end
 */
function relative(minute) {
  const hour = Math.floor(minute / 60);
  const past = minute % 60;
  if (past > 30) {
    return { lead: `${count(60 - past)} to `, hour: hour + 1 };
  }
  return { lead: past > 0 ? `${count(past)} past ` : "", hour };
}

/**
 * @param {number} minute the time
 * @param {Vocabulary} vocabulary how a.m. and p.m. are written
 * @returns {string} the half of the day; noon and midnight have names of their own
 */
function halfName(minute, vocabulary) {
  if (minute % 720 === 0) {
    return nameOfTwelve(minute / 60);
  }
  const letter = minute < 720 ? "a" : "p";
  return vocabulary === "uk" ? `${letter}m` : `${letter}.m.`;
}

/**
 * @param {number} hour of the day; 24 is its end
 * @returns {string} what twelve o'clock is called
 */
function nameOfTwelve(hour) {
  return hour % 24 === 0 ? "midnight" : "noon";
}

/**
 * @param {number} minutes past or to, 1 to 30
 * @returns {string} the minutes in words
 */
function count(minutes) {
  if (minutes % 15 === 0) {
    return minutes === 15 ? "quarter" : "half";
  }
  const unit = minutes === 1 ? " minute" : " minutes";
  return belowHundred(minutes) + (minutes % 5 === 0 ? "" : unit);
}

/**
 * @param {number} hour of the day
 * @returns {number} its numeral on the dial
 */
function twelve(hour) {
  return hour % 12 || 12;
}
