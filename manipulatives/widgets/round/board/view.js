/** A board's round on the screen: its parts, and what each of them is given of the state. */
import { signed } from "../../shared/signs.js";
import { html } from "../../shared/svg.js";
import { fill } from "../core/frame.js";
import { makeReply } from "../core/reply.js";
import { makeVerdict } from "../core/verdict.js";
import { listenButton } from "../../shared/voice.js";
import { makeBoardBar } from "./bar.js";
import { makeCards } from "./cards.js";
import { makeCells } from "./count_aloud/cells.js";
import { makeFoot } from "./foot.js";
import { makeHead } from "./head.js";
import { makeMore } from "./more.js";
import { makeField } from "./own_numbers/field.js";
import { countText, questionText, standingText } from "./state/words.js";
import { makeSteps } from "./steps.js";

/**
 * @typedef {import("./state/board_state.js").BoardState} BoardState
 * @typedef {import("../core/state/task.js").Task} Task
 */

// A prompt as short as a sum can stand in the field as an example.
const SUM = 14;

/**
 * @param {HTMLElement} root of the round
 * @param {BoardState} state
 * @param {{
 *   title: string, vocabulary: string, python: boolean, manipulative: HTMLElement, bare: boolean,
 *   check: () => void, leave: (event: "kit:onward" | "kit:backward") => void,
 *   ask: (text: string) => Promise<import("./own_numbers/ask_python.js").Found>,
 * }} given the title, the vocabulary, whether Python can be asked and how, where the manipulative
 *   is shown, whether there is none, what checks the answer, and what leaves the round at its ends
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   reply: { el: HTMLElement, take: (letter: string) => void }, focus: () => void,
 *   closeField: () => void, paintPlace: () => void, paintWork: () => void, paintTime: () => void,
 * }}
 */
export function makeView(root, state, given, lifetime) {
  const { vocabulary, leave, manipulative, bare } = given;
  const { position, questions, timer } = state;
  const verdict = makeVerdict();
  const steps = makeSteps(lifetime);
  const listen = listenButton({ vocabulary, words: () => standingText(state) }, lifetime);
  const reply = makeReply({ type: (text) => state.type(text), check: given.check }, lifetime);
  const bar = makeBoardBar((press) => pressed(state, press), lifetime);
  const { head, ask, paint: paintHead } = makeHead(given.title, listen);
  const cards = makeCards((task) => state.choose(task), lifetime);
  const cells = makeCells({
    count: () => state.next() && position.turn === "count",
    prefer: (beat) => state.prefer(beat),
  }, lifetime);
  const foot = makeFoot({
    next: () => state.next() || leave("kit:onward"),
    back: () => state.back() || leave("kit:backward"),
  }, bar.el, lifetime);
  const field = makeField({
    python: given.python,
    ask: given.ask,
    put: (task) => state.askTyped(task),
    example: () => exampleFor(position.task),
    left: () => foot.focus(),
  }, lifetime);
  const more = makeMore((what) => ({
    explain: () => state.explain(),
    reveal: () => state.reveal(),
    twin: () => state.twin(),
    numbers: () => field.turn(),
    apart: () => state.prefer({ apart: !state.preferences.apart }),
  })[what](), lifetime);
  const words = html(
    "div", { class: "round-words" }, steps.el, reply.el, verdict.el, more.el, field.el,
  );
  fill(root, cards.el, head, ask, manipulative, words, cells.el, foot.el);

  return {
    reply,
    focus: foot.focus,
    closeField: field.close,
    paintPlace() {
      const { place, task, working, together, group, extra } = position;
      const wipes = place.phase === "wipe";
      paintHead({
        text: questionText(state),
        parts: working ? task?.parts ?? [] : [],
        count: countText(state),
        tasks: extra || wipes ? 0 : questions.tasks.length,
        group: together ? group : [place.task],
      });
      root.dataset.layout = wipes ? "wipe" : !together ? "one" : working ? "cards" : "strip";
      manipulative.hidden = bare || wipes || (together && working);
      steps.el.hidden = working || wipes || !task;
      if (task) {
        reply.ask(task.ask);
        steps.paint(task, place);
      }
    },
    paintWork() {
      const { work, solved } = state;
      const { place, working, together, turn } = position;
      // Once it is right there is nothing to add; and several are answered on paper.
      reply.el.hidden = !working || solved || together;
      reply.paint(work.text);
      verdict.paint(working && !together ? work.verdict : null);
      cards.paint(together ? cardsOf(state) : []);
      if (place.phase === "wipe") {
        cells.paint(questions.counts, place.step, state.preferences.beat);
      } else {
        cells.hide();
      }
      more.paint(offeredBy(state));
      words.hidden = place.phase === "wipe";
      // Before a question is answered, trying is the thing to do, not looking.
      foot.paint(turn, solved || !working || together || turn === "start");
      this.paintTime();
      // Where something stands before and after the round, the style sheet lets the buttons lead
      // there.
      root.dataset.turn = turn;
      root.toggleAttribute("data-first", position.first);
    },
    paintTime() {
      bar.paint({
        timer: timer.timer,
        left: timer.left,
        timed: timer.timed && position.place.phase !== "wipe",
        starts: position.turn === "start",
        tone: state.preferences.tone,
      });
    },
  };
}

/**
 * @param {BoardState} state
 * @returns {import("./cards.js").Card[]}
 */
function cardsOf({ position: { group, open, working, place }, questions: { tasks } }) {
  return group.map((task) => ({
    task,
    prompt: tasks[task].prompt,
    answer: open.includes(task) ? tasks[task].answer : null,
    current: !working && task === place.task,
  }));
}

/**
 * @param {BoardState} state
 * @returns {import("./more.js").Offered}
 */
function offeredBy({ position, questions, solved, preferences }) {
  const { place: { phase, task }, working, together, open, group, extra, steps } = position;
  const shown = phase === "show" || phase === "check";
  return {
    explain: working && solved && steps > 0 && !together,
    reveal: together && open.length < group.length && phase !== "show",
    twin: shown && questions.twinOf(task) !== null,
    numbers: shown && questions.typed,
    apart: questions.several && working && !extra,
    alone: preferences.apart,
  };
}

/**
 * @param {BoardState} state
 * @param {import("./bar.js").Press} press a button of the timer
 */
function pressed(state, press) {
  if (press === "turn") {
    state.turnTimer();
  } else if (press === "stretch") {
    state.stretchTimer();
  } else if (press === "tone") {
    state.prefer({ tone: !state.preferences.tone });
  } else {
    state.timer.show(press);
  }
}

/**
 * What may be typed: a sum where sums are asked, else something like the answer.
 * @param {Task | undefined} task
 * @returns {string}
 */
function exampleFor(task) {
  const prompt = task?.prompt ?? "";
  return prompt.length <= SUM && /\d/.test(prompt) ? signed(prompt) : task?.answer ?? "";
}
