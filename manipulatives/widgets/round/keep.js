/**
 * What the browser keeps of a round, so that a page opened again stands where it stood. Only a
 * page or a served board keeps anything; a notebook does not. Where keeping is refused, nothing
 * is kept and everything else works.
 *
 * @typedef {{ read: () => any, write: (data: any) => void }} Keep
 */

/**
 * The place where one round is kept.
 * @param {string} key the round's own key; "" keeps nothing
 * @returns {Keep}
 */
export function openKeep(key) {
  // A page says of itself that it teaches, and which lesson it is.
  const { kitSession, kitLesson = "" } = document.documentElement.dataset;
  const full = `${kitLesson}/${key}`;
  if (!kitSession || !key) {
    return { read: () => null, write: () => {} };
  }
  return {
    read() {
      try {
        return JSON.parse(localStorage.getItem(full) ?? "null");
      } catch {
        // Refused, or not what we wrote: begin at the beginning.
        return null;
      }
    },
    write(data) {
      try {
        localStorage.setItem(full, JSON.stringify(data));
      } catch {
        // Refused or full. The round itself goes on.
      }
    },
  };
}
