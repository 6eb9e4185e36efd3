/**
 * A second window of the board, for the laptop's own screen. It is an empty page that the board
 * fills and listens to, so both always show the same without messages, on file:// and on http://.
 *
 * When a served board is reloaded, it takes over its old window. On file:// a browser lets no page
 * access a window that it opened before the reload: there the window closes with the page and opens
 * again with the next press on the board.
 */
import { html } from "../../../widgets/shared/svg.js";

const SIZE = "popup,width=900,height=760";
const CLOSED_NOTICE = "The board was closed, or is loading again.";

/**
 * @param {{
 *   page: Document, title: string, make: () => HTMLElement,
 *   storage: import("../../../widgets/shared/state/storage.js").LessonStorage,
 *   listenTo: (page: Document) => void,
 *   onToggle: (open: boolean) => void,
 * }} given the board; the window's title; what makes its content, which is lost with the window;
 * the
 *   storage of the tab, for whether it is open; what listens to its keys; and a callback for when
 *   it opens or closes
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{ open: () => boolean, check: () => void, reopen: () => void }} open() returns
 *   whether the browser allowed it; check() is called every second and detects that it was closed
 *   or reloaded; reopen() opens it again if it was open before a reload of the board
 */
export function makeWindow({ page, title, make, storage, listenTo, onToggle }, lifetime) {
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
    if (child && !isAccessible(child)) {
      child.close();
      child = board.open("", `${name} ${Date.now()}`, SIZE);
    }
    storage.write("window", child !== null);
    check();
    return child !== null;
  }

  function check() {
    if (!child) {
      return;
    }
    if (child.closed) {
      storage.write("window", false);
      onClosed();
    } else if (!isAccessible(child)) {
      // The window was reloaded on file://.
      child.close();
      onClosed();
      openWithPress();
    } else if (filled !== child.document) {
      fill(child.document);
    }
  }

  function onClosed() {
    child = null;
    filled = null;
    onToggle(false);
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
    listenTo(paper);
    onToggle(true);
  }

  /** Take over a window that is still open, or open one with the next press. */
  function reopen() {
    if (!storage.read("window")) {
      return;
    }
    const before = board.open("", name, SIZE);
    if (before && isAccessible(before)) {
      child = before;
      check();
      return;
    }
    openWithPress();
  }

  /** Open it with the next press, because browsers open windows only on user input. */
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

  // The board is its own host, so it may listen to the window.
  board.addEventListener("pagehide", () => {
    if (!child || child.closed) {
      return;
    }
    if (page.URL.startsWith("file:")) {
      child.close();
    } else {
      child.document.body.replaceChildren(html("p", {}, CLOSED_NOTICE));
    }
  }, lifetime);
  lifetime.signal.addEventListener("abort", () => child?.close(), { once: true });
  return { open, check, reopen };
}

/**
 * Whether the browser lets us access the document of a window.
 * @param {Window} child
 * @returns {boolean}
 */
function isAccessible(child) {
  try {
    return Boolean(child.document.body);
  } catch {
    return false;
  }
}
