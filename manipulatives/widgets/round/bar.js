/** The time left as a bar that shrinks, with digits beside it, and what a teacher does with it. */
import { html, icon } from "../shared/svg.js";
import { button } from "./button.js";
import { STRETCH, inDigits, inWords } from "./timer.js";

const BELL = "M5.5 17 H18.5 L17 14.5 V10.5 A5 5 0 0 0 7 10.5 V14.5 Z M10.5 20.5 H13.5";

/** What is said when time has run out. */
export const OUT = "Time is up. Take the time you need.";

/**
 * @typedef {"turn" | "stretch" | "tone" | "shown" | "hidden" | "off"} Press
 */

/**
 * @param {(press: Press) => void} press
 * @param {{ signal: AbortSignal }} life
 * @returns {{
 *   el: HTMLElement,
 *   paint: (desk: Pick<import("./desk.js").Desk,
 *     "timer" | "left" | "timed" | "turn" | "place" | "taste">) => void,
 * }}
 */
export function makeBar(press, { signal }) {
  const sand = html("span", { class: "round-sand" });
  const glass = html("span", { class: "round-glass" }, sand);
  const digits = html("span", { class: "round-digits" });
  const time = html("div", { class: "round-time", role: "timer" }, glass, digits);
  const turn = timerButton("turn", "Start");
  const more = timerButton("stretch", `+${STRETCH} s`);
  more.setAttribute("aria-label", `${STRETCH} seconds more`);
  const tone = timerButton("tone", icon(BELL));
  tone.setAttribute("aria-label", "Tone when time is up");
  const hide = timerButton("hidden", "Hide");
  const see = timerButton("shown", "Timer");
  const off = timerButton("off", "No timer");
  const el = html("div", { class: "round-bar" }, time, more, turn, tone, hide, see, off);

  el.addEventListener("click", (event) => {
    const pressed = /** @type {Element} */ (event.target).closest("button");
    if (pressed) {
      press(/** @type {Press} */ (pressed.dataset.press));
    }
  }, { signal });

  return {
    el,
    paint({ timer: { mode, allowed, since, used }, left, timed, turn: next, place, taste }) {
      const shown = mode === "shown";
      const focused = el.contains(document.activeElement);
      el.hidden = !timed || place.phase === "wipe";
      el.dataset.mode = mode;
      for (const part of [time, more, turn, tone, hide]) {
        part.hidden = !shown;
      }
      see.hidden = shown;
      off.hidden = mode !== "hidden";
      see.textContent = mode === "hidden" ? "Show timer" : "Timer";
      turn.textContent = since !== null ? "Pause" : used > 0 ? "Go on" : "Start";
      tone.setAttribute("aria-pressed", String(taste.tone));
      // The button that goes on starts it too.
      turn.hidden ||= left === 0 || next === "start";
      glass.hidden = left === 0;
      sand.style.inlineSize = `${allowed ? left / allowed / 10 : 0}%`;
      sand.classList.toggle("is-running", since !== null);
      digits.textContent = left === 0 ? OUT : inDigits(left);
      time.setAttribute("aria-label", left === 0 ? OUT : `Time left: ${inWords(left)}`);
      // A button that goes away hands the focus on.
      if (focused && document.activeElement?.closest("[hidden]")) {
        (shown ? hide : see).focus();
      }
    },
  };
}

/**
 * @param {Press} press
 * @param {Node | string} face
 */
function timerButton(press, face) {
  return button("press", { "data-press": press }, face);
}
