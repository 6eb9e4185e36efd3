/** Arithmetic as it is written by hand: the minus is as long as the plus. */

/** As long as the plus. */
export const MINUS = "\u2212";

/**
 * A text with its signs drawn as signs; hyphens within words stay.
 * @param {string} text such as "63 - 29"
 * @returns {string}
 */
export function signed(text) {
  return text.replaceAll(" - ", ` ${MINUS} `);
}
