/**
 * What changed, said politely to those who listen instead of looking. All widgets speak through
 * one live region in the document (or in the shadow root that they live in), found by its id.
 */

const ID = "kit-live";
// Long enough that of a key held down only the last state is said, short enough to belong to it.
const PAUSE_MS = 250;
// Unseen, but not hidden, for what is hidden is not said. Styled here, since the CSS of a widget
// ends at its root.
const UNSEEN = "position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)";

/** @typedef {HTMLElement & { waiting?: ReturnType<typeof setTimeout> }} Region */

/**
 * Say a sentence, when nothing newer follows at once.
 * @param {Node} node where it comes from
 * @param {string} sentence
 * @returns {void}
 */
export function announce(node, sentence) {
  const region = regionFor(node);
  clearTimeout(region.waiting);
  region.waiting = setTimeout(() => {
    region.textContent = sentence;
  }, PAUSE_MS);
}

/**
 * @param {Node} node
 * @returns {Region} the live region of its document, made when there is none
 */
function regionFor(node) {
  const top = node.getRootNode();
  const home = top instanceof ShadowRoot ? top : document.body;
  /** @type {Region | null} */
  let region = home.querySelector(`#${ID}`);
  if (!region) {
    region = document.createElement("div");
    region.id = ID;
    region.role = "status";
    region.style.cssText = UNSEEN;
    home.append(region);
  }
  return region;
}
