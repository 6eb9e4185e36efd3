/** Where a pupil answers: on the keypad, by choosing, or with the manipulative itself. */
import { html } from "../../shared/svg.js";
import { button, emphasize } from "./button.js";
import { cleaned, keypad, pressed, typingLine } from "./keypad.js";

/** @typedef {import("./state/task.js").Ask} Ask */

// Choices as short as a sign stand in one row when they do not come in pairs.
const SIGN = 3;

/**
 * @param {{ type: (text: string) => void, check: () => void }} callbacks
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   el: HTMLElement,
 *   take: (letter: string) => void,
 *   ask: (ask: Ask) => void,
 *   paint: (text: string) => void,
 * }} take() types on the line from a keyboard elsewhere on the page
 */
export function makeReply({ type, check }, { signal }) {
  const line = typingLine();
  const go = button("check", {}, "Check");
  const keys = html("div", { class: "round-means" });
  const last = html("div", { class: "round-line" }, line, go);
  const el = html("div", { class: "round-reply" });
  /** @type {Ask} */
  let asked = { by: "" };
  let said = "";

  const form = () => asked.form ?? "number";

  el.addEventListener("click", (event) => {
    const hit = /** @type {Element} */ (event.target).closest("button");
    if (hit === go) {
      check();
    } else if (hit?.dataset.key) {
      type(pressed(form(), said, hit.dataset.key));
      // After a key on the screen, Enter on the keyboard checks and does not press that key again.
      if (event.detail > 0) {
        line.focus({ preventScroll: true });
      }
    } else if (hit?.dataset.choice) {
      type(hit.dataset.choice);
    }
  }, { signal });

  line.addEventListener("input", () => {
    const text = cleaned(form(), line.value);
    line.value = text;
    type(text);
  }, { signal });

  line.addEventListener("keydown", (event) => {
    if (event.key === "Enter") {
      event.preventDefault();
      check();
    }
  }, { signal });

  return {
    el,
    take(letter) {
      if (asked.by === "keypad" && cleaned(form(), letter) === letter) {
        // The letter itself follows the focus.
        line.focus({ preventScroll: true });
      }
    },
    ask(ask) {
      if (asked === ask) {
        return;
      }
      asked = ask;
      el.dataset.by = ask.by;
      el.dataset.form = form();
      line.hidden = ask.by !== "keypad";
      keys.replaceChildren(...means(ask));
      // What is typed stands above the keys; what is chosen is checked below the choices.
      el.replaceChildren(...(ask.by === "choice" ? [keys, last] : [last, keys]));
    },
    paint(text) {
      said = text;
      if (line.value !== text) {
        line.value = text;
      }
      // What there is to check is the thing to press.
      emphasize(go, asked.by === "manipulative" || text !== "");
      for (const each of keys.querySelectorAll("button")) {
        if (each.dataset.choice) {
          each.setAttribute("aria-pressed", String(each.dataset.choice === text));
        }
      }
    },
  };
}

/** @param {Ask} ask */
function means({ by, form = "number", choices = [] }) {
  if (by === "keypad") {
    return [keypad(form)];
  }
  return by === "choice" ? [choose(choices)] : [];
}

/** @param {string[]} choices */
function choose(choices) {
  const buttons = choices.map((choice) => button("choice", { "data-choice": choice }, choice));
  const short = choices.every(({ length }) => length <= SIGN) && choices.length % 2 > 0;
  return html("div", {
    "class": "round-choices",
    "role": "group",
    "aria-label": "Choose one",
    "data-row": short || null,
  }, ...buttons);
}
