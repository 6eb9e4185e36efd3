/**
 * What the browser keeps of a round, so that a page opened again stands where it stood. Only a
 * page or a served board keeps anything; a notebook does not. Where keeping is refused, nothing
 * is kept and everything else works.
 *
 * @typedef {{ read: () => any, write: (data: any) => void }} Keep
 */
import { longStore, openMemory } from "../shared/memory.js";

/**
 * The place where one round is kept.
 * @param {string} key the round's own key; "" keeps nothing
 * @returns {Keep}
 */
export function openKeep(key) {
  // A page says of itself that it teaches, and which lesson it is.
  const { kitSession, kitLesson = "" } = document.documentElement.dataset;
  if (!kitSession || !key) {
    return { read: () => null, write: () => {} };
  }
  const memory = openMemory(longStore(), kitLesson);
  return { read: () => memory.read(key), write: (data) => memory.write(key, data) };
}
