/** The shelf works without code; with it, a button says that something is being made. */

/** @param {Document} page */
function open(page) {
  const { signal } = new AbortController();
  page.addEventListener("submit", (event) => {
    const pressed = /** @type {HTMLButtonElement | null} */ (event.submitter);
    if (!pressed || pressed.form?.target !== "_blank") {
      return;
    }
    pressed.setAttribute("aria-busy", "true");
    // The page opens in a new tab, and this page is not notified when it has loaded.
    setTimeout(() => pressed.removeAttribute("aria-busy"), 3000);
  }, { signal });
}

export default open(document);
