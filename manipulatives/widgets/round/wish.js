/** The field in which a teacher types numbers of her own, such as "58 + 37". */
import { html } from "../shared/svg.js";
import { button, lead } from "./button.js";
import { NOBODY } from "./asking.js";

const LONGEST = 60;
const WAIT = "One moment …";

/**
 * @param {{
 *   ask: (text: string) => Promise<import("./asking.js").Found>,
 *   put: (task: import("./flow.js").Task) => void, example: () => string, left: () => void,
 * }} given whom to ask, what is done with the question that comes, what may be typed, and where
 *   the focus goes when nothing was
 * @param {{ signal: AbortSignal }} life
 * @returns {{ el: HTMLElement, turn: () => void, close: () => void }}
 */
export function makeWish({ ask, put, example, left }, { signal }) {
  const line = html("input", {
    "class": "round-own", "aria-label": "Numbers of your own", "autocomplete": "off",
    "spellcheck": "false", "maxlength": LONGEST,
  });
  const go = button("work", {}, "Work it");
  const shut = button("shut", {}, "Close");
  const told = html("p", { class: "round-told", role: "status" });
  const row = html("div", { class: "round-line" }, line, go, shut);
  const el = html("div", { class: "round-wish", hidden: "" }, row, told);
  lead(go, true);
  // An answer that comes late belongs to a question that has gone.
  let asked = 0;

  async function send() {
    const text = line.value.trim();
    if (text) {
      asked += 1;
      const mine = asked;
      told.textContent = WAIT;
      const found = await ask(text);
      if (mine !== asked || signal.aborted) {
        return;
      }
      if ("task" in found) {
        close();
        put(found.task);
      } else {
        told.textContent = found.problem;
      }
    }
  }

  function close() {
    asked += 1;
    el.hidden = true;
    line.value = "";
    told.textContent = "";
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
      const nobody = document.documentElement.dataset.kitSession === "page";
      el.hidden = false;
      row.hidden = nobody;
      told.textContent = nobody ? NOBODY : "";
      line.placeholder = example();
      line.focus({ preventScroll: true });
    },
  };
}
