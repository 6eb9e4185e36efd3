/**
 * A round as a pupil works through it alone: one question at a time, two tries, hints, and the
 * steps where they are needed. The page around it saves the work: it says when to begin
 * ("kit:begin", with what was saved), and the round tells of every change ("kit:work") and of its
 * end ("kit:onward").
 */
import { announce } from "../../shared/announce.js";
import { html } from "../../shared/svg.js";
import { TIME_IS_UP } from "../core/bar.js";
import { makeEvents } from "../core/events.js";
import { factsIn, makeRoot, showManipulative } from "../core/frame.js";
import { makeSeconds } from "../core/seconds.js";
import { typeFromAnywhere } from "../core/typing.js";
import { spokenPrompt } from "./head.js";
import { PupilState } from "./state/pupil_state.js";
import { makeView, newestStep } from "./view.js";

/** @param {RenderProps} given */
async function render({ model, el, signal = new AbortController().signal, host }) {
  const lifetime = { signal };
  const setup = model.get("setup");
  const root = makeRoot(setup, { "class": "kit kit-round is-pupil", "data-layout": "one" });
  const manipulative = html("div", { class: "round-manipulative" });
  manipulative.hidden = !model.get("manipulative");
  const { tell, round: tellRound } = makeEvents(root, model, lifetime);
  const state = new PupilState({ model, now: Date.now, changed });
  const { progress, timer } = state;
  const view = makeView(root, state, {
    manipulative,
    vocabulary: setup.vocabulary ?? "us",
    check: () => state.check(factsIn(manipulative)),
    leave: () => tell("kit:onward"),
  }, lifetime);
  const waitForSecond = makeSeconds(timer, second, lifetime);
  el.append(root);
  let begun = false;

  /** @type {Partial<Record<import("./state/pupil_state.js").Change, () => void>>} */
  const listeners = {
    item() {
      if (begun) {
        view.paintExample();
        announce(root, spokenPrompt(progress));
      }
    },
    stage: () => announce(root, newestStep(progress)),
    verdict: () => announce(root, progress.item.say),
  };

  /** @param {import("./state/pupil_state.js").Change} what */
  function changed(what) {
    const page = /** @type {Document | ShadowRoot} */ (root.getRootNode());
    const focused = begun && root.contains(page.activeElement);
    view.paint();
    listeners[what]?.();
    paintTime();
    if (begun && what !== "timer") {
      tell("kit:work", { saved: state.saved, results: progress.results });
    }
    // A new question is read first; where the focus went with its button, Enter goes on.
    if (what === "item" && focused) {
      view.focusQuestion();
    } else if (focused && !page.activeElement?.checkVisibility()) {
      if (progress.open && !progress.item.peek) {
        view.focusQuestion();
      } else {
        view.focusNext();
      }
    }
  }

  function paintTime() {
    view.paintTime();
    waitForSecond();
  }

  function second() {
    if (timer.tick()) {
      announce(root, TIME_IS_UP);
    }
    view.paintTime();
  }

  root.addEventListener("kit:begin", (event) => {
    begun = true;
    state.begin(/** @type {CustomEvent} */ (event).detail.saved);
  }, lifetime);
  manipulative.addEventListener("kit:change", () => state.moved(), lifetime);
  typeFromAnywhere(root, manipulative, view.reply, true, lifetime);
  signal.addEventListener("abort", () => root.remove(), { once: true });

  view.paint();
  tellRound();
  await showManipulative({ model, host, el: manipulative }, (child) => state.join(child), lifetime);
}

export default { render };
