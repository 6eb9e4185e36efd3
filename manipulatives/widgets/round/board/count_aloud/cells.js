/** The count-aloud: large numbers that go one after the other, by taps, by presses or to a beat. */
import { makeBeat } from "../../../shared/beat.js";
import { MINUS } from "../../../shared/signs.js";
import { html } from "../../../shared/svg.js";
import { button } from "../../core/button.js";

const SLOWEST = 20;
const FASTEST = 140;
const CHANGE = 10;

/**
 * @param {{
 *   count: () => boolean, prefer: (beat: { beat: number }) => void,
 * }} given count() counts one and says whether there is another
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   el: HTMLElement, paint: (counts: number[], done: number, perMinute: number) => void,
 *   hide: () => void,
 * }} paint() takes the numbers, how many of them were counted, and the beat
 */
export function makeCells({ count, prefer }, { signal }) {
  const cells = html("ol", { class: "round-cells" });
  const turn = button("beat", { "aria-pressed": "false" }, "Beat");
  const slower = button("slower", { "aria-label": "Slower" }, MINUS);
  const rate = html("span", { class: "round-rate" });
  const faster = button("faster", { "aria-label": "Faster" }, "+");
  const tempo = html("div", { class: "round-tempo", role: "group", "aria-label": "Beat" },
    turn, slower, rate, faster);
  const el = html("div", { class: "round-wipe", hidden: "" }, cells, tempo);
  const beat = makeBeat(() => el.checkVisibility() && count(), mark, { signal });
  let rateNow = SLOWEST;
  /** @type {number[]} */
  let shown = [];

  function mark() {
    turn.setAttribute("aria-pressed", String(beat.isRunning()));
    turn.textContent = beat.isRunning() ? "Stop" : "Beat";
  }

  /** @param {number} more */
  function change(more) {
    prefer({ beat: Math.max(SLOWEST, Math.min(rateNow + more, FASTEST)) });
    if (beat.isRunning()) {
      beat.start(rateNow);
    }
  }

  cells.addEventListener("click", () => count(), { signal });
  slower.addEventListener("click", () => change(-CHANGE), { signal });
  faster.addEventListener("click", () => change(CHANGE), { signal });
  turn.addEventListener("click", () => {
    if (beat.isRunning()) {
      beat.stop();
    } else {
      beat.start(rateNow);
    }
    mark();
  }, { signal });

  return {
    el,
    hide() {
      el.hidden = true;
      beat.stop();
      mark();
    },
    paint(counts, done, perMinute) {
      el.hidden = false;
      rateNow = perMinute;
      rate.textContent = `${perMinute} a minute`;
      tempo.hidden = done === counts.length;
      if (shown.join() !== counts.join()) {
        shown = counts;
        cells.dataset.count = String(counts.length);
        cells.replaceChildren(...counts.map((number) => (
          html("li", {}, html("span", {}, String(number)))
        )));
      }
      for (const [index, cell] of [...cells.children].entries()) {
        cell.classList.toggle("is-wiped", index < done);
        cell.classList.toggle("is-next", index === done);
      }
    },
  };
}
