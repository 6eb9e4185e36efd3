/** What is written beside the mats: the number, its parts, its name, and the last step. */
import { numberInWords } from "../../shared/number_words.js";
import { html } from "../../shared/svg.js";
import { NAMES } from "../drawing/mats.js";
import { compared, numberOf } from "./places.js";
import { partsOf, sentence } from "../tell.js";

/**
 * @typedef {import("./places.js").Mat} Mat
 *
 * @typedef {object} Readings
 * @property {boolean} expanded
 * @property {boolean} zeros
 * @property {boolean} words
 * @property {boolean} equation
 * @property {"us" | "uk"} vocabulary
 *
 * @typedef {import("../tell.js").Told & Readings} Read
 */

/**
 * Make the place for the readings.
 * @returns {{
 *   root: HTMLElement,
 *   read: (mat: Mat, step: string, read: Read) => void,
 *   sentence: (mat: Mat, read: Read) => string,
 *   isEmpty: () => boolean,
 * }} the element; write what is true of a mat, and its last step; the number, or the sentence about
 *   two, as it is said; whether nothing is to be written
 */
export function makeReading() {
  const number = html("div", { class: "blocks-number" });
  const parts = html("div", { class: "blocks-parts" });
  const words = html("div", { class: "blocks-words" });
  const steps = html("div", { class: "blocks-steps" });
  const root = html("div", { class: "blocks-reading" }, number, parts, words, steps);

  /**
   * @param {Mat} mat
   * @param {Read} read
   */
  function terms(mat, read) {
    const [one, other = 0] = mat.map(numberOf);
    return sentence(mat, compared(one, other), read);
  }

  /**
   * @param {Mat} mat
   * @param {Read} read
   * @param {(blocks: import("./places.js").Blocks) => (Node | string)[]} write
   * @returns {Node[]} a line for each mat, with its name where there are two
   */
  function lines(mat, { pair }, write) {
    return mat.map((blocks, at) => html(
      "div", {},
      ...(mat.length > 1 ? [html("span", { class: "blocks-of" }, `${NAMES[pair][at]}: `)] : []),
      ...write(blocks),
    ));
  }

  return {
    root,
    read(mat, step, read) {
      const said = terms(mat, read);
      number.replaceChildren(...said.map((term) =>
        html("span", { class: term === null ? "is-blank" : "" }, term ?? "")));
      number.hidden = said.length === 0;
      parts.replaceChildren(...lines(mat, read, (blocks) =>
        partsOf(blocks, read.zeros).flatMap(({ place, worth }, index) => [
          index ? " + " : "", html("span", { class: `of-${place}` }, String(worth)),
        ])));
      parts.hidden = !read.expanded;
      words.replaceChildren(...lines(mat, read, (blocks) =>
        [numberInWords(numberOf(blocks), read.vocabulary)]));
      words.hidden = !read.words;
      steps.replaceChildren(...step.split("; ").map((line) => html("div", {}, line)));
      steps.hidden = !read.equation;
    },
    sentence: (mat, read) => terms(mat, read).map((term) => term ?? "what").join(" "),
    isEmpty: () => [number, parts, words, steps].every((line) => line.hidden),
  };
}
