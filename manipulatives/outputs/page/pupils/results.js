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
 * @property {number} round of which round of the lesson, from 1
 * @property {object} options those that the round set for the skill
 * @property {object} asked how the task began, what solves it, and its answer
 *
 * @typedef {{ heading: string, results: Result[] }} Row what was tried of one round
 */
import { recordFile } from "../shared/record.js";

/**
 * @param {import("../shared/record.js").Source} source
 * @param {import("../shared/record.js").Record} record
 * @param {{
 *   title: string, seed: number, code: string | null, date: string, tasks: Result[],
 * }} contents the date as "2026-11-25"
 * @returns {{ name: string, text: string }} what the file is called, and what stands in it
 */
export function resultsFile(source, record, contents) {
  return recordFile("results", [contents.code, contents.date], source, record, contents);
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
