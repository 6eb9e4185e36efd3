/**
 * The time that a round allows, as plain data: nothing ticks here. Time away from the questions
 * does not count, for the timer rests while an answer is shown; and running out costs nothing.
 *
 * @typedef {object} Timer
 * @property {"shown" | "hidden" | "off"} mode
 * @property {number} allowed seconds, with all that was added
 * @property {number} used milliseconds used up before `since`
 * @property {number | null} since when it began to run, in milliseconds since 1970; null at rest
 * @property {boolean} held paused by hand, so that the next question does not start it again
 */

/**
 * A full timer at rest.
 * @param {number} seconds
 * @param {Timer["mode"]} mode
 * @returns {Timer}
 */
export function fullTimer(seconds, mode) {
  return { mode, allowed: seconds, used: 0, since: null, held: false };
}

/**
 * The milliseconds left, never less than none.
 * @param {Timer} timer
 * @param {number} now
 * @returns {number}
 */
export function left({ allowed, used, since }, now) {
  // A clock that was set back in the meantime gives no time and takes none.
  const running = since === null ? 0 : Math.max(0, now - since);
  return Math.max(0, allowed * 1000 - used - running);
}

/**
 * Whether it could be started: it is not off, not running and not used up.
 * @param {Timer} timer
 * @returns {boolean}
 */
export function waiting(timer) {
  return timer.mode !== "off" && timer.since === null && left(timer, 0) > 0;
}

/**
 * Start it, or let it go on.
 * @param {Timer} timer
 * @param {number} now
 * @returns {Timer}
 */
export function run(timer, now) {
  return waiting(timer) ? { ...timer, since: now, held: false } : timer;
}

/**
 * Let it rest where it stands.
 * @param {Timer} timer
 * @param {number} now
 * @returns {Timer}
 */
export function rest(timer, now) {
  if (timer.since === null) {
    return timer;
  }
  return { ...timer, used: timer.allowed * 1000 - left(timer, now), since: null };
}

/**
 * Show it, hide it while it runs on, or turn it off.
 * @param {Timer} timer
 * @param {Timer["mode"]} mode
 * @param {number} now
 * @returns {Timer}
 */
export function show(timer, mode, now) {
  return { ...(mode === "off" ? rest(timer, now) : timer), mode };
}

/**
 * A timer that came from elsewhere, or null when it is none.
 * @param {any} data
 * @returns {Timer | null}
 */
export function timerOf(data) {
  const { mode, allowed, used, since, held } = data ?? {};
  const fine = ["shown", "hidden", "off"].includes(mode) &&
    [allowed, used].every((number) => Number.isFinite(number) && number >= 0) &&
    (since === null || Number.isFinite(since));
  return fine ? { mode, allowed, used, since, held: held === true } : null;
}

/**
 * Time as digits: "2:05".
 * @param {number} milliseconds
 * @returns {string}
 */
export function inDigits(milliseconds) {
  const seconds = Math.ceil(milliseconds / 1000);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}

/**
 * Time as words: "2 minutes 5 seconds".
 * @param {number} milliseconds
 * @returns {string}
 */
export function inWords(milliseconds) {
  const seconds = Math.ceil(milliseconds / 1000);
  const parts = [[Math.floor(seconds / 60), "minute"], [seconds % 60, "second"]];
  const words = parts.filter(([count]) => count)
    .map(([count, unit]) => `${count} ${unit}${count === 1 ? "" : "s"}`);
  return words.join(" ") || "no time";
}
