/**
 * The keys for a lesson: the four of a presentation clicker, and arrows where nothing else uses
 * them.
 *
 * @typedef {"next" | "back" | "answers" | "timer"} PageKey
 */

/** @type {Readonly<Record<string, PageKey>>} */
const KEYS = Object.freeze({
  "PageDown": "next",
  "PageUp": "back",
  ".": "answers",
  "b": "answers",
  "B": "answers",
  "F5": "timer",
});
/** @type {Readonly<Record<string, PageKey>>} */
const ARROWS = Object.freeze({ ArrowRight: "next", ArrowLeft: "back" });

// The answer field of a round (inputmode none) takes digits only, so clicker keys work in it.
const TEXT_FIELDS = "input:not([inputmode='none']), textarea, select, [contenteditable]";
// Elements with their own use for arrows.
const USES_ARROWS = ".kit-manipulative, input, textarea, select, [contenteditable], audio, " +
  "video, [role='slider'], [role='spinbutton'], [role='tab'], [role='grid'], [role='listbox'], " +
  "[role='menu'], [role='tree'], [role='radio']";

/**
 * The command of a key press, or null for none.
 * @param {KeyboardEvent} event
 * @returns {PageKey | null}
 */
export function pageKeyOf({ key, target, ctrlKey, altKey, metaKey, shiftKey }) {
  if (ctrlKey || altKey || metaKey || shiftKey) {
    return null;
  }
  const at = target instanceof Element ? target : null;
  if (Object.hasOwn(ARROWS, key)) {
    return at?.closest(USES_ARROWS) ? null : ARROWS[key];
  }
  if (!Object.hasOwn(KEYS, key) || (KEYS[key] === "answers" && at?.closest(TEXT_FIELDS))) {
    return null;
  }
  return KEYS[key];
}

/**
 * Listen to the keys.
 * @param {Document} page
 * @param {(command: PageKey) => boolean} act returns whether it was handled, which stops the
 *   default action
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {void}
 */
export function onPageKeys(page, act, { signal }) {
  page.addEventListener("keydown", (event) => {
    const command = event.defaultPrevented ? null : pageKeyOf(event);
    // A key that is held down acts once.
    if (command && (event.repeat ? command !== "timer" : act(command))) {
      event.preventDefault();
    }
  }, { signal });
}
