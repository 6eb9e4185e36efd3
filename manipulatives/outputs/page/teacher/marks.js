/**
 * How the rounds of a lesson went, and the file in which a teacher keeps it: plain data, without
 * the name of any child.
 *
 * @typedef {"most" | "half" | "few"} Mark
 *
 * @typedef {object} Taught one round as it was taught
 * @property {string} title
 * @property {string} skill "" when nobody said
 * @property {number | null} seed
 * @property {number | null} planned seconds
 * @property {number} used milliseconds
 * @property {Mark | null} mark
 */

/**
 * The three marks, with the words on their buttons.
 * @type {readonly [Mark, string][]}
 */
export const MARKS = [["most", "Most had it"], ["half", "About half"], ["few", "Few"]];

const FORMAT = "manipulatives session";
const VERSION = 1;

/**
 * Marks that came from elsewhere; what is none is left out.
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
 * @param {{ title: string, seed: number, date: string, rounds: Taught[] }} session the date as
 *   "2026-11-25", "" for a lesson that has not begun
 * @returns {{ name: string, text: string }} what it is called, and what stands in it
 */
export function sessionFile({ title, seed, date, rounds }) {
  const data = {
    format: FORMAT,
    version: VERSION,
    title,
    seed,
    date: date || null,
    rounds: rounds.map(({ used, ...round }) => ({
      title: round.title,
      skill: round.skill,
      seed: round.seed,
      planned: round.planned,
      used: Math.round(used / 1000),
      mark: round.mark,
    })),
  };
  const plain = title.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "").slice(0, 60);
  const name = ["session", plain, date].filter(Boolean).join("-");
  return { name: `${name}.json`, text: `${JSON.stringify(data, null, 2)}\n` };
}
