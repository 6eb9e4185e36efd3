/**
 * Watches the kernel behind a board by polling the server. A kernel that has ended stays ended; a
 * server that does not answer may come back.
 *
 * @typedef {"alive" | "ended" | "silent"} State  silent: the server does not answer
 * @typedef {boolean | "late" | "refused"} Answer  whether the kernel lives; late: none in time;
 *   refused: no server is there
 */

/** Milliseconds between an answer and the next question. */
export const QUESTION_DELAY_MS = 1000;

/** After how many questions in a row without an answer in time the server counts as silent. */
const MOST_MISSES = 2;

/** The next state after one poll.
 * @param {Answer} answer
 * @param {number} misses polls in a row without an answer, including this one
 * @returns {State | null} null when it is too early to decide
 */
export function judged(answer, misses) {
  if (answer === true) {
    return "alive";
  }
  if (answer === false) {
    return "ended";
  }
  return answer === "refused" || misses >= MOST_MISSES ? "silent" : null;
}

/** Poll, and report every change of the state.
 * @param {() => Promise<Answer>} poll asks the server once
 * @param {(state: State) => void} report
 * @param {AbortSignal} signal
 * @returns {Promise<void>} when there is nothing more to watch
 */
export async function watchKernel(poll, report, signal) {
  /** @type {State} */
  let state = "alive";
  let misses = 0;
  while (!signal.aborted && state !== "ended") {
    const answer = await poll();
    misses = typeof answer === "string" ? misses + 1 : 0;
    const now = judged(answer, misses);
    if (now !== null && now !== state) {
      state = now;
      report(state);
    }
    await new Promise((done) => {
      setTimeout(done, QUESTION_DELAY_MS);
    });
  }
}
