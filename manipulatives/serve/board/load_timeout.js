/** Time for widgets to load on a board, on a slow computer as well. */

/** Milliseconds that a board's widgets may take to load; then the board says what is missing.
 *
 * A lesson of eight rounds takes a computer eight times slower than ours more than two seconds.
 */
export const LOAD_TIMEOUT_MS = 30_000;

/** Milliseconds that anywidget 0.11 waits for a widget to load. Nothing sets them. */
const ANYWIDGET_TIMEOUT_MS = 2000;

/**
 * Let anywidget wait longer for the widgets that load until this is undone.
 *
 * Smallest case: a widget whose module takes three seconds to load. Its view is shown all the same,
 * but nothing that Python sends to it ever arrives, because anywidget passes messages only to
 * models that were ready in time. The limit is fixed in its code as `AbortSignal.timeout(2000)`, so
 * this replaces that one call. On a board nothing else asks for exactly as long while it loads, and
 * afterwards the browser's own function is back in its place.
 * @param {typeof AbortSignal} [signals]
 * @returns {() => void} undoes it
 */
export function extendLoadTimeout(signals = AbortSignal) {
  const { timeout } = signals;
  signals.timeout = (milliseconds) =>
    timeout.call(signals, milliseconds === ANYWIDGET_TIMEOUT_MS ? LOAD_TIMEOUT_MS : milliseconds);
  return () => {
    signals.timeout = timeout;
  };
}
