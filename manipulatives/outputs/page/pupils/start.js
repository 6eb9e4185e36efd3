/** How a page for pupils opens: start fresh or carry on, and a code if the teacher gave one. */
import { button } from "../../../widgets/shared/controls.js";
import { html } from "../../../widgets/shared/svg.js";
import { codeOf } from "./storage.js";

const LOST = "This device keeps nothing. Do it all in one go.";

/**
 * @param {{
 *   begin: (code: string, fresh: boolean) => void, hasWork: (code: string) => boolean,
 *   stores: boolean, code: string,
 * }} given what begins; whether there is work under a code; whether this device stores any; and
 *   the code that was used here last
 * @param {(words: () => string) => Node} listen makes a button that reads aloud
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{ el: HTMLElement, focus: () => void }}
 */
export function makeStart({ begin, hasWork, stores, code }, listen, lifetime) {
  const sentence = html("p", { tabindex: -1 });
  const field = html("input", {
    "id": "pupils-code", "class": "pupils-code", "autocomplete": "off", "spellcheck": "false",
    "autocapitalize": "characters", "maxlength": 8, "value": code,
  });
  const label = html("label", { for: "pupils-code" }, "Code from your teacher, if you have one");
  const carry = button(["Carry on"], () => begin(codeOf(field.value), false), lifetime);
  const fresh = button([""], press, lifetime);
  const lost = html("p", { class: "pupils-lost" }, LOST);
  lost.hidden = stores;
  const el = html("section", { "class": "pupils-screen pupils-start", "aria-label": "Start" },
    html("div", { class: "pupils-said" }, sentence, listen(() => sentence.textContent ?? "")),
    html("div", { class: "pupils-field" }, label, field),
    html("div", { class: "pupils-row" }, carry, fresh), lost);
  let asked = false;

  function paint() {
    const there = hasWork(codeOf(field.value));
    carry.hidden = !there;
    carry.classList.add("is-go");
    fresh.classList.toggle("is-go", !there);
    fresh.textContent = !there ? "Start" : asked ? "Yes, start fresh" : "Start fresh";
    sentence.textContent = !there ? "Are you ready?"
      : asked ? "The old work will be gone. Start fresh?" : "There is work here. Is it yours?";
  }

  function press() {
    if (hasWork(codeOf(field.value)) && !asked) {
      asked = true;
      paint();
      sentence.focus();
    } else {
      begin(codeOf(field.value), true);
    }
  }

  field.addEventListener("input", () => {
    const tidy = codeOf(field.value);
    if (tidy !== field.value) {
      field.value = tidy;
    }
    asked = false;
    paint();
  }, lifetime);
  field.addEventListener("keydown", (event) => {
    if (event.key === "Enter") {
      (carry.hidden ? fresh : carry).click();
    }
  }, lifetime);
  paint();

  return {
    el,
    focus() {
      sentence.focus();
    },
  };
}
