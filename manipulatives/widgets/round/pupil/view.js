/** A pupil's round on the screen: its parts, and what each of them is given of the state. */
import { html } from "../../shared/svg.js";
import { makeBar } from "../core/bar.js";
import { fill } from "../core/frame.js";
import { makeReply } from "../core/reply.js";
import { makeVerdict } from "../core/verdict.js";
import { listenButton } from "../../shared/voice.js";
import { makeExample } from "./example.js";
import { makeFoot } from "./foot.js";
import { makeHead, spokenPrompt } from "./head.js";
import { makeSteps } from "./steps.js";

/**
 * @typedef {import("./state/progress.js").Progress} Progress
 * @typedef {import("./state/pupil_state.js").PupilState} PupilState
 */

/**
 * @param {HTMLElement} root of the round
 * @param {PupilState} state
 * @param {{
 *   vocabulary: string, manipulative: HTMLElement, check: () => void, leave: () => void,
 * }} given the vocabulary, where the manipulative is shown, what checks the answer, and what leaves
 *   the round at its end
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   reply: { el: HTMLElement, take: (letter: string) => void },
 *   focusQuestion: () => void, focusNext: () => void,
 *   paint: () => void, paintExample: () => void, paintTime: () => void,
 * }}
 */
export function makeView(root, state, { vocabulary, manipulative, check, leave }, lifetime) {
  const { progress, timer } = state;
  const listen = (/** @type {() => string} */ words) => (
    listenButton({ vocabulary, words }, lifetime)
  );
  const { head, ask, paint: paintHead, focus } = makeHead(listen(() => spokenPrompt(progress)));
  const verdict = makeVerdict();
  const reaction = html(
    "div", { class: "round-spoken" }, verdict.el, listen(() => progress.item.say),
  );
  const steps = makeSteps(listen(() => newestStep(progress)));
  const reply = makeReply({ type: (text) => state.type(text), check }, lifetime);
  const example = makeExample((step) => state.showExample(step), lifetime);
  const bar = makeBar((press) => timer.show(press === "hidden" ? "hidden" : "shown"), lifetime);
  const foot = makeFoot((act) => ({
    start: () => state.start(),
    resume: () => state.resume(),
    step: () => state.step(),
    hint: () => state.hint(),
    next: () => state.next() || leave(),
    skip: leave,
  })[act](), example.button, bar.el, lifetime);
  const words = html("div", { class: "round-words" }, example.el, steps.el, reply.el, reaction);
  fill(root, head, ask, manipulative, words, foot.el);

  return {
    reply,
    focusQuestion: focus,
    focusNext: foot.focus,
    paint() {
      const { item, task, done, open } = progress;
      const watch = item.stage === "watch";
      root.dataset.phase = item.stage === "steps" || item.peek || watch ? "show" : "work";
      root.dataset.stage = item.stage;
      paintHead(progress);
      example.el.hidden = !watch;
      // One sentence at a time: what was said to an answer takes the place of the hint before it.
      const spoke = item.stage === "try" && item.say !== "";
      steps.paint(task, spoke ? 0 : shownSteps(progress), item.stage === "steps" && done);
      reply.ask(task.ask);
      reply.el.hidden = !open || item.peek;
      reply.paint(item.text);
      reaction.hidden = !spoke;
      verdict.paint(spoke ? {
        right: item.right, say: item.say, given: item.given.at(-1) ?? null,
      } : null);
      foot.paint(progress);
      this.paintTime();
    },
    paintExample() {
      if (progress.item.stage === "watch") {
        example.open(progress.example);
      } else {
        example.close();
      }
    },
    paintTime() {
      bar.paint({ timer: timer.timer, left: timer.left, timed: timer.timed });
    },
  };
}

/**
 * The newest step in sight, and the answer behind the last, to be read aloud.
 * @param {Progress} progress
 * @returns {string}
 */
export function newestStep(progress) {
  const { task: { steps, spoken }, item, done } = progress;
  const end = item.stage === "steps" && done;
  return [steps[shownSteps(progress) - 1]?.say, end ? spoken : ""].filter(Boolean).join(" ");
}

/** @param {Progress} progress */
function shownSteps({ item }) {
  return item.stage === "steps" ? item.step : item.stage === "try" ? item.hints : 0;
}
