/**
 * A second window of the board, for the laptop's own screen. It is an empty page that the board
 * fills and listens to, so both show the same at every moment without a word sent, from a disk as
 * from a server.
 *
 * When the board is loaded again, a served one takes its old window over. From a disk a browser
 * lets no page touch what the same page made before it was loaded again: there the window closes
 * with the page and comes again with the next press on the board.
 */
import { html } from "../../../widgets/shared/svg.js";

const SIZE = "popup,width=900,height=760";
const GONE = "The board was closed, or is loading again.";

/**
 * @param {{
 *   page: Document, title: string, make: () => HTMLElement,
 *   storage: import("../../../widgets/shared/state/storage.js").LessonStorage,
 *   hear: (page: Document) => void,
 *   turned: (open: boolean) => void,
 * }} given the board; the window's title; what makes that which stands in it, for with its window
 *   it is lost; where the tab keeps that it is open; who hears its keys; and who is told when it
 *   opens or is closed
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{ open: () => boolean, look: () => void, comeBack: () => void }} open() says whether
 *   the browser let it; look() sees whether it is still there, and is called again and again;
 *   comeBack() opens it again when it was open
 */
export function makeWindow({ page, title, make, storage, hear, turned }, lifetime) {
  const board = /** @type {Window} */ (page.defaultView);
  const name = `kit-teacher ${page.documentElement.dataset.kitLesson ?? ""}`;
  /** @type {Window | null} */
  let child = null;
  /** @type {Document | null} */
  let filled = null;

  /** @returns {boolean} */
  function open() {
    if (child && !child.closed) {
      child.focus();
      return true;
    }
    child = board.open("", name, SIZE);
    if (child && !reaches(child)) {
      child.close();
      child = board.open("", `${name} ${Date.now()}`, SIZE);
    }
    storage.write("window", child !== null);
    look();
    return child !== null;
  }

  function look() {
    if (!child) {
      return;
    }
    if (child.closed) {
      storage.write("window", false);
      lose();
    } else if (!reaches(child)) {
      // Loaded again by itself, from a disk.
      child.close();
      lose();
      openWithPress();
    } else if (filled !== child.document) {
      fill(child.document);
    }
  }

  function lose() {
    child = null;
    filled = null;
    turned(false);
  }

  /** @param {Document} paper */
  function fill(paper) {
    filled = paper;
    paper.documentElement.lang = page.documentElement.lang;
    const styles = [...page.querySelectorAll("style")].filter(({ textContent }) =>
      textContent?.includes(".kit"));
    paper.head.replaceChildren(...styles.map(({ textContent }) =>
      html("style", {}, textContent ?? "")));
    paper.title = title;
    paper.body.className = "kit kit-session session-teacher session-window";
    paper.body.replaceChildren(make());
    hear(paper);
    turned(true);
  }

  /** What is still there is taken over, what is not comes with the next press. */
  function comeBack() {
    if (!storage.read("window")) {
      return;
    }
    const before = board.open("", name, SIZE);
    if (before && reaches(before)) {
      child = before;
      look();
      return;
    }
    openWithPress();
  }

  /** A browser lets a page open a window only while somebody presses something. */
  function openWithPress() {
    const once = new AbortController();
    lifetime.signal.addEventListener("abort", () => once.abort(), { once: true });
    for (const press of ["pointerup", "keydown"]) {
      page.addEventListener(press, () => {
        once.abort();
        open();
      }, { signal: once.signal });
    }
  }

  // The board is its own host: nobody else listens to this window.
  board.addEventListener("pagehide", () => {
    if (!child || child.closed) {
      return;
    }
    if (page.URL.startsWith("file:")) {
      child.close();
    } else {
      child.document.body.replaceChildren(html("p", {}, GONE));
    }
  }, lifetime);
  lifetime.signal.addEventListener("abort", () => child?.close(), { once: true });
  return { open, look, comeBack };
}

/**
 * Whether the browser lets us touch a window's page.
 * @param {Window} child
 * @returns {boolean}
 */
function reaches(child) {
  try {
    return Boolean(child.document.body);
  } catch {
    return false;
  }
}
