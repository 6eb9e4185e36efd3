/**
 * Where the browser saves a round, so that a page opened again stands where it stood. Only a page
 * that says which lesson it shows saves anything; a notebook does not. Where the browser refuses,
 * nothing is saved and everything else works.
 *
 * @typedef {{ read: () => any, write: (data: any) => void }} RoundStorage
 */
import { lessonStorage, permanentStore } from "../../../shared/state/storage.js";

/**
 * The storage of one round.
 * @param {string | undefined} lesson the key of the lesson that the page shows; none saves nothing
 * @param {string} key the round's own key; "" saves nothing
 * @returns {RoundStorage}
 */
export function openStorage(lesson, key) {
  if (lesson === undefined || !key) {
    return { read: () => null, write: () => {} };
  }
  const storage = lessonStorage(permanentStore(), lesson);
  return { read: () => storage.read(key), write: (data) => storage.write(key, data) };
}
