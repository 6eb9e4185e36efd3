/**
 * What distinguishes the files that a page saves: a random id for each, and where it comes from.
 * `lessons/records/` reads them.
 *
 * @typedef {{ kit: string | null, class: string | null, lesson: string | null }} Source the version
 *   of the kit, the id of the class, and that of the lesson
 * @typedef {{ id: string, revision: number, text: string }} Record id of the file, number of
 *   changes, and its last contents
 */

export const VERSION = 2;
// The limit for titles in lesson files.
const LONGEST_TITLE = 80;
const ID = /^[0-9a-f]{32}$/;

/**
 * Where the files of a page come from, read from the attribute `data-kit-source`.
 * @param {HTMLElement} documentElement
 * @returns {Source}
 */
export function sourceOf(documentElement) {
  const given = JSON.parse(documentElement.dataset.kitSource || "{}");
  return { kit: given.kit ?? null, class: given.class ?? null, lesson: given.lesson ?? null };
}

/**
 * A new, empty record.
 * @returns {Record}
 */
export function newRecord() {
  // Unlike randomUUID, this also exists on pages from file:// and http://.
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  const id = [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return { id, revision: 0, text: "" };
}

/**
 * A record from saved data, or a new one where the data are not valid.
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
 * The record with these contents; its revision goes up by one when they differ from the last.
 * @param {Record} record
 * @param {object} contents
 * @returns {Record}
 */
export function revised(record, contents) {
  const text = JSON.stringify(contents);
  return text === record.text ? record : { ...record, revision: record.revision + 1, text };
}

/**
 * What is stored of a task, so that it need not be made again from its seed.
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
 * @returns {{ name: string, text: string }} its name and content
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
