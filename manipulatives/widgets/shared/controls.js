/** Buttons, rows of them, and the switches of free play. */
import { html, icon, put } from "./svg.js";

/** @typedef {{ signal: AbortSignal }} Lifetime */

/** What icons show, in a field of 24 by 24 units. */
export const ICONS = {
  undo: "M9 5L4 10L9 15M4 10H14.5A5 5 0 0 1 14.5 20H10",
  reset: "M5 4V10H11M5.3 10A7.5 7.5 0 1 1 4.6 14",
};

/**
 * A button. When disabled (`aria-disabled`) it can have the focus, but does nothing.
 * @param {(Node | string)[]} content
 * @param {() => void} press
 * @param {Lifetime} lifetime
 * @param {Record<string, unknown>} [attributes]
 * @returns {HTMLButtonElement}
 */
export function button(content, press, { signal }, attributes) {
  const made = html("button", { type: "button", class: "kit-button", ...attributes }, ...content);
  made.addEventListener("click", () => {
    if (made.getAttribute("aria-disabled") !== "true") {
      press();
    }
  }, { signal });
  return made;
}

/**
 * Buttons with an icon each.
 * @param {[lines: string, name: string, press: () => void][]} tools
 * @param {Lifetime} lifetime
 * @returns {{ buttons: HTMLButtonElement[], allow: (...uses: boolean[]) => void }} the buttons, and
 *   whether there is something to do for each, in their order
 */
export function makeTools(tools, lifetime) {
  const buttons = tools.map(([lines, name, press]) => button([icon(lines), name], press, lifetime));
  return {
    buttons,
    allow(...uses) {
      buttons.forEach((each, index) => put(each, { "aria-disabled": !uses[index] }));
    },
  };
}

/**
 * Switches for traits that are true or false.
 * @param {[trait: string, name: string][]} switches each with the one word that fits a small tile
 * @param {(trait: string) => unknown} get what a trait is now
 * @param {(trait: string, value: unknown) => void} choose
 * @param {Lifetime} lifetime
 * @returns {{ tiles: HTMLButtonElement[], update: () => void }} the switches; update them from
 *   the traits
 */
export function makeSwitches(switches, get, choose, lifetime) {
  const tiles = switches.map(([trait, name]) => {
    const look = { class: "kit-switch", role: "switch" };
    return button([name], () => choose(trait, !get(trait)), lifetime, look);
  });
  return {
    tiles,
    update() {
      switches.forEach(([trait], index) => {
        put(tiles[index], { "aria-checked": Boolean(get(trait)) });
      });
    },
  };
}
