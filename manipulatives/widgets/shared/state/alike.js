/** Plain data compared. */

/**
 * Whether two pieces of plain data are alike all the way down.
 * @param {any} one
 * @param {any} other
 * @returns {boolean}
 */
export function alike(one, other) {
  if (Object.is(one, other)) {
    return true;
  }
  if (typeof one !== "object" || typeof other !== "object" || !one || !other) {
    return false;
  }
  // Bytes have no keys of their own to compare.
  if (Array.isArray(one) !== Array.isArray(other) || ArrayBuffer.isView(one)) {
    return false;
  }
  const names = Object.keys(one);
  return names.length === Object.keys(other).length &&
    names.every((name) => Object.hasOwn(other, name) && alike(one[name], other[name]));
}
