/**
 * One way to hear keys. PageUp, PageDown and F5 turn the board and are never asked for here.
 */

/**
 * Hand each key to one function, which says whether it had a use for it; then nobody else hears
 * it. Combinations with Ctrl, Alt or Meta belong to the browser.
 * @param {GlobalEventHandlers & Element} element
 * @param {(key: string, event: KeyboardEvent) => boolean} handle given "ArrowUp", "Shift+ArrowUp"
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {void}
 */
export function onKeys(element, handle, { signal }) {
  element.addEventListener("keydown", (event) => {
    if (event.defaultPrevented || event.ctrlKey || event.altKey || event.metaKey) {
      return;
    }
    if (handle(event.shiftKey ? `Shift+${event.key}` : event.key, event)) {
      event.preventDefault();
      event.stopPropagation();
    }
  }, { signal });
}
