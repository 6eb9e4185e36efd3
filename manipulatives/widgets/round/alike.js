/** Plain data compared. */

/**
 * Whether two pieces of plain data are alike all the way down.
 * @param {any} one
 * @param {any} other
 * @returns {boolean}
 */
export function alike(one, other) {
  if (typeof one !== "object" || typeof other !== "object" || !one || !other) {
    return one === other;
  }
  const names = Object.keys(one);
  return names.length === Object.keys(other).length &&
    names.every((/** @type {string} */ name) => alike(one[name], other[name]));
}
