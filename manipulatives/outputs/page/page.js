/** Opens a page: the lesson stage by stage, and every widget at the places that wait for it. */
import { openHost } from "./host.js";
import { startSession } from "./session.js";

/**
 * @param {Document} page
 * @param {(code: string) => Promise<any>} load makes a module of its text
 */
async function open(page, load) {
  const main = /** @type {HTMLElement} */ (page.querySelector("main"));
  const saved = JSON.parse(page.getElementById("kit-saved")?.textContent ?? "");
  main.setAttribute("aria-busy", "true");
  startSession({ main, key: page.documentElement.dataset.kitLesson ?? "", kind: "page" });
  const host = openHost(saved, load, page);
  const places = /** @type {NodeListOf<HTMLElement>} */ (main.querySelectorAll("[data-kit-view]"));
  await Promise.all([...places].map(show));
  main.removeAttribute("aria-busy");

  /** @param {HTMLElement} el */
  async function show(el) {
    try {
      await host.show(el.dataset.kitView ?? "", { el });
    } catch (error) {
      const sentence = page.createElement("p");
      sentence.className = "kit-sorry";
      sentence.textContent = "This part cannot be shown. The rest works.";
      el.replaceChildren(sentence);
      // For whoever looks into it.
      reportError(error);
    }
  }
}

export default { open };
