/** Opens a page: starts its session, then renders every widget at its place. */
import { whenCommitted } from "./committed.js";
import { openHost } from "./host.js";
import { mergeNotebookOnlyNotices } from "./notebook_only.js";
import { unpacked } from "./packed.js";

/**
 * @param {Document} page
 * @param {(code: string) => Promise<any>} load makes a module of its text
 * @param {(main: HTMLElement, key: string) => void} start begins the session
 * @returns {Promise<void>}
 */
export async function openPage(page, load, start) {
  const main = /** @type {HTMLElement} */ (page.querySelector("main"));
  main.setAttribute("aria-busy", "true");
  // Otherwise the whole lesson would be visible until the session shows its first stage.
  main.hidden = true;
  await whenCommitted();
  main.hidden = false;
  start(main, page.documentElement.dataset.kitLesson ?? "");
  if (!("DecompressionStream" in globalThis)) {
    main.prepend(notice("This browser is too old for this page. Try another one."));
    return;
  }
  const text = page.getElementById("kit-saved")?.textContent ?? "";
  /** @type {import("./saved.js").Saved} */
  const saved = JSON.parse(await unpacked(text));
  const host = openHost(saved, load, page);
  const places = /** @type {NodeListOf<HTMLElement>} */ (main.querySelectorAll("[data-kit-view]"));
  await Promise.all([...places].map(show));
  mergeNotebookOnlyNotices(main);
  main.removeAttribute("aria-busy");

  /** @param {HTMLElement} el */
  async function show(el) {
    try {
      await host.show(el.dataset.kitView ?? "", { el });
    } catch (error) {
      el.replaceChildren(notice("This part cannot be shown. The rest works."));
      // For the console.
      reportError(error);
    }
  }

  /** @param {string} words */
  function notice(words) {
    const sentence = page.createElement("p");
    sentence.className = "kit-sorry";
    sentence.textContent = words;
    return sentence;
  }
}
