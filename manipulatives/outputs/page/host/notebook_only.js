/** The notices of parts that need a kernel: no repetitions, and what to do said once. */

const REMEDY = "Open the notebook in Jupyter to use it.";
// A notice that a part works only in the notebook: of the page itself, or inside a box.
const NOTICE = ".kit-note, [data-kit-notebook-only]";
// Elements that hold a widget and show nothing themselves.
const CONTAINERS = ".kit-box, .kit-box > div";
// Output that the notebook printed or drew.
const PRINTED = ".kit-picture, .kit-text";

/**
 * Leave one notice in each block of a page, or one in the whole page where no block shows
 * anything else. The first notice says what to do.
 * @param {HTMLElement} main after every widget was rendered
 * @returns {void}
 */
export function mergeNotebookOnlyNotices(main) {
  const seen = [...main.querySelectorAll(`${PRINTED}, .kit-view *`)].some((el) => (
    !el.matches(CONTAINERS) && !el.closest(NOTICE)
  ));
  for (const block of seen ? main.children : [main]) {
    const [, ...others] = block.querySelectorAll(NOTICE);
    for (const other of others) {
      other.remove();
    }
  }
  main.querySelector(NOTICE)?.append(` ${REMEDY}`);
}
