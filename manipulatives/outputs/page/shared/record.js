/**
 * What tells the files of a page apart, once they are saved: a random id for each, and where it
 * comes from. `lessons/records/` reads them.
 *
 * @typedef {{ kit: string | null, class: string | null, lesson: string | null }} Source the version
 *   of the kit, the id of the class, and that of the lesson
 * @typedef {{ id: string, revision: number, text: string }} Record which file it is, how often it
 *   was changed, and what stood in it last
 */

export const VERSION = 2;
// As long as a title may be.
const LONGEST_TITLE = 80;
const ID = /^[0-9a-f]{32}$/;

/**
 * Where the files of a page come from, as the page itself says it.
 * @param {HTMLElement} whole
 * @returns {Source}
 */
export function sourceOf(whole) {
  const given = JSON.parse(whole.dataset.kitSource || "{}");
  return { kit: given.kit ?? null, class: given.class ?? null, lesson: given.lesson ?? null };
}

/**
 * A record that nothing stands in yet.
 * @returns {Record}
 */
export function newRecord() {
  // Unlike randomUUID, this is there on a page from the disk or from a plain http address.
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  const id = [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return { id, revision: 0, text: "" };
}

/**
 * A record as it was saved; another one where that cannot be used.
 * @param {any} data
 * @returns {Record}
 */
export function recordOf(data) {
  const { id, revision, text } = data ?? {};
  const fine = ID.test(id) && Number.isInteger(revision) && revision >= 0 &&
    typeof text === "string";
  return fine ? { id, revision, text } : newRecord();
}

/**
 * The record of contents: of the next revision when they are not what stood in it last.
 * @param {Record} record
 * @param {object} contents
 * @returns {Record}
 */
export function revised(record, contents) {
  const text = JSON.stringify(contents);
  return text === record.text ? record : { ...record, revision: record.revision + 1, text };
}

/**
 * What is written down of a task: what was asked, so that nobody has to draw it again.
 * @param {{ start: object, goal: object, answer: string }} task
 * @returns {{ start: object, goal: object, answer: string }}
 */
export function askedOf({ start, goal, answer }) {
  return { start, goal, answer };
}

/**
 * A file to save.
 * @param {string} kind "results" or "session"
 * @param {(string | null)[]} parts of its name
 * @param {Source} source
 * @param {Record} record
 * @param {{ title: string }} contents
 * @returns {{ name: string, text: string }} what it is called, and what stands in it
 */
export function recordFile(kind, parts, source, { id, revision }, contents) {
  const data = {
    format: `manipulatives ${kind}`, version: VERSION, id, revision, ...source, ...contents,
    title: contents.title.slice(0, LONGEST_TITLE),
  };
  const plain = contents.title.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "").slice(0, 60);
  const name = [kind, plain, ...parts].filter(Boolean).join("-");
  return { name: `${name}.json`, text: `${JSON.stringify(data, null, 2)}\n` };
}
