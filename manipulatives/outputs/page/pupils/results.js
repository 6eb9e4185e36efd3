/**
 * What one pupil did with a lesson, as a small file to hand in: plain data, without any name.
 *
 * @typedef {object} Result one question that a pupil tried
 * @property {string} skill
 * @property {string} prompt
 * @property {(string | Record<string, any> | null)[]} given every answer, in order
 * @property {number} tries
 * @property {boolean} right
 * @property {string | null} rule the last foreseen mistake that an answer matched
 * @property {number} hints
 * @property {boolean} twin whether it is a twin asked at the end, in place of a question that was
 *   not solved
 * @property {number} round number of its round in the lesson, from 1
 * @property {object} options the options of the skill in this round
 * @property {object} asked start, goal and answer of the task
 *
 * @typedef {{ heading: string, results: Result[] }} Row the questions tried in one round
 */
import { recordFile } from "../shared/record.js";

/**
 * @param {import("../shared/record.js").Source} source
 * @param {import("../shared/record.js").Record} record
 * @param {{
 *   title: string, seed: number, code: string | null, date: string, tasks: Result[],
 * }} contents the date as "2026-11-25"
 * @returns {{ name: string, text: string }} name and content of the file
 */
export function resultsFile(source, record, contents) {
  return recordFile("results", [contents.code, contents.date], source, record, contents);
}

/**
 * How a round went, in words.
 * @param {Result[]} results
 * @returns {string} such as "3 of 4 right"
 */
export function scoreInWords(results) {
  return `${results.filter(({ right }) => right).length} of ${results.length} right`;
}

/**
 * The answers to a question on one line; "made" for one that was made with a manipulative.
 * @param {Result} result
 * @returns {string}
 */
export function answersOf({ given }) {
  return given.map((each) => (typeof each === "string" ? each : "made")).join(", ");
}
