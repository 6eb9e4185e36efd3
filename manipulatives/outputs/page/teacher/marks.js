/**
 * How the rounds of a lesson went, and the file that a teacher saves of it: plain data, without the
 * name of any child.
 *
 * @typedef {"most" | "half" | "few"} Mark
 *
 * @typedef {object} Taught one round as it was taught
 * @property {string} title
 * @property {number} round which round of the lesson, from 1
 * @property {string} skill "" when unknown
 * @property {object} options the options of the skill in this round
 * @property {{ prompt: string, asked: object }[]} tasks
 * @property {number | null} seed
 * @property {number | null} planned seconds
 * @property {number} used milliseconds
 * @property {Mark | null} mark
 */
import { recordFile } from "../shared/record.js";

/**
 * The three marks, with the words on their buttons.
 * @type {readonly [Mark, string][]}
 */
export const MARKS = [["most", "Most had it"], ["half", "About half"], ["few", "Few"]];

/**
 * The valid marks in stored data.
 * @param {any} data
 * @returns {Record<string, Mark>} by the name of the part
 */
export function marksOf(data) {
  const known = MARKS.map(([mark]) => mark);
  const pairs = typeof data === "object" && data !== null ? Object.entries(data) : [];
  return Object.fromEntries(pairs.filter(([, mark]) => known.includes(mark)));
}

/**
 * The words of a mark, "" for none.
 * @param {Mark | null | undefined} mark
 * @returns {string}
 */
export function wordsOf(mark) {
  return MARKS.find(([name]) => name === mark)?.[1] ?? "";
}

/**
 * A session file.
 * @param {import("../shared/record.js").Source} source
 * @param {import("../shared/record.js").Record} record
 * @param {{ title: string, seed: number, date: string | null, rounds: object[] }} contents as
 *   `sessionContents` makes it
 * @returns {{ name: string, text: string }} its name and content
 */
export function sessionFile(source, record, contents) {
  return recordFile("session", [contents.date], source, record, contents);
}

/**
 * The contents of a session file.
 * @param {{ title: string, seed: number, date: string, rounds: Taught[] }} session the date as
 *   "2026-11-25", "" for a lesson that has not begun
 */
export function sessionContents({ title, seed, date, rounds }) {
  return {
    title,
    seed,
    date: date || null,
    rounds: rounds.map(({ used, ...round }) => ({
      round: round.round,
      title: round.title,
      skill: round.skill,
      options: round.options,
      seed: round.seed,
      planned: round.planned,
      used: Math.round(used / 1000),
      mark: round.mark,
      tasks: round.tasks,
    })),
  };
}
