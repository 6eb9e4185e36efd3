/**
 * What one pupil did with a lesson, as a small file to hand in: plain data, without any name.
 *
 * @typedef {object} Result one question that was tried
 * @property {string} skill
 * @property {string} prompt
 * @property {(string | Record<string, any> | null)[]} given every answer, in order
 * @property {number} tries
 * @property {boolean} right
 * @property {string | null} rule the last mistake that was foreseen
 * @property {number} hints
 * @property {boolean} twin whether it was asked at the end, instead of one that was not solved
 *
 * @typedef {{ heading: string, results: Result[] }} Row what was tried of one round
 */

const FORMAT = "manipulatives results";
const VERSION = 1;
// As long as a title of a lesson may be.
const LONGEST = 80;

/**
 * @param {{ title: string, seed: number, code: string, date: string, tasks: Result[] }} results
 *   the date as "2026-11-25"
 * @returns {{ name: string, text: string }} what the file is called, and what stands in it
 */
export function resultsFile({ title, seed, code, date, tasks }) {
  const data = {
    format: FORMAT,
    version: VERSION,
    title: title.slice(0, LONGEST),
    seed,
    code: code || null,
    date,
    tasks,
  };
  const plain = title.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "").slice(0, 60);
  const name = ["results", plain, code, date].filter(Boolean).join("-");
  return { name: `${name}.json`, text: `${JSON.stringify(data, null, 2)}\n` };
}

/**
 * How a round went, in words.
 * @param {Result[]} results
 * @returns {string} such as "3 of 4 right"
 */
export function summed(results) {
  return `${results.filter(({ right }) => right).length} of ${results.length} right`;
}

/**
 * The answers to a question as one line; what was made is no text.
 * @param {Result} result
 * @returns {string}
 */
export function answersOf({ given }) {
  return given.map((each) => (typeof each === "string" ? each : "made")).join(", ");
}
