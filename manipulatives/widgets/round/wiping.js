/** The count-aloud: large numbers that go one after the other, by taps, by presses or to a beat. */
import { makeBeat } from "../chart/beat.js";
import { MINUS } from "../shared/signs.js";
import { html } from "../shared/svg.js";
import { button } from "./button.js";

const SLOWEST = 20;
const FASTEST = 140;
const BY = 10;

/**
 * @param {{
 *   count: () => boolean, like: (beat: { beat: number }) => void,
 * }} given count() counts one and says whether there is another
 * @param {{ signal: AbortSignal }} life
 * @returns {{ el: HTMLElement, paint: (desk: import("./desk.js").Desk) => void }}
 */
export function makeWiping({ count, like }, { signal }) {
  const cells = html("ol", { class: "round-cells" });
  const turn = button("beat", { "aria-pressed": "false" }, "Beat");
  const slower = button("slower", { "aria-label": "Slower" }, MINUS);
  const rate = html("span", { class: "round-rate" });
  const faster = button("faster", { "aria-label": "Faster" }, "+");
  const tempo = html("div", { class: "round-tempo", role: "group", "aria-label": "Beat" },
    turn, slower, rate, faster);
  const el = html("div", { class: "round-wipe", hidden: "" }, cells, tempo);
  const beat = makeBeat(() => el.checkVisibility() && count(), mark, { signal });
  let perMinute = SLOWEST;
  /** @type {number[]} */
  let shown = [];

  function mark() {
    turn.setAttribute("aria-pressed", String(beat.isRunning()));
    turn.textContent = beat.isRunning() ? "Stop" : "Beat";
  }

  /** @param {number} more */
  function change(more) {
    like({ beat: Math.max(SLOWEST, Math.min(perMinute + more, FASTEST)) });
    if (beat.isRunning()) {
      beat.start(perMinute);
    }
  }

  cells.addEventListener("click", () => count(), { signal });
  slower.addEventListener("click", () => change(-BY), { signal });
  faster.addEventListener("click", () => change(BY), { signal });
  turn.addEventListener("click", () => {
    if (beat.isRunning()) {
      beat.stop();
    } else {
      beat.start(perMinute);
    }
    mark();
  }, { signal });

  return {
    el,
    paint({ place: { phase, step }, counts, taste }) {
      const here = phase === "wipe";
      el.hidden = !here;
      if (!here) {
        beat.stop();
        mark();
        return;
      }
      perMinute = taste.beat;
      rate.textContent = `${perMinute} a minute`;
      tempo.hidden = step === counts.length;
      if (shown.join() !== counts.join()) {
        shown = counts;
        cells.dataset.count = String(counts.length);
        cells.replaceChildren(...counts.map((number) => (
          html("li", {}, html("span", {}, String(number)))
        )));
      }
      for (const [index, cell] of [...cells.children].entries()) {
        cell.classList.toggle("is-wiped", index < step);
        cell.classList.toggle("is-next", index === step);
      }
    },
  };
}
