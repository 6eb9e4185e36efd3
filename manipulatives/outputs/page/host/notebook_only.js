/** What a page says of parts that need a kernel: each says so once, and one says what to do. */

const REMEDY = "Open the notebook in Jupyter to use it.";
// A sentence of a part that works only in the notebook: of the page itself, or within a box.
const NOTICE = ".kit-note, [data-kit-notebook-only]";
// What holds a widget and is nothing to see itself.
const FRAME = ".kit-box, .kit-box > div";
// What a notebook printed or drew.
const STILL = ".kit-picture, .kit-text";

/**
 * Leave one sentence for each block of a page, and one for the whole page where no block has
 * anything else to show; the first one says what to do.
 * @param {HTMLElement} main with every widget in its place
 * @returns {void}
 */
export function sayNotebookOnly(main) {
  const seen = [...main.querySelectorAll(`${STILL}, .kit-view *`)].some((el) => (
    !el.matches(FRAME) && !el.closest(NOTICE)
  ));
  for (const block of seen ? main.children : [main]) {
    const [, ...others] = block.querySelectorAll(NOTICE);
    for (const other of others) {
      other.remove();
    }
  }
  main.querySelector(NOTICE)?.append(` ${REMEDY}`);
}
