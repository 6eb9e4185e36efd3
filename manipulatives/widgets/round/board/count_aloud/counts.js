/** The numbers that the class counts aloud while the board is wiped. */

const DOZEN = 12;
const TEN = 10;
const HUNDRED = 100;

/**
 * The count in steps of a number: fives and tens to a hundred, which is where they lead; others
 * twelve times, as far as tables go, and large ones ten times.
 * @param {number} by 1 to 100; anything else counts nothing
 * @returns {number[]}
 */
export function countsBy(by) {
  if (!Number.isInteger(by) || by < 1) {
    return [];
  }
  const times = by === 5 || by === TEN ? HUNDRED / by : by <= DOZEN ? DOZEN : TEN;
  return Array.from({ length: times }, (_, index) => by * (index + 1));
}
