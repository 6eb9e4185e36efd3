/**
 * The counting chart: numbers that light, clear or are written as a class counts, and the same
 * numbers as a line with hops. What counting does is decided in count.js; here it is shown.
 */
import { makeBeat } from "../shared/beat.js";
import { makeFrame } from "../shared/frame.js";
import { html, put } from "../shared/svg.js";
import { makeActions } from "./actions.js";
import { makeCounter, makeKeypad, makePanel } from "./controls.js";
import { facts } from "./count.js";
import { SETTINGS, makeCurrent } from "./current.js";
import { makeGrid, looks } from "./grid.js";
import { useInput } from "./input.js";
import { makeStrip } from "./strip.js";

/** @typedef {import("./count.js").Marks} Marks */

const TRAITS = [...SETTINGS, "line", "beat", "vocabulary", "movable", "buttons", "panel"];
// Settings of the count: with another one it begins anew.
const OF_THE_COUNT = ["first", "last", "step", "start", "direction"];

/**
 * @param {RenderProps} props
 * @returns {void}
 */
function render(props) {
  const frame = makeFrame(props, "chart", "Counting chart", TRAITS);
  const { root, lifetime, get } = frame;
  const grid = makeGrid();
  const strip = makeStrip();
  /** @type {import("../shared/state/undoable.js").Undoable<Marks>} */
  const state = frame.undoable("chart", (begun) => (begun ? begin() : paint()));
  const current = makeCurrent(get, state);
  const { settings, marks, isWriting, isMovable } = current;
  root.facts = () => facts(marks(), settings());
  const actions = makeActions({
    frame, current, state, grid, paint, stopBeat, choose: (trait, value) => choose([trait, value]),
  });
  const beat = makeBeat(() => actions.count() && current.next() !== null, paint, lifetime);
  const { counter, tools, agree: agreeCounter, allow } = makeCounter(
    { count: actions.count, beat: toggleBeat, undo: actions.undo, reset: actions.reset }, lifetime,
  );
  const keypad = makeKeypad(actions.type, lifetime);
  const { panel, agree } = makePanel(get, choose, lifetime);
  const said = html("div", { class: "chart-said" });
  const side = html("div", { class: "chart-side" }, said, counter, keypad, tools, panel);
  const main = html("div", { class: "chart-main" }, strip.frame, grid.area);

  /** Show what was done. */
  function paint() {
    if (!current.isChart()) {
      return;
    }
    const now = settings();
    const done = marks();
    const { finished, next, blank } = facts(done, now);
    grid.paint(looks(done, now, current.open), current.here, get("vocabulary"));
    if (get("line")) {
      strip.paint(done, now);
    }
    agreeCounter(now.mode, next !== null, get("beat"), beat.isRunning());
    allow(.../** @type {[boolean, boolean]} */ (state.uses()));
    said.textContent = current.sentence(Boolean(finished), Number(blank));
  }

  /** The chart or the line has another size. */
  function measure() {
    strip.measure();
    paint();
    grid.measure();
    grid.follow(current.here);
  }

  /** Show what is to be shown, and nothing else. */
  function dress() {
    if (!current.isChart()) {
      return;
    }
    const now = settings();
    grid.draw(now);
    if (current.here < now.first || current.here > now.last) {
      current.here = current.firstPlace();
    }
    put(root, {
      "data-mode": now.mode,
      "data-hidden": String(now.hidden),
      "data-still": isMovable() ? null : "",
    });
    strip.frame.hidden = !get("line");
    // A chart that shows nothing has nothing to say beside its line.
    const alone = get("line") && now.hidden === "all" && !isWriting();
    put(main, { "data-alone": alone || null });
    grid.area.hidden = alone;
    counter.hidden = isWriting() || !get("buttons") || !isMovable();
    keypad.hidden = !isWriting() || !isMovable();
    tools.hidden = !get("buttons") || !isMovable();
    panel.hidden = !get("panel");
    if (isWriting() || !isMovable() || get("beat") === 0) {
      stopBeat();
    }
    current.open = null;
    agree();
    measure();
  }

  /** What was done came from outside. */
  function begin() {
    stopBeat();
    current.open = null;
    restart();
  }

  /** The keys go to where they begin. */
  function restart() {
    current.here = current.firstPlace();
    paint();
    grid.follow(current.here);
  }

  function stopBeat() {
    beat.stop();
  }

  function toggleBeat() {
    if (beat.isRunning()) {
      stopBeat();
    } else {
      beat.start(get("beat"));
    }
    paint();
  }

  /** @param {...[trait: string, value: unknown]} changes */
  function choose(...changes) {
    const names = changes.map(([name]) => name);
    const anew = names.some((name) => OF_THE_COUNT.includes(name));
    stopBeat();
    frame.set({
      ...Object.fromEntries(changes),
      ...(names.includes("direction") || names.includes("first") ? { start: null } : {}),
      ...(names.includes("first") && Array.isArray(get("hidden")) ? { hidden: "none" } : {}),
    });
    dress();
    if (anew) {
      state.act({ ...marks(), counted: [], tapped: null });
    }
    restart();
  }

  useInput({ frame, current, actions, grid, line: strip.frame, paint });
  frame.onTraits(dress);
  frame.onResize([strip.frame, grid.area], measure);
  current.here = settings().first - 1;
  dress();
  frame.show(html("div", { class: "chart-body" }, main, side));
}

export default { render };
