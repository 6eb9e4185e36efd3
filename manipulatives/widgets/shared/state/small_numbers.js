/** Whole numbers below a hundred in words. */
import WORDS from "../../../data/number_words.json" with { type: "json" };

const { small: SMALL, tens: TENS } = WORDS;

/**
 * A number below a hundred in words.
 * @param {number} number whole, 0 to 99
 * @returns {string} such as "forty-one"
 */
export function belowHundred(number) {
  const ones = number % 10;
  return number < SMALL.length
    ? SMALL[number]
    : TENS[Math.floor(number / 10)] + (ones ? `-${SMALL[ones]}` : "");
}
