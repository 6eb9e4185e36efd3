/** A round at a board: taught by a teacher, or worked through by whoever stands there. */
import { announce } from "../../shared/announce.js";
import { html } from "../../shared/svg.js";
import { TIME_IS_UP } from "../core/bar.js";
import { makeEvents } from "../core/events.js";
import { factsIn, makeRoot, showManipulative } from "../core/frame.js";
import { makeSeconds } from "../core/seconds.js";
import { typeFromAnywhere } from "../core/typing.js";
import { makeAskPython } from "./own_numbers/ask_python.js";
import { BoardState } from "./state/board_state.js";
import { openStorage } from "./state/storage.js";
import { saidText, standingText } from "./state/words.js";
import { softTone } from "./tone.js";
import { makeView } from "./view.js";

/** @param {RenderProps} given */
async function render({ model, el, signal = new AbortController().signal, host }) {
  const setup = model.get("setup");
  // A page that shows a lesson says under which key its browser saves it; a notebook does not.
  const lesson = document.documentElement.dataset.kitLesson;
  const lifetime = { signal };
  const root = makeRoot(setup, { "data-lm-suppress-shortcuts": "true" });
  const manipulative = html("div", { class: "round-manipulative" });
  const { tell, round: tellRound } = makeEvents(root, model, lifetime);
  const state = new BoardState({
    model, signal, changed, now: Date.now, storage: openStorage(lesson, setup.key ?? ""),
  });
  const { position, questions } = state;
  const view = makeView(root, state, {
    title: setup.title ?? "",
    vocabulary: setup.vocabulary ?? "us",
    python: model.get("python"),
    manipulative,
    bare: !model.get("manipulative"),
    check: () => state.check(factsIn(manipulative)),
    leave: tell,
    ask: makeAskPython(model, lifetime),
  }, lifetime);
  const waitForSecond = makeSeconds(state.timer, second, lifetime);
  el.append(root);

  /** @type {Partial<Record<import("./state/board_state.js").Change, () => void>>} */
  const listeners = {
    place() {
      view.closeField();
      paintPlace();
      const { phase, step } = position.place;
      const begins = phase === "ask" || (position.turn === "count" && !step);
      announce(root, begins ? standingText(state) : saidText(state) ?? "");
    },
    tasks: () => tellRound(),
    begun: tellPlace,
    timer: paintTime,
    out() {
      announce(root, TIME_IS_UP);
      if (state.preferences.tone) {
        softTone(lifetime);
      }
    },
    counted: () => tell("kit:wipe", { done: position.place.step, of: questions.counts.length }),
  };

  /** @param {import("./state/board_state.js").Change} what */
  function changed(what) {
    listeners[what]?.();
    view.paintWork();
    if (what === "verdict") {
      announce(root, saidText(state) ?? "");
    }
    // What had the focus may be gone; then Enter goes on.
    const { activeElement } = /** @type {Document | ShadowRoot} */ (root.getRootNode());
    if (root.contains(activeElement) && !activeElement?.checkVisibility()) {
      view.focus();
    }
  }

  function paintPlace() {
    view.paintPlace();
    tellPlace();
  }

  function tellPlace() {
    const { place: { task, phase, step }, steps, group, extra, task: asked } = position;
    root.dataset.phase = phase;
    tell("kit:place", {
      task, phase, step, steps, tasks: questions.tasks.length, group, extra: extra ? asked : null,
    });
  }

  function paintTime() {
    view.paintTime();
    waitForSecond();
  }

  function second() {
    state.tick();
    // Another round has taken its place.
    if (!root.checkVisibility()) {
      state.timer.rest();
    }
    view.paintTime();
  }

  /** What the page around may ask; prevented means that it was done here.
   * @param {string} event
   * @param {() => boolean} act
   */
  function answer(event, act) {
    root.addEventListener(event, (asked) => {
      if (asked.target === root && act()) {
        asked.preventDefault();
      }
    }, lifetime);
  }
  answer("kit:next", () => state.next());
  answer("kit:back", () => state.back());
  answer("kit:answers", () => state.turnAnswer());
  answer("kit:timer", () => state.turnTimer());
  answer("kit:again", () => state.again());

  typeFromAnywhere(root, manipulative, view.reply, lesson !== undefined, lifetime);
  document.addEventListener("visibilitychange", () => state.save(), lifetime);
  manipulative.addEventListener("kit:change", () => state.moved(), lifetime);
  signal.addEventListener("abort", () => root.remove(), { once: true });

  paintPlace();
  paintTime();
  view.paintWork();
  tellRound(root.isConnected ? null : tellPlace);
  await showManipulative({ model, host, el: manipulative }, (child) => state.join(child), lifetime);
}

export default { render };
