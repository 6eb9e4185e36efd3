/** The time left, with everything that a teacher does with it. */
import { icon } from "../../shared/svg.js";
import { barButton, makeBar } from "../core/bar.js";
import { STRETCH } from "./state/stretch.js";

const BELL = "M5.5 17 H18.5 L17 14.5 V10.5 A5 5 0 0 0 7 10.5 V14.5 Z M10.5 20.5 H13.5";

/**
 * @typedef {"turn" | "stretch" | "tone" | "shown" | "hidden" | "off"} Press
 * @typedef {{ starts: boolean, tone: boolean }} More whether the button that goes on starts the
 *   timer, and whether a tone is wanted when time is up
 */

/**
 * @param {(press: Press) => void} press
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   el: HTMLElement, paint: (time: import("../core/bar.js").TimeLeft & More) => void,
 * }}
 */
export function makeBoardBar(press, lifetime) {
  const more = barButton("stretch", `+${STRETCH} s`);
  more.setAttribute("aria-label", `${STRETCH} seconds more`);
  const turn = barButton("turn", "Start");
  const bell = barButton("tone", icon(BELL));
  bell.setAttribute("aria-label", "Tone when time is up");
  const off = barButton("off", "No timer");
  const bar = makeBar((name) => press(/** @type {Press} */ (name)), lifetime,
    [more, turn, bell], [off]);

  return {
    el: bar.el,
    paint(time) {
      const { timer: { mode, since, used }, left, starts, tone } = time;
      const shown = mode === "shown";
      more.hidden = !shown;
      bell.hidden = !shown;
      turn.hidden = !shown || left === 0 || starts;
      turn.textContent = since !== null ? "Pause" : used > 0 ? "Go on" : "Start";
      bell.setAttribute("aria-pressed", String(tone));
      off.hidden = mode !== "hidden";
      bar.paint(time);
    },
  };
}
