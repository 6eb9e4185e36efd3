/**
 * The counting chart: numbers that light, clear or are written as a class counts, and the same
 * numbers as a line with hops. What counting does is decided in count.js; here it is shown.
 */
import { makeBeat } from "../shared/beat.js";
import { makeFrame } from "../shared/frame.js";
import { html, put } from "../shared/svg.js";
import { makeActions } from "./actions.js";
import { makeControls } from "./controls.js";
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
  const state = frame.undoable("chart", stateChanged);
  const current = makeCurrent(get, state);
  const { settings, marks, isWriting, isMovable } = current;
  root.facts = () => facts(marks(), settings());
  const actions = makeActions({
    frame, current, state, grid, paint, stopBeat, choose: (trait, value) => choose([trait, value]),
  });
  const beat = makeBeat(() => actions.count() && current.next() !== null, paint, lifetime);
  const controls = makeControls({ frame, current, actions, beat, toggleBeat, choose });
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
    controls.paint(current.sentence(Boolean(finished), Number(blank)), next !== null, state.uses());
  }

  /** The chart or the line has another size. */
  function measure() {
    strip.measure();
    paint();
    grid.measure();
    grid.follow(current.here);
  }

  /** Show what the traits say, and nothing else. */
  function applyTraits() {
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
    controls.applyTraits();
    if (isWriting() || !isMovable() || get("beat") === 0) {
      stopBeat();
    }
    current.open = null;
    measure();
  }

  /** @param {boolean} fromOutside whether what was done came from outside */
  function stateChanged(fromOutside) {
    if (fromOutside) {
      stopBeat();
      current.open = null;
      restart();
    } else {
      paint();
    }
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
    beat.toggle(get("beat"));
    paint();
  }

  /** @param {...[trait: string, value: unknown]} changes */
  function choose(...changes) {
    const names = changes.map(([name]) => name);
    const anew = names.some((name) => OF_THE_COUNT.includes(name));
    stopBeat();
    frame.set({ ...Object.fromEntries(changes), ...alsoSet(names, get("hidden")) });
    applyTraits();
    if (anew) {
      state.act({ ...marks(), counted: [], tapped: null });
    }
    restart();
  }

  useInput({ frame, current, actions, grid, line: strip.frame, paint });
  current.here = settings().first - 1;
  frame.start({
    body: html("div", { class: "chart-body" }, main, controls.side),
    applyTraits,
    sized: [strip.frame, grid.area],
    fit: measure,
  });
}

/**
 * @param {string[]} names of the traits that are set
 * @param {unknown} hidden
 * @returns {Record<string, unknown>} what no longer fits these, set anew
 */
function alsoSet(names, hidden) {
  return {
    ...(names.includes("direction") || names.includes("first") ? { start: null } : {}),
    ...(names.includes("first") && Array.isArray(hidden) ? { hidden: "none" } : {}),
  };
}

export default { render };
