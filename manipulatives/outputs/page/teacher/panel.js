/**
 * A panel beside the board for a teacher with one screen. The class sees it too, so it is hidden
 * until it is opened, and the answers in it are hidden until the teacher reveals them.
 */
import { button } from "../../../widgets/shared/controls.js";
import { html, icon, put } from "../../../widgets/shared/svg.js";

const TEACHER = "M4 5H20V16H4ZM8 20H16M12 16V20M8 9H16M8 12.5H13";
const ID = "kit-teacher";

/**
 * @param {{
 *   script: import("./script.js").Script, openWindow: () => boolean, onOpen: () => void,
 * }} given its content; what opens the window with the same content; and a callback for when the
 *   panel opens
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{ button: HTMLElement, el: HTMLElement, readonly open: boolean }} the button that opens
 *   and closes it, and the panel
 */
export function makePanel({ script, openWindow, onOpen }, lifetime) {
  let revealed = false;
  const blocked = html("p", { role: "status" },
    "The browser opened no window. Let this page open windows, or use this panel.");
  const revealButton = button(["Show the answers"], () => reveal(!revealed), lifetime, {
    "aria-pressed": "false",
  });
  const windowButton = button(["Open the teacher's window"], () => {
    blocked.hidden = openWindow();
    if (blocked.hidden) {
      setOpen(false);
    }
  }, lifetime);
  const closeButton = button(["Close"], () => setOpen(false), lifetime);
  const el = html("aside", {
    "class": "kit kit-session session-teacher session-panel", "id": ID,
    "aria-label": "For the teacher", "tabindex": -1,
  }, html("div", { class: "script-row" }, windowButton, revealButton, closeButton),
  blocked, script.el);
  const openButton = button(
    [icon(TEACHER), html("span", {}, "Teacher")], () => setOpen(el.hidden === true), lifetime,
    { "class": "kit-button session-tool", "aria-expanded": "false", "aria-controls": ID },
  );
  el.hidden = true;
  blocked.hidden = true;

  /** @param {boolean} wanted */
  function reveal(wanted) {
    revealed = wanted;
    script.reveal(revealed);
    put(revealButton, { "aria-pressed": revealed });
  }

  /** @param {boolean} wanted */
  function setOpen(wanted) {
    el.hidden = !wanted;
    put(openButton, { "aria-expanded": wanted });
    reveal(false);
    if (wanted) {
      onOpen();
      el.focus({ preventScroll: true });
    } else {
      openButton.focus({ preventScroll: true });
    }
  }

  el.addEventListener("keydown", (event) => {
    if (event.key === "Escape") {
      event.preventDefault();
      setOpen(false);
    }
  }, lifetime);
  reveal(false);
  return {
    button: openButton,
    el,
    get open() {
      return !el.hidden;
    },
  };
}
