/** The field in which a teacher types numbers of her own, such as "58 + 37". */
import { html } from "../../../shared/svg.js";
import { button, emphasize } from "../../core/button.js";

const LONGEST = 60;
const WAIT = "One moment …";
const NO_PYTHON = "Own numbers need Python. This page has none.";

/**
 * @param {{
 *   python: boolean, ask: (text: string) => Promise<import("./ask_python.js").Found>,
 *   put: (task: import("../../core/state/task.js").Task) => void, example: () => string,
 *   left: () => void,
 * }} given whether Python can be asked, how, what is done with the question that comes, what may be
 *   typed, and what is called when the field is closed by hand
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{ el: HTMLElement, turn: () => void, close: () => void }}
 */
export function makeField({ python, ask, put, example, left }, { signal }) {
  const line = html("input", {
    "class": "round-field round-own", "aria-label": "Numbers of your own", "autocomplete": "off",
    "spellcheck": "false", "maxlength": LONGEST,
  });
  const go = button("work", {}, "Work it");
  const shut = button("shut", {}, "Close");
  const sentence = html("p", { class: "round-problem", role: "status" });
  const row = html("div", { class: "round-line" }, line, go, shut);
  const el = html("div", { class: "round-numbers-field", hidden: "" }, row, sentence);
  emphasize(go, true);
  // Only the answer to the last question is used.
  let asked = 0;

  async function send() {
    const text = line.value.trim();
    if (text) {
      asked += 1;
      const mine = asked;
      sentence.textContent = WAIT;
      const found = await ask(text);
      if (mine !== asked || signal.aborted) {
        return;
      }
      if ("task" in found) {
        close();
        put(found.task);
      } else {
        sentence.textContent = found.problem;
      }
    }
  }

  function close() {
    asked += 1;
    el.hidden = true;
    line.value = "";
    sentence.textContent = "";
  }

  function leave() {
    close();
    left();
  }

  go.addEventListener("click", send, { signal });
  shut.addEventListener("click", leave, { signal });
  line.addEventListener("keydown", (event) => {
    if (event.key === "Enter") {
      event.preventDefault();
      send();
    } else if (event.key === "Escape") {
      leave();
    }
  }, { signal });

  return {
    el,
    close,
    turn() {
      if (!el.hidden) {
        close();
        return;
      }
      el.hidden = false;
      row.hidden = !python;
      sentence.textContent = python ? "" : NO_PYTHON;
      line.placeholder = example();
      line.focus({ preventScroll: true });
    },
  };
}
