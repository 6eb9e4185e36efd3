/** A keypad on the screen, and a line that shows what was typed on it or on a keyboard. */
import { html, icon } from "../shared/svg.js";
import { button } from "./button.js";

const BACK = "M9 5 H21 V19 H9 L3 12 Z M11.5 9.5 L16.5 14.5 M16.5 9.5 L11.5 14.5";
// Long enough for every answer that there is: "12:55", and a sum of prices in small coins.
const LONGEST = 5;

/**
 * What may stand in an answer of this form; anything else is left out.
 * @param {string} form "time" or "number"
 * @param {string} text
 * @returns {string}
 */
export function cleaned(form, text) {
  const kept = text.replace(form === "time" ? /[^0-9:]/g : /[^0-9]/g, "");
  return kept.slice(0, LONGEST);
}

/**
 * What the line says after a key.
 * @param {string} form
 * @param {string} text what it said before
 * @param {string} key a digit, ":" or "back"
 * @returns {string}
 */
export function pressed(form, text, key) {
  return key === "back" ? text.slice(0, -1) : cleaned(form, text + key);
}

/**
 * The keys of a form. Each bears `data-key`.
 * @param {string} form
 * @returns {HTMLElement}
 */
export function keypad(form) {
  const digits = [..."1234567890"].map((digit) => keyOf(digit, digit, digit));
  const back = keyOf("back", "Take back the last digit", icon(BACK));
  const colon = keyOf(":", "two dots", ":");
  const keys = form === "time" ? [...digits, colon, back] : [...digits, back];
  return html("div", { class: "round-keys", role: "group", "aria-label": "Digits" }, ...keys);
}

/**
 * The line that takes the typing. It calls up no keyboard of the device: the keys are there.
 * @returns {HTMLInputElement}
 */
export function typingLine() {
  return html("input", {
    class: "round-typed", inputmode: "none", autocomplete: "off", "aria-label": "Your answer",
    size: LONGEST, maxlength: LONGEST, placeholder: "?", spellcheck: "false",
  });
}

/**
 * @param {string} name
 * @param {string} label
 * @param {Node | string} face
 */
function keyOf(name, label, face) {
  return button("key", { "data-key": name, "aria-label": label }, face);
}
