/** What is in a block of a lesson, such as a heading or a round. */

/** Matches the root of a round, except for the preview in the lesson maker. */
export const ROUND = ".kit-round:not(.kit-maker .kit-round)";
// Elements that are visible without text.
const PICTURES = "svg, img, canvas, video, iframe, [data-kit-view]";

/**
 * The first element in a block, or the block itself, that matches a selector.
 * @param {HTMLElement} block
 * @param {string} selector
 * @returns {HTMLElement | null}
 */
export function within(block, selector) {
  return block.matches(selector) ? block : block.querySelector(selector);
}

/**
 * The text of the second-level heading of a block; headings inside widgets do not count.
 * @param {HTMLElement} block
 * @returns {string}
 */
function headingIn(block) {
  const heading = within(block, "h2");
  return heading && !heading.closest("[data-kit-view], .kit-round, .kit-manipulative")
    ? heading.textContent?.trim() ?? "" : "";
}

/**
 * Whether a mutation may change the stages. Mutations inside widgets cannot.
 * @param {MutationRecord} change
 * @returns {boolean}
 */
export function mayChangeStages({ type, target, addedNodes, removedNodes }) {
  if (target instanceof Element && target.closest(`${ROUND}, .kit-manipulative`)) {
    return false;
  }
  return type === "attributes" ||
    [...addedNodes, ...removedNodes].some((node) => node instanceof Element);
}

/**
 * The facts about a block that decide which stage it is on.
 * @param {HTMLElement} block
 * @returns {import("./stages.js").BlockInfo}
 */
export function blockInfo(block) {
  return {
    heading: headingIn(block),
    round: within(block, ROUND) !== null,
    empty: !block.textContent?.trim() && within(block, PICTURES) === null,
  };
}
