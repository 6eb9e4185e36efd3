/** The end of a page for pupils: what was done, to hand in or to print, then the next pupil. */
import { button } from "../../../widgets/shared/controls.js";
import { html } from "../../../widgets/shared/svg.js";
import { answersOf, summed } from "./results.js";
import { makeSaving } from "../shared/saving.js";

/**
 * @typedef {object} Ended
 * @property {import("./results.js").Row[]} rows
 * @property {boolean} done whether everything was done
 * @property {{ name: string, text: string }} file
 * @property {string} headline title, code and day, for paper
 */

/**
 * @param {{
 *   told: () => Ended, carryOn: () => void, finish: () => void, stores: boolean,
 * }} given what there is to tell, what may come next, and whether this device
 *   stores any work
 * @param {(words: () => string) => Node} listen makes a button that reads aloud
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{ el: HTMLElement, paint: () => void }}
 */
export function makeEnd({ told, carryOn, finish, stores }, listen, lifetime) {
  let offered = false;
  let asked = false;
  const sentence = html("p", { tabindex: -1 });
  const headline = html("p", { class: "pupils-headline" });
  const sums = html("ul", { class: "pupils-sums" });
  const table = html("tbody");
  const names = ["Question", "Answers", "Right", "Hints"].map((name) => (
    html("th", { scope: "col" }, name)
  ));
  const all = html("details", {}, html("summary", {}, "All answers"),
    html("table", {}, html("thead", {}, html("tr", {}, ...names)), table));
  const saving = makeSaving(() => told().file, lifetime, "results", () => {
    offered = true;
  });
  const text = html("textarea", {
    "readonly": "", "rows": 6, "aria-label": "The results to copy",
  });
  const print = button(["Print"], () => {
    offered = true;
    all.open = true;
    globalThis.print();
  }, lifetime);
  const carry = button(["Carry on"], carryOn, lifetime);
  const finished = button(["Finished, next pupil"], press, lifetime);
  finished.classList.add("is-go");
  const lost = html("div", { class: "pupils-lost" },
    html("p", {}, "This device keeps nothing. Copy the results."), text);
  lost.hidden = stores;
  const el = html("section", { "class": "pupils-screen pupils-end", "aria-label": "Results" },
    headline,
    html("div", { class: "pupils-said" }, sentence, listen(() => sentence.textContent ?? "")),
    sums,
    html("div", { class: "pupils-row" }, saving, print),
    lost,
    all,
    html("div", { class: "pupils-row pupils-last" }, carry, finished));

  function press() {
    if (offered || asked || !told().rows.length) {
      finish();
      return;
    }
    asked = true;
    say();
  }

  function say() {
    const { done: everything } = told();
    sentence.textContent = asked ? "The results are not saved. Clear them?"
      : everything ? "You did it all. Well worked." : "Here is what you did so far.";
    finished.textContent = asked ? "Yes, clear them" : "Finished, next pupil";
    sentence.focus();
  }

  return {
    el,
    paint() {
      const { rows, done: everything, file, headline: top } = told();
      asked = false;
      headline.textContent = top;
      carry.hidden = everything;
      text.value = file.text;
      sums.replaceChildren(...rows.map(({ heading, results }) => (
        html("li", {}, html("span", {}, heading), html("span", {}, summed(results)))
      )));
      table.replaceChildren(...rows.flatMap(({ results }) => results.map((result) => html("tr", {},
        html("td", {}, result.prompt), html("td", {}, answersOf(result)),
        html("td", {}, result.right ? "yes" : "not yet"), html("td", {}, String(result.hints))))));
      say();
    },
  };
}
