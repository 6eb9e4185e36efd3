/**
 * How long a lesson has taken, part by part, as plain data without a timer. No time counts while
 * the page is closed or the machine asleep.
 *
 * @typedef {object} TimeUsed
 * @property {string} day when the lesson began, "2026-11-25"; "" before
 * @property {Record<string, number>} used milliseconds by the name of the part
 * @property {number | null} at time of the last update, in milliseconds since 1970
 */

// A page in the background is updated once a minute; a longer gap was a pause.
const LONGEST_GAP_MS = 90_000;

/**
 * The time used of a lesson that has not begun.
 * @returns {TimeUsed}
 */
export function noTimeUsed() {
  return { day: "", used: {}, at: null };
}

/**
 * Add the time since the last update to one part.
 * @param {TimeUsed} timeUsed
 * @param {string} part
 * @param {number} now
 * @returns {TimeUsed}
 */
export function withTime({ day, used, at }, part, now) {
  const since = at === null ? 0 : now - at;
  const counted = since > 0 && since <= LONGEST_GAP_MS ? since : 0;
  return {
    day: day || dayOf(now),
    used: { ...used, [part]: (used[part] ?? 0) + counted },
    at: now,
  };
}

/**
 * The time used from stored data; none where the data are not valid.
 * @param {any} data
 * @returns {TimeUsed}
 */
export function timeUsedOf(data) {
  const { day, used } = data ?? {};
  if (!/^\d{4}-\d\d-\d\d$/.test(day) || typeof used !== "object" || used === null) {
    return noTimeUsed();
  }
  const fine = Object.entries(used).filter(([, time]) => Number.isFinite(time) && time >= 0);
  return { day, used: Object.fromEntries(fine), at: null };
}

/**
 * The milliseconds of all parts together.
 * @param {TimeUsed} timeUsed
 * @returns {number}
 */
export function total({ used }) {
  return Object.values(used).reduce((sum, time) => sum + time, 0);
}

/**
 * The time taken against the time planned, in whole minutes, for the top bar.
 * @param {number} used milliseconds
 * @param {number} planned seconds; 0 when unknown
 * @param {boolean} begun
 * @returns {string} "6 of 15 min", "15 min" before it begins
 */
export function inMinutes(used, planned, begun) {
  const all = planned ? [String(Math.round(planned / 60) || 1)] : [];
  const words = begun ? [String(Math.floor(used / 60_000)), ...all].join(" of ") : all.join("");
  return words && `${words} min`;
}

/**
 * Time in minutes and seconds.
 * @param {number} milliseconds
 * @returns {string} "6:05"
 */
export function inDigits(milliseconds) {
  const seconds = Math.floor(milliseconds / 1000);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}

/**
 * The date in the local time zone.
 * @param {number} now
 * @returns {string}
 */
function dayOf(now) {
  const day = new Date(now);
  const parts = [day.getFullYear(), day.getMonth() + 1, day.getDate()];
  return parts.map((part) => String(part).padStart(2, "0")).join("-");
}
