/** A keypad on the screen, and a line that shows what was typed on it or on a keyboard. */
import { html, icon } from "../../shared/svg.js";
import { button } from "./button.js";

const BACK = "M9 5 H21 V19 H9 L3 12 Z M11.5 9.5 L16.5 14.5 M16.5 9.5 L11.5 14.5";
/**
 * What each form takes: the letters that it has beside digits, what is not part of it, and how
 * long its longest answer is: "12:55", a sum of prices in small coins, "1000+900+90+9".
 * @type {Readonly<Record<string, { sign: string, other: RegExp, longest: number }>>}
 */
const FORMS = Object.freeze({
  time: { sign: ":", other: /[^0-9:]/g, longest: 5 },
  number: { sign: "", other: /[^0-9]/g, longest: 5 },
  sum: { sign: "+", other: /[^0-9+]/g, longest: 16 },
});
/** @type {Readonly<Record<string, string>>} */
const SIGNS = Object.freeze({ ":": "two dots", "+": "plus" });

/**
 * What may stand in an answer of this form; anything else is left out.
 * @param {string} form "time", "number" or "sum"
 * @param {string} text
 * @returns {string}
 */
export function cleaned(form, text) {
  const { other, longest } = FORMS[form];
  return text.replace(other, "").slice(0, longest);
}

/**
 * What the line says after a key.
 * @param {string} form
 * @param {string} text what it said before
 * @param {string} key a digit, a sign or "back"
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
  const { sign } = FORMS[form];
  const keys = sign ? [...digits, keyOf(sign, SIGNS[sign], sign), back] : [...digits, back];
  return html("div", { class: "round-keys", role: "group", "aria-label": "Digits" }, ...keys);
}

/**
 * The line that takes the typing. It calls up no keyboard of the device: the keys are there.
 * @returns {HTMLInputElement}
 */
export function typingLine() {
  return html("input", {
    "class": "round-field round-typed", "inputmode": "none", "autocomplete": "off",
    "aria-label": "Your answer", "size": 5, "placeholder": "?", "spellcheck": "false",
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
