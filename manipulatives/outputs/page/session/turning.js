/**
 * The keys that turn a lesson's pages: the four of a presentation clicker, and arrows where
 * nothing else wants them.
 *
 * @typedef {"next" | "back" | "answers" | "timer"} Turn
 */

/** @type {Readonly<Record<string, Turn>>} */
const KEYS = Object.freeze({
  "PageDown": "next",
  "PageUp": "back",
  ".": "answers",
  "b": "answers",
  "B": "answers",
  "F5": "timer",
});
/** @type {Readonly<Record<string, Turn>>} */
const ARROWS = Object.freeze({ ArrowRight: "next", ArrowLeft: "back" });

// A round's own line for an answer takes digits alone, so a clicker may speak over it.
const WRITING = "input:not([inputmode='none']), textarea, select, [contenteditable]";
// What has a use of its own for arrows.
const STEERED = ".kit-manipulative, input, textarea, select, [contenteditable], audio, video, " +
  "[role='slider'], [role='spinbutton'], [role='tab'], [role='grid'], [role='listbox'], " +
  "[role='menu'], [role='tree'], [role='radio']";

/**
 * What a key press asks of the lesson, or null when it asks nothing.
 * @param {KeyboardEvent} event
 * @returns {Turn | null}
 */
export function turnOf({ key, target, ctrlKey, altKey, metaKey, shiftKey }) {
  if (ctrlKey || altKey || metaKey || shiftKey) {
    return null;
  }
  const at = target instanceof Element ? target : null;
  if (Object.hasOwn(ARROWS, key)) {
    return at?.closest(STEERED) ? null : ARROWS[key];
  }
  if (!Object.hasOwn(KEYS, key) || (KEYS[key] === "answers" && at?.closest(WRITING))) {
    return null;
  }
  return KEYS[key];
}

/**
 * Hear the keys.
 * @param {Document} page
 * @param {(turn: Turn) => boolean} act says whether it was of use, so that nobody else hears it
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {void}
 */
export function onTurns(page, act, { signal }) {
  page.addEventListener("keydown", (event) => {
    const turn = event.defaultPrevented ? null : turnOf(event);
    // A key held down turns one page, not all of them.
    if (turn && (event.repeat ? turn !== "timer" : act(turn))) {
      event.preventDefault();
    }
  }, { signal });
}
