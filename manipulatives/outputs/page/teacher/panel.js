/**
 * A panel beside the board for a teacher with one screen: hidden until asked for, and what gives
 * an answer away is hidden in it until asked for again, since the class sees it too.
 */
import { button } from "../../../widgets/shared/controls.js";
import { html, icon, put } from "../../../widgets/shared/svg.js";

const TEACHER = "M4 5H20V16H4ZM8 20H16M12 16V20M8 9H16M8 12.5H13";
const ID = "kit-teacher";

/**
 * @param {{
 *   script: import("./script.js").Script, openWindow: () => boolean, opened: () => void,
 * }} given what stands in it; what opens the window that shows the same; and who is told that the
 *   panel was opened
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{ button: HTMLElement, el: HTMLElement, readonly open: boolean }} the button that opens
 *   and closes it, and the panel
 */
export function makePanel({ script, openWindow, opened }, lifetime) {
  let shown = false;
  const blocked = html("p", { role: "status" },
    "The browser opened no window. Let this page open windows, or use this panel.");
  const show = button(["Show the answers"], () => reveal(!shown), lifetime, {
    "aria-pressed": "false",
  });
  const apart = button(["Open the teacher's window"], () => {
    blocked.hidden = openWindow();
    if (blocked.hidden) {
      turn(false);
    }
  }, lifetime);
  const close = button(["Close"], () => turn(false), lifetime);
  const el = html("aside", {
    "class": "kit kit-session session-teacher session-panel", "id": ID,
    "aria-label": "For the teacher", "tabindex": -1,
  }, html("div", { class: "script-row" }, apart, show, close), blocked, script.el);
  const toggle = button(
    [icon(TEACHER), html("span", {}, "Teacher")], () => turn(el.hidden === true), lifetime,
    { "class": "kit-button session-tool", "aria-expanded": "false", "aria-controls": ID },
  );
  el.hidden = true;
  blocked.hidden = true;

  /** @param {boolean} wanted */
  function reveal(wanted) {
    shown = wanted;
    script.reveal(shown);
    put(show, { "aria-pressed": shown });
  }

  /** @param {boolean} wanted */
  function turn(wanted) {
    el.hidden = !wanted;
    put(toggle, { "aria-expanded": wanted });
    reveal(false);
    if (wanted) {
      opened();
      el.focus({ preventScroll: true });
    } else {
      toggle.focus({ preventScroll: true });
    }
  }

  el.addEventListener("keydown", (event) => {
    if (event.key === "Escape") {
      event.preventDefault();
      turn(false);
    }
  }, lifetime);
  reveal(false);
  return {
    button: toggle,
    el,
    get open() {
      return !el.hidden;
    },
  };
}
