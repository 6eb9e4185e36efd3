/** Whole numbers in words, as Python's maths/number/words.py gives them. */

import { belowHundred } from "./small_numbers.js";

/**
 * A number in words.
 * @param {number} number whole, 0 to 999999
 * @param {string} [vocabulary] with "uk" there is an "and" before the tens, with "us" there is none
 * @returns {string} such as "one hundred five" or "one hundred and five"
 */
export function numberInWords(number, vocabulary = "us") {
  const joint = vocabulary === "uk" ? " and " : " ";
  const thousands = Math.floor(number / 1000);
  const rest = number % 1000;
  if (!thousands) {
    return belowThousand(rest, joint);
  }
  const words = `${belowThousand(thousands, joint)} thousand`;
  return rest ? words + (rest < 100 ? joint : " ") + belowThousand(rest, joint) : words;
}

/**
 * @param {number} number
 * @param {string} joint
 * @returns {string}
 */
function belowThousand(number, joint) {
  const hundreds = Math.floor(number / 100);
  const rest = number % 100;
  if (!hundreds) {
    return belowHundred(rest);
  }
  return `${belowHundred(hundreds)} hundred${rest ? joint + belowHundred(rest) : ""}`;
}
