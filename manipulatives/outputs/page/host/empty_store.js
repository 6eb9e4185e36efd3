/**
 * A browser's store that comes up empty though something was kept.
 *
 * Chromium (156) does that about once in a hundred times to a page from a disk that is loaded
 * again: nothing that was kept is there, and nothing lasts that is kept in its place. The next time
 * it is whole. What the tab keeps is spared, so a page notes there whether there is anything; what
 * is noted in the moment of leaving may come too late, so it notes that all along.
 *
 * @typedef {import("../../../widgets/shared/state/storage.js").Store} Store
 */

const NOTE = "manipulatives/kept";

/** How often in a row a page is loaded again; then it is believed. */
const OFTEN = 3;

/** When a page notes that: as it is used, and once more as it is left. */
const NEWS = ["pointerup", "keyup", "pagehide"];

/** Note now, and again whenever that may have changed, whether a page's store has anything.
 * @param {Store | null} long what the browser keeps beyond the day
 * @param {Store | null} tab what it keeps for this tab
 */
export function keepNoting(long, tab) {
  noteStore(long, tab);
  NEWS.forEach((news) => addEventListener(news, () => noteStore(long, tab)));
}

/** Note whether a page's store has anything.
 * @param {Store | null} long
 * @param {Store | null} tab
 */
export function noteStore(long, tab) {
  try {
    if (Object.keys(long ?? {}).length > 0) {
      if (tab?.getItem(NOTE) !== "0") {
        tab?.setItem(NOTE, "0");
      }
    } else {
      tab?.removeItem?.(NOTE);
    }
  } catch {
    // Refused. Then nothing is kept anyway.
  }
}

/** Whether a page should be loaded again, for its store is empty and was not before.
 * @param {Store | null} long
 * @param {Store | null} tab
 * @returns {boolean}
 */
export function cameUpEmpty(long, tab) {
  try {
    const times = tab?.getItem(NOTE) ?? null;
    if (times === null || long === null || Object.keys(long).length > 0) {
      return false;
    }
    tab?.setItem(NOTE, String(Number(times) + 1));
    return Number(times) < OFTEN;
  } catch {
    return false;
  }
}
