/**
 * How long a lesson has taken, part by part, as plain data: nothing ticks here. While the page is
 * closed, or the machine asleep, no time passes.
 *
 * @typedef {object} Spent
 * @property {string} day when it began, "2026-11-25"; "" before
 * @property {Record<string, number>} used milliseconds by the name of the part
 * @property {number | null} at when it was last looked at, in milliseconds since 1970
 */

// A page in the background is looked at once a minute; what is longer was a pause.
const GAP = 90_000;

/**
 * A lesson that has not begun.
 * @returns {Spent}
 */
export function unspent() {
  return { day: "", used: {}, at: null };
}

/**
 * The time that has passed since the last look goes to one part.
 * @param {Spent} spent
 * @param {string} part
 * @param {number} now
 * @returns {Spent}
 */
export function passed({ day, used, at }, part, now) {
  const since = at === null ? 0 : now - at;
  const counted = since > 0 && since <= GAP ? since : 0;
  return {
    day: day || dayOf(now),
    used: { ...used, [part]: (used[part] ?? 0) + counted },
    at: now,
  };
}

/**
 * What was kept, as it is when a page opens again; what is none has not begun.
 * @param {any} data
 * @returns {Spent}
 */
export function spentOf(data) {
  const { day, used } = data ?? {};
  if (!/^\d{4}-\d\d-\d\d$/.test(day) || typeof used !== "object" || used === null) {
    return unspent();
  }
  const fine = Object.entries(used).filter(([, time]) => Number.isFinite(time) && time >= 0);
  return { day, used: Object.fromEntries(fine), at: null };
}

/**
 * The milliseconds of all parts together.
 * @param {Spent} spent
 * @returns {number}
 */
export function total({ used }) {
  return Object.values(used).reduce((sum, time) => sum + time, 0);
}

/**
 * The time taken against the time planned, in whole minutes, for a line that many read.
 * @param {number} used milliseconds
 * @param {number} planned seconds; 0 when nobody said
 * @param {boolean} begun
 * @returns {string} "6 of 15 min", "15 min" before it begins
 */
export function inMinutes(used, planned, begun) {
  const all = planned ? [String(Math.round(planned / 60) || 1)] : [];
  const words = begun ? [String(Math.floor(used / 60_000)), ...all].join(" of ") : all.join("");
  return words && `${words} min`;
}

/**
 * Time as digits, as a watch has it.
 * @param {number} milliseconds
 * @returns {string} "6:05"
 */
export function inDigits(milliseconds) {
  const seconds = Math.floor(milliseconds / 1000);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}

/**
 * The day by the clock on the wall.
 * @param {number} now
 * @returns {string}
 */
function dayOf(now) {
  const day = new Date(now);
  const parts = [day.getFullYear(), day.getMonth() + 1, day.getDate()];
  return parts.map((part) => String(part).padStart(2, "0")).join("-");
}
