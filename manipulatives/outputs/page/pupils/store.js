/**
 * Where a pupil's work is kept: under the lesson with its seed, and the pupil's code. Tablets are
 * shared, so nothing of it is there once the pupil has finished.
 *
 * @typedef {import("../../../widgets/shared/state/storage.js").Store} Store
 * @typedef {{
 *   stage: number, parts: Record<string, Part>,
 *   record: import("../shared/record.js").Record | null,
 * }} Work where a pupil is, what was done, and the results file of it once there was one
 * @typedef {{ kept: any, results: any[] }} Part what a round keeps, and what was answered in it
 */
import { lessonStorage } from "../../../widgets/shared/state/storage.js";
import { recordOf } from "../shared/record.js";

// Enough to tell a class apart, too little for a name and a surname.
const LONGEST = 8;

/**
 * A code as it is kept: letters and digits.
 * @param {string} text
 * @returns {string}
 */
export function codeOf(text) {
  return text.normalize("NFC").toUpperCase().replace(/[^\p{L}\p{N}]/gu, "").slice(0, LONGEST);
}

/**
 * Whether the browser keeps anything at all.
 * @param {Store | null} storage
 * @returns {boolean}
 */
export function keeps(storage) {
  const name = "pupils/trial";
  try {
    storage?.setItem(name, "1");
    const kept = storage?.getItem(name) === "1";
    storage?.removeItem?.(name);
    return kept;
  } catch {
    return false;
  }
}

/**
 * The work of one pupil.
 * @param {Store | null} storage
 * @param {string} lesson its key
 * @param {string} code
 * @returns {{ read: () => Work | null, write: (work: Work) => void, forget: () => void }}
 */
export function openWork(storage, lesson, code) {
  const memory = lessonStorage(storage, `pupils/${lesson}/${code}`);
  return {
    read: () => workIn(memory.read("work")),
    write: (work) => memory.write("work", work),
    forget: memory.forget,
  };
}

/**
 * What was kept, if it can be used.
 * @param {any} kept
 * @returns {Work | null}
 */
export function workIn(kept) {
  const { stage, parts, record } = kept ?? {};
  if (!Number.isInteger(stage) || stage < 0 || typeof parts !== "object" || parts === null) {
    return null;
  }
  const fine = Object.entries(parts).filter(([, part]) => Array.isArray(part?.results));
  return { stage, parts: Object.fromEntries(fine), record: record ? recordOf(record) : null };
}
