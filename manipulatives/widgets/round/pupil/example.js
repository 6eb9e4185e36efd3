/**
 * A worked example without words: the steps play by themselves, and the answer appears where it
 * would be given. It can be stopped and played again. Where less movement is wished for, nothing
 * plays unasked.
 */
import { html, icon, put } from "../../shared/svg.js";
import { button } from "../core/button.js";
import { signed } from "../../shared/signs.js";

const PLAY = "M7 4.5 L19 12 L7 19.5 Z";
const STOP = "M6 6 H18 V18 H6 Z";
const STEP_DELAY_MS = 1800;

/** @typedef {import("../core/state/task.js").Task} Task */

/**
 * @param {(step: number) => void} show so many steps of the example
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   el: HTMLElement, button: HTMLButtonElement,
 *   open: (task: Task) => void, close: () => void,
 * }}
 */
export function makeExample(show, { signal }) {
  const dots = html("span", { class: "round-dots" });
  const answer = html("div", { class: "round-shown" });
  const el = html("div", { "class": "round-example", "aria-hidden": "true" }, answer, dots);
  const play = button("play", {});
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let waiting;
  /** @type {Task | null} */
  let task = null;
  let step = 0;

  function paint() {
    const { steps, ask, answer: right } = /** @type {Task} */ (task);
    const end = step >= steps.length;
    const running = waiting !== undefined;
    dots.replaceChildren(...steps.map((_, index) => (
      html("i", index < step ? { class: "is-done" } : {})
    )));
    answer.hidden = ask.by === "manipulative";
    answer.replaceChildren(...(ask.by === "choice"
      ? (ask.choices ?? []).map((choice) => html(
        "span", end && choice === right ? { class: "is-right" } : {}, signed(choice),
      ))
      : [html("span", end ? { class: "is-right" } : {}, end ? signed(right) : "?")]));
    play.replaceChildren(icon(running ? STOP : PLAY), running ? "Stop" : "Play");
    put(play, { "aria-label": running ? "Stop the example" : "Play the example" });
  }

  function onward() {
    waiting = undefined;
    // Nothing plays in a page that is not visible.
    if (!task || !el.checkVisibility()) {
      return;
    }
    step += 1;
    show(step);
    if (step < task.steps.length) {
      waiting = setTimeout(onward, STEP_DELAY_MS);
    }
    paint();
  }

  function stop() {
    clearTimeout(waiting);
    waiting = undefined;
  }

  function begin() {
    step = 0;
    show(0);
    waiting = setTimeout(onward, STEP_DELAY_MS);
    paint();
  }

  play.addEventListener("click", () => {
    if (waiting === undefined) {
      begin();
    } else {
      stop();
      paint();
    }
  }, { signal });
  signal.addEventListener("abort", stop, { once: true });

  return {
    el,
    button: play,
    open(example) {
      stop();
      task = example;
      if (matchMedia("(prefers-reduced-motion: reduce)").matches) {
        step = 0;
        paint();
      } else {
        begin();
      }
    },
    close() {
      stop();
      task = null;
    },
  };
}
