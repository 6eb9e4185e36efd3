/** Time for widgets to load in, on a slow computer as well. */

/** Milliseconds that anywidget 0.11 gives a widget to load before it drops it without a word. */
const GIVEN = 2000;

/** Milliseconds that it has to give here; the board says what is missing when they are over.
 *
 * A lesson of eight rounds takes a computer eight times slower than ours more than `GIVEN`.
 */
export const PATIENCE = 30_000;

/** Lengthens what anywidget waits for; nothing else on a board waits for exactly that long. */
export function giveTime() {
  const { timeout } = AbortSignal;
  AbortSignal.timeout = (milliseconds) =>
    timeout.call(AbortSignal, milliseconds === GIVEN ? PATIENCE : milliseconds);
}
