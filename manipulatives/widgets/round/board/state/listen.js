/** Listening to a model until a signal aborts. */

/**
 * Call a function on an event of a model.
 * @param {WidgetModel} model
 * @param {string} event such as "change:place"
 * @param {(...details: any[]) => void} callback
 * @param {AbortSignal} signal ends it
 * @returns {void}
 */
export function listenTo(model, event, callback, signal) {
  if (!signal.aborted) {
    model.on(event, callback);
    signal.addEventListener("abort", () => model.off(event, callback), { once: true });
  }
}
