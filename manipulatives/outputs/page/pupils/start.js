/** The first screen of a page for pupils: start fresh or carry on, and a code from the teacher. */
import { button } from "../../../widgets/shared/controls.js";
import { html } from "../../../widgets/shared/svg.js";
import { codeOf } from "./storage.js";

const NO_STORAGE = "This device keeps nothing. Do it all in one go.";

/**
 * @param {{
 *   begin: (code: string, fresh: boolean) => void, hasWork: (code: string) => boolean,
 *   stores: boolean, code: string,
 * }} given begin() starts the lesson; whether there is stored work for a code; whether this
 *   device stores any; and the code that was used here last
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
  const carryOnButton = button(["Carry on"], () => begin(codeOf(field.value), false), lifetime);
  const freshButton = button([""], pressFresh, lifetime);
  const noStorage = html("p", { class: "pupils-lost" }, NO_STORAGE);
  noStorage.hidden = stores;
  const el = html("section", { "class": "pupils-screen pupils-start", "aria-label": "Start" },
    html("div", { class: "pupils-said" }, sentence, listen(() => sentence.textContent ?? "")),
    html("div", { class: "pupils-field" }, label, field),
    html("div", { class: "pupils-row" }, carryOnButton, freshButton), noStorage);
  let confirming = false;

  function paint() {
    const found = hasWork(codeOf(field.value));
    carryOnButton.hidden = !found;
    carryOnButton.classList.add("is-go");
    freshButton.classList.toggle("is-go", !found);
    freshButton.textContent = !found ? "Start" : confirming ? "Yes, start fresh" : "Start fresh";
    sentence.textContent = !found ? "Are you ready?"
      : confirming ? "The old work will be gone. Start fresh?" : "There is work here. Is it yours?";
  }

  function pressFresh() {
    if (hasWork(codeOf(field.value)) && !confirming) {
      confirming = true;
      paint();
      sentence.focus();
    } else {
      begin(codeOf(field.value), true);
    }
  }

  field.addEventListener("input", () => {
    const cleaned = codeOf(field.value);
    if (cleaned !== field.value) {
      field.value = cleaned;
    }
    confirming = false;
    paint();
  }, lifetime);
  field.addEventListener("keydown", (event) => {
    if (event.key === "Enter") {
      (carryOnButton.hidden ? freshButton : carryOnButton).click();
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
