/** Arithmetic as it is written by hand: the minus is as long as the plus. */
import { html } from "./svg.js";

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

/**
 * A text for beginning readers: with its signs, and no word broken at its hyphen.
 * @param {string} text such as "It is ten forty-five."
 * @returns {(string | HTMLElement)[]} what is put where it is to stand
 */
export function written(text) {
  return signed(text).split(/([\p{L}]+(?:-[\p{L}]+)+)/u).map((part, index) =>
    (index % 2 ? html("span", { class: "kit-unbroken" }, part) : part));
}
