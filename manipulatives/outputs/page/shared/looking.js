/** What stands in a block of a lesson. */

/** The root of a round; one that is only tried out in the lesson maker is no part of a lesson. */
export const ROUND = ".kit-round:not(.kit-maker .kit-round)";
// What can be seen without any text in it.
const PICTURES = "svg, img, canvas, video, iframe, [data-kit-view]";

/**
 * The first of its kind in a block, or the block itself.
 * @param {HTMLElement} block
 * @param {string} kind
 * @returns {HTMLElement | null}
 */
export function within(block, kind) {
  return block.matches(kind) ? block : block.querySelector(kind);
}

/**
 * The second-level heading of a block; one inside a widget is the widget's own.
 * @param {HTMLElement} block
 * @returns {string}
 */
function headingIn(block) {
  const heading = within(block, "h2");
  return heading && !heading.closest("[data-kit-view], .kit-round, .kit-manipulative")
    ? heading.textContent?.trim() ?? "" : "";
}

/**
 * Whether something came or went that may change the stages. What widgets do inside is not news.
 * @param {MutationRecord} change
 * @returns {boolean}
 */
export function isNews({ type, target, addedNodes, removedNodes }) {
  if (target instanceof Element && target.closest(`${ROUND}, .kit-manipulative`)) {
    return false;
  }
  return type === "attributes" ||
    [...addedNodes, ...removedNodes].some((node) => node instanceof Element);
}

/**
 * What has to be known of a block to know its stage.
 * @param {HTMLElement} block
 * @returns {import("./stages.js").Told}
 */
export function toldOf(block) {
  return {
    heading: headingIn(block),
    round: within(block, ROUND) !== null,
    empty: !block.textContent?.trim() && within(block, PICTURES) === null,
  };
}
