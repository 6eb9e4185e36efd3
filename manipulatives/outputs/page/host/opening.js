/** Opens what a page carries: its session first, then every widget at the place that waits. */
import { permanentStore, tabStore } from "../../../widgets/shared/state/storage.js";
import { cameUpEmpty, keepNoting } from "./empty_store.js";
import { openHost } from "./host.js";
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
  if (cameUpEmpty(permanentStore(), tabStore())) {
    location.reload();
    return;
  }
  start(main, page.documentElement.dataset.kitLesson ?? "");
  if (!("DecompressionStream" in globalThis)) {
    main.prepend(sorry("This browser is too old for this page. Try another one."));
    return;
  }
  const text = page.getElementById("kit-saved")?.textContent ?? "";
  /** @type {import("./saved.js").Saved} */
  const saved = JSON.parse(await unpacked(text));
  const host = openHost(saved, load, page);
  const places = /** @type {NodeListOf<HTMLElement>} */ (main.querySelectorAll("[data-kit-view]"));
  await Promise.all([...places].map(show));
  main.removeAttribute("aria-busy");
  keepNoting(permanentStore(), tabStore());

  /** @param {HTMLElement} el */
  async function show(el) {
    try {
      await host.show(el.dataset.kitView ?? "", { el });
    } catch (error) {
      el.replaceChildren(sorry("This part cannot be shown. The rest works."));
      // For whoever looks into it.
      reportError(error);
    }
  }

  /** @param {string} words */
  function sorry(words) {
    const sentence = page.createElement("p");
    sentence.className = "kit-sorry";
    sentence.textContent = words;
    return sentence;
  }
}
