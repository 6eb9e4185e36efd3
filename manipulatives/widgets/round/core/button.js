/** A button of the round. */
import { html } from "../../shared/svg.js";

/**
 * @param {string} name what it is for, for the style sheet
 * @param {import("../../shared/svg.js").Attributes} attributes
 * @param {...(Node | string)} face
 * @returns {HTMLButtonElement}
 */
export function button(name, attributes, ...face) {
  return html(
    "button", { type: "button", class: `kit-button round-${name}`, ...attributes }, ...face,
  );
}

/**
 * Let a button look like the thing to press next, or like any other.
 * @param {HTMLButtonElement} pressed
 * @param {boolean} first
 * @returns {void}
 */
export function emphasize(pressed, first) {
  pressed.classList.toggle("is-go", first);
}
