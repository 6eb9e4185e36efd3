/** The last screen of a page for pupils: the results to hand in or print, then the next pupil. */
import { button } from "../../../widgets/shared/controls.js";
import { html } from "../../../widgets/shared/svg.js";
import { answersOf, scoreInWords } from "./results.js";
import { makeSaving } from "../shared/saving.js";

/**
 * @typedef {object} Summary
 * @property {import("./results.js").Row[]} rows
 * @property {boolean} done whether everything was done
 * @property {{ name: string, text: string }} file
 * @property {string} headline title, code and day, for print
 */

/**
 * @param {{
 *   summary: () => Summary, carryOn: () => void, finish: () => void, stores: boolean,
 * }} given what was done, the two ways on, and whether this device stores work
 * @param {(words: () => string) => Node} listen makes a button that reads aloud
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{ el: HTMLElement, paint: () => void }}
 */
export function makeEnd({ summary, carryOn, finish, stores }, listen, lifetime) {
  let exported = false;
  let confirming = false;
  const sentence = html("p", { tabindex: -1 });
  const headline = html("p", { class: "pupils-headline" });
  const sums = html("ul", { class: "pupils-sums" });
  const table = html("tbody");
  const names = ["Question", "Answers", "Right", "Hints"].map((name) => (
    html("th", { scope: "col" }, name)
  ));
  const all = html("details", {}, html("summary", {}, "All answers"),
    html("table", {}, html("thead", {}, html("tr", {}, ...names)), table));
  const saving = makeSaving(() => summary().file, lifetime, "results", () => {
    exported = true;
  });
  const text = html("textarea", {
    "readonly": "", "rows": 6, "aria-label": "The results to copy",
  });
  const print = button(["Print"], () => {
    exported = true;
    all.open = true;
    globalThis.print();
  }, lifetime);
  const carryOnButton = button(["Carry on"], carryOn, lifetime);
  const finishButton = button(["Finished, next pupil"], pressFinished, lifetime);
  finishButton.classList.add("is-go");
  const noStorage = html("div", { class: "pupils-lost" },
    html("p", {}, "This device keeps nothing. Copy the results."), text);
  noStorage.hidden = stores;
  const el = html("section", { "class": "pupils-screen pupils-end", "aria-label": "Results" },
    headline,
    html("div", { class: "pupils-said" }, sentence, listen(() => sentence.textContent ?? "")),
    sums,
    html("div", { class: "pupils-row" }, saving, print),
    noStorage,
    all,
    html("div", { class: "pupils-row pupils-last" }, carryOnButton, finishButton));

  function pressFinished() {
    if (exported || confirming || !summary().rows.length) {
      finish();
      return;
    }
    confirming = true;
    say();
  }

  function say() {
    const { done: everything } = summary();
    sentence.textContent = confirming ? "The results are not saved. Clear them?"
      : everything ? "You did it all. Well worked." : "Here is what you did so far.";
    finishButton.textContent = confirming ? "Yes, clear them" : "Finished, next pupil";
    sentence.focus();
  }

  return {
    el,
    paint() {
      const { rows, done: everything, file, headline: top } = summary();
      confirming = false;
      headline.textContent = top;
      carryOnButton.hidden = everything;
      text.value = file.text;
      sums.replaceChildren(...rows.map(({ heading, results }) => (
        html("li", {}, html("span", {}, heading), html("span", {}, scoreInWords(results)))
      )));
      table.replaceChildren(...rows.flatMap(({ results }) => results.map((result) => html("tr", {},
        html("td", {}, result.prompt), html("td", {}, answersOf(result)),
        html("td", {}, result.right ? "yes" : "not yet"), html("td", {}, String(result.hints))))));
      say();
    },
  };
}
