/**
 * Where a pupil's work is stored: under the lesson with its seed, and the pupil's code. Tablets are
 * shared, so it is deleted when the pupil has finished.
 *
 * @typedef {import("../../../widgets/shared/state/storage.js").Store} Store
 * @typedef {{
 *   stage: number, parts: Record<string, Part>,
 *   record: import("../shared/record.js").Record | null,
 * }} Work the stage, the rounds, and the results file once there is one
 * @typedef {{ saved: any, results: any[] }} Part the state and the results of a round
 */
import { lessonStorage } from "../../../widgets/shared/state/storage.js";
import { recordOf } from "../shared/record.js";

// Long enough to distinguish the pupils of a class, too short for a name and a surname.
const LONGEST = 8;

/**
 * A code in the form in which it is stored: capital letters and digits.
 * @param {string} text
 * @returns {string}
 */
export function codeOf(text) {
  return text.normalize("NFC").toUpperCase().replace(/[^\p{L}\p{N}]/gu, "").slice(0, LONGEST);
}

/**
 * Whether the browser lets this page store data.
 * @param {Store | null} store
 * @returns {boolean}
 */
export function canStore(store) {
  const name = "pupils/trial";
  try {
    store?.setItem(name, "1");
    const stored = store?.getItem(name) === "1";
    store?.removeItem?.(name);
    return stored;
  } catch {
    return false;
  }
}

/**
 * The work of one pupil.
 * @param {Store | null} store
 * @param {string} lesson its key
 * @param {string} code
 * @returns {{ read: () => Work | null, write: (work: Work) => void, forget: () => void }}
 */
export function openWork(store, lesson, code) {
  const storage = lessonStorage(store, `pupils/${lesson}/${code}`);
  return {
    read: () => workIn(storage.read("work")),
    write: (work) => storage.write("work", work),
    forget: storage.forget,
  };
}

/**
 * Stored work, or null where it cannot be used.
 * @param {any} data
 * @returns {Work | null}
 */
export function workIn(data) {
  const { stage, parts, record } = data ?? {};
  if (!Number.isInteger(stage) || stage < 0 || typeof parts !== "object" || parts === null) {
    return null;
  }
  const fine = Object.entries(parts).filter(([, part]) => Array.isArray(part?.results));
  return {
    stage,
    // A page made by version 0.1.0 of the kit stored the state of a round as `kept`.
    parts: Object.fromEntries(fine.map(([id, { saved, kept, results }]) => [
      id, { saved: saved ?? kept ?? null, results },
    ])),
    record: record ? recordOf(record) : null,
  };
}
