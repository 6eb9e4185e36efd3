/** What is written beside the mats: the number, its parts, its name, and the last step. */
import WORDS from "../../data/place_words.json" with { type: "json" };
import { numberInWords } from "../shared/state/number_words.js";
import { html } from "../shared/svg.js";
import { compared, numberOf } from "./state/places.js";
import { isStep, matEquation, partsOf, runOf, sentence } from "./state/tell.js";

/**
 * @typedef {import("./state/places.js").Mat} Mat
 *
 * @typedef {object} Readings
 * @property {boolean} expanded
 * @property {boolean} zeros
 * @property {boolean} words
 * @property {boolean} equation
 * @property {"us" | "uk"} vocabulary
 *
 * @typedef {import("./state/tell.js").Told & Readings} Read
 */

/**
 * The steps that are told: several of one kind are told as one.
 * @param {Mat} first
 */
function makeSteps(first) {
  // Where the steps that are told began, and what they are.
  let told = { from: first, run: "" };
  let equation = "";
  return {
    equation: () => equation,
    /**
     * @param {Mat} before
     * @param {Mat} after
     * @param {boolean} fromOutside whether it came from outside
     */
    go(before, after, fromOutside) {
      const run = fromOutside ? "" : runOf(before, after);
      told = { from: run && run === told.run ? told.from : before, run };
      equation = fromOutside && !isStep(before, after) ? "" : matEquation(told.from, after);
    },
  };
}

/**
 * Make the place for the readings.
 * @param {Mat} first
 * @returns {{
 *   root: HTMLElement,
 *   step: (before: Mat, after: Mat, fromOutside: boolean) => void,
 *   read: (mat: Mat, read: Read) => void,
 *   sentence: (mat: Mat, read: Read) => string,
 *   isEmpty: () => boolean,
 * }} the element; a step was made, or it came from outside; write what is true of a mat, and its
 *   last step; the number, or the sentence about
 *   two, as it is said; whether nothing is to be written
 */
export function makeReading(first) {
  const told = makeSteps(first);
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
   * @param {(blocks: import("./state/places.js").Blocks) => (Node | string)[]} write
   * @returns {Node[]} a line for each mat, with its name where there are two
   */
  function lines(mat, { pair }, write) {
    return mat.map((blocks, at) => html(
      "div", {},
      ...(mat.length > 1 ? [nameOf(pair, at)] : []),
      ...write(blocks),
    ));
  }

  /**
   * @param {Read["pair"]} pair
   * @param {number} at
   */
  function nameOf(pair, at) {
    return html("span", { class: "blocks-of" }, `${WORDS.mats[pair][at]}: `);
  }

  return {
    root,
    step: told.go,
    read(mat, read) {
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
      steps.replaceChildren(...told.equation().split("; ").map((line) => html("div", {}, line)));
      steps.hidden = !read.equation;
    },
    sentence: (mat, read) => terms(mat, read).map((term) => term ?? "what").join(" "),
    isEmpty: () => [number, parts, words, steps].every((line) => line.hidden),
  };
}
