/** The time left as a bar that shrinks, with digits beside it, to be shown or hidden. */
import { html } from "../../shared/svg.js";
import { button } from "./button.js";
import { inDigits, inWords } from "./state/timer.js";

/** What is said when time has run out. */
export const TIME_IS_UP = "Time is up. Take the time you need.";

/**
 * @typedef {object} TimeLeft
 * @property {import("./state/timer.js").Timer} timer
 * @property {number} left milliseconds
 * @property {boolean} timed whether the round has a timer
 */

/**
 * @param {(press: string) => void} press is given the name of the button: "hidden", "shown", or one
 *   of the others
 * @param {{ signal: AbortSignal }} lifetime
 * @param {HTMLButtonElement[]} [first] other buttons, before those that hide and show
 * @param {HTMLButtonElement[]} [last] other buttons behind them
 * @returns {{ el: HTMLElement, paint: (time: TimeLeft) => void }}
 */
export function makeBar(press, { signal }, first = [], last = []) {
  const fill = html("span", { class: "round-gauge-fill" });
  const gauge = html("span", { class: "round-gauge" }, fill);
  const digits = html("span", { class: "round-digits" });
  const time = html("div", { class: "round-time", role: "timer" }, gauge, digits);
  const hide = barButton("hidden", "Hide");
  const see = barButton("shown", "Timer");
  const el = html("div", { class: "round-bar" }, time, ...first, hide, see, ...last);

  el.addEventListener("click", (event) => {
    const pressed = /** @type {Element} */ (event.target).closest("button");
    if (pressed) {
      press(pressed.dataset.press ?? "");
    }
  }, { signal });

  return {
    el,
    paint({ timer: { mode, allowed, since }, left, timed }) {
      const shown = mode === "shown";
      const focused = el.contains(document.activeElement);
      el.hidden = !timed;
      el.dataset.mode = mode;
      time.hidden = !shown;
      hide.hidden = !shown;
      see.hidden = shown;
      see.textContent = mode === "hidden" ? "Show timer" : "Timer";
      gauge.hidden = left === 0;
      fill.style.inlineSize = `${allowed ? left / allowed / 10 : 0}%`;
      fill.classList.toggle("is-running", since !== null);
      digits.textContent = left === 0 ? TIME_IS_UP : inDigits(left);
      time.setAttribute("aria-label", left === 0 ? TIME_IS_UP : `Time left: ${inWords(left)}`);
      // A button that goes away hands the focus on.
      if (focused && document.activeElement?.closest("[hidden]")) {
        (shown ? hide : see).focus();
      }
    },
  };
}

/**
 * A button of the bar.
 * @param {string} press its name
 * @param {Node | string} face
 * @returns {HTMLButtonElement}
 */
export function barButton(press, face) {
  return button("press", { "data-press": press }, face);
}
