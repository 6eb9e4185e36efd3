/**
 * The counting chart: numbers that light, clear or are written as a class counts, and the same
 * numbers as a line with hops. What counting does is decided in count.js; here it is kept,
 * changed and told.
 */
import { announce } from "../shared/announce.js";
import { makeUndoable } from "../shared/state/undoable.js";
import { onKeys } from "../shared/keys.js";
import { numberInWords } from "../shared/state/number_words.js";
import { html, put } from "../shared/svg.js";
import { makeBeat } from "../shared/beat.js";
import { makeCounter, makeKeypad, makePanel } from "./controls.js";
import { MOST_DIGITS, blanks, facts, marksLeft, nextNumber, tap, write } from "./count.js";
import { makeGrid, looks } from "./grid.js";
import { cellHint, countHint } from "./hints.js";
import { makeStrip } from "./strip.js";

/**
 * @typedef {import("./count.js").Settings} Settings
 * @typedef {import("./count.js").Marks} Marks
 */

const SETTINGS = ["first", "last", "width", "step", "start", "direction", "hidden", "mode"];
const TRAITS = [...SETTINGS, "line", "beat", "vocabulary", "movable", "buttons", "panel"];
const MOST_NUMBERS = 1001;
// Settings of the count: with another one it begins anew.
const OF_THE_COUNT = ["first", "last", "step", "start", "direction"];

/**
 * @param {RenderProps} props
 * @returns {void}
 */
function render({ model, el, signal = new AbortController().signal }) {
  const scope = { signal };
  const grid = makeGrid();
  const strip = makeStrip();
  const { counter, tools, agree: agreeCounter, allow } = makeCounter(
    { count, beat: toggleBeat, undo, reset }, scope,
  );
  const keypad = makeKeypad(type, scope);
  const { panel, agree } = makePanel((trait) => model.get(trait), choose, scope);
  const said = html("div", { class: "chart-said" });
  const side = html("div", { class: "chart-side" }, said, counter, keypad, tools, panel);
  const main = html("div", { class: "chart-main" }, strip.frame, grid.area);
  const root = html("div", {
    "class": "kit kit-chart kit-manipulative",
    "role": "group",
    "aria-label": "Counting chart",
    "data-lm-suppress-shortcuts": "true",
  }, html("div", { class: "chart-room" }, html("div", { class: "chart-body" }, main, side)));
  root.facts = () => facts(marks(), settings());

  // The cell that the keys are at, and the one that is written in just now.
  let here = 0;
  /** @type {number | null} */
  let open = null;
  const beat = makeBeat(() => count() && nextNumber(marks(), settings()) !== null, paint, scope);
  /** @type {import("../shared/state/undoable.js").Undoable<Marks>} */
  const kept = makeUndoable(model, "chart", root, (begun) => (begun ? begin() : paint()), scope);

  /** @returns {boolean} whether there is a chart: of its two ends one may be set first */
  function isChart() {
    const span = model.get("last") - model.get("first");
    return span > 0 && span < MOST_NUMBERS;
  }

  /** @returns {Settings} with nothing that is not on the chart */
  function settings() {
    const now = Object.fromEntries(SETTINGS.map((name) => [name, model.get(name)]));
    const on = (/** @type {number | null} */ number) =>
      number !== null && number >= now.first && number <= now.last;
    return /** @type {any} */ ({
      ...now,
      start: on(now.start) ? now.start : null,
      hidden: Array.isArray(now.hidden) ? now.hidden.filter(on) : now.hidden,
    });
  }

  /** @returns {Marks} what was done, as far as it is on the chart */
  function marks() {
    return marksLeft(kept.now(), settings());
  }

  function isWriting() {
    return model.get("mode") === "write";
  }

  /** @returns {boolean} whether anything can be done to it; otherwise it is only looked at */
  function isMovable() {
    return model.get("movable");
  }

  /** @param {number} number */
  function words(number) {
    return numberInWords(number, model.get("vocabulary"));
  }

  /**
   * @param {number} number
   * @returns {string} what is said when it was counted
   */
  function counted(number) {
    const more = nextNumber(marks(), settings()) !== null;
    return more ? words(number) : `${words(number)}. All is counted.`;
  }

  /** Show what was done. */
  function paint() {
    if (!isChart()) {
      return;
    }
    const now = settings();
    const done = marks();
    const { finished, next, blank } = facts(done, now);
    grid.paint(looks(done, now, open), here, model.get("vocabulary"));
    if (model.get("line")) {
      strip.paint(done, now);
    }
    agreeCounter(now.mode, next !== null, model.get("beat"), beat.isRunning());
    allow(.../** @type {[boolean, boolean]} */ (kept.uses()));
    said.textContent = sentence(done, now, Boolean(finished), Number(blank));
  }

  /**
   * @param {Marks} done
   * @param {Settings} now
   * @param {boolean} finished
   * @param {number} blank how many cells are empty yet
   * @returns {string} what is said beside the chart
   */
  function sentence(done, now, finished, blank) {
    if (!isMovable()) {
      return "";
    }
    if (isWriting()) {
      const digits = done.written[here];
      if (finished) {
        return blanks(now).length ? "All is written." : "Nothing is hidden.";
      }
      if (open === null && digits !== undefined && digits !== String(here)) {
        return cellHint(here, done, now);
      }
      return blank ? "Write what is missing." : "Look at the dashed cells.";
    }
    if (done.tapped !== null) {
      return countHint(done, now);
    }
    return finished ? "All is counted." : "";
  }

  /** The chart or the line has another size. */
  function measure() {
    strip.measure();
    paint();
    grid.measure();
    grid.follow(here);
  }

  /** Show what is to be shown, and nothing else. */
  function dress() {
    if (!isChart()) {
      return;
    }
    const now = settings();
    grid.draw(now);
    if (here < now.first || here > now.last) {
      here = firstPlace();
    }
    put(root, {
      "data-mode": now.mode,
      "data-hidden": String(now.hidden),
      "data-still": isMovable() ? null : "",
    });
    strip.frame.hidden = !model.get("line");
    // A chart that shows nothing has nothing to say beside its line.
    const alone = model.get("line") && now.hidden === "all" && !isWriting();
    put(main, { "data-alone": alone || null });
    grid.area.hidden = alone;
    counter.hidden = isWriting() || !model.get("buttons") || !isMovable();
    keypad.hidden = !isWriting() || !isMovable();
    tools.hidden = !model.get("buttons") || !isMovable();
    panel.hidden = !model.get("panel");
    if (isWriting() || !isMovable() || model.get("beat") === 0) {
      beat.stop();
    }
    open = null;
    agree();
    measure();
  }

  /** @returns {number} where the keys begin */
  function firstPlace() {
    const now = settings();
    const done = marks();
    const empty = blanks(now).find((number) => done.written[number] !== String(number));
    return (isWriting() ? empty : nextNumber(done, now)) ?? now.first;
  }

  /** What was done came from outside. */
  function begin() {
    beat.stop();
    open = null;
    here = firstPlace();
    paint();
    grid.follow(here);
  }

  /**
   * Go to a cell.
   * @param {number} number
   */
  function go(number) {
    if (open !== number) {
      open = null;
    }
    here = number;
    paint();
    grid.focus(number);
    grid.follow(number);
  }

  /** @returns {boolean} whether there was a number to count */
  function count() {
    const next = nextNumber(marks(), settings());
    if (next === null) {
      announce(root, "All is counted.");
      return false;
    }
    // Scrolled first: nothing waits to be laid out yet.
    grid.follow(next);
    kept.act(tap(marks(), next, settings()));
    announce(root, counted(next));
    return true;
  }

  /**
   * A cell was tapped.
   * @param {number} number
   */
  function use(number) {
    if (isWriting()) {
      const digits = marks().written[number];
      if (blanks(settings()).includes(number) && digits !== undefined && !isRight(number)) {
        announce(root, cellHint(number, marks(), settings()));
      }
      return;
    }
    beat.stop();
    const before = marks().counted.length;
    if (model.get("panel") && before === 0) {
      choose(["start", number]);
    }
    if (!kept.act(tap(marks(), number, settings()))) {
      paint();
    }
    const after = marks().counted.length;
    const hint = after === before ? countHint(marks(), settings()) : "Taken back.";
    announce(root, after > before ? counted(number) : hint);
  }

  /** @param {number} number */
  function isRight(number) {
    return marks().written[number] === String(number);
  }

  /** @param {number} number */
  function canBeWritten(number) {
    return blanks(settings()).includes(number) && (open === number || !isRight(number));
  }

  /**
   * A key of the keypad, or its like on the keyboard.
   * @param {string} key a digit, "Backspace", "Delete" or "Enter"
   */
  function type(key) {
    if (!canBeWritten(here)) {
      return;
    }
    if (key === "Enter") {
      close();
      return;
    }
    const digits = marks().written[here] ?? "";
    // Over what was not right a new number begins.
    const before = open === here || key === "Backspace" ? digits : "";
    open = here;
    const next = key === "Backspace" ? before.slice(0, -1) : (key === "Delete" ? "" : before + key);
    if (next.length <= MOST_DIGITS && !kept.act(write(marks(), here, next))) {
      paint();
    }
  }

  /** The number in the cell is written: it stays, or there is a hint. */
  function close() {
    open = null;
    const now = settings();
    if (!isRight(here)) {
      paint();
      announce(root, cellHint(here, marks(), now));
      return;
    }
    const left = blanks(now).filter((number) => !isRight(number));
    announce(root, left.length ? `${words(here)}, right.` : "All is written.");
    go(left.find((number) => number > here) ?? left[0] ?? here);
  }

  function toggleBeat() {
    if (beat.isRunning()) {
      beat.stop();
    } else {
      beat.start(model.get("beat"));
    }
    paint();
  }

  function undo() {
    beat.stop();
    open = null;
    if (kept.undo()) {
      announce(root, "Undone.");
    }
  }

  function reset() {
    beat.stop();
    open = null;
    if (kept.reset()) {
      announce(root, "As it was at first.");
    }
  }

  /** @param {...[trait: string, value: unknown]} changes */
  function choose(...changes) {
    const names = changes.map(([name]) => name);
    const anew = names.some((name) => OF_THE_COUNT.includes(name));
    beat.stop();
    for (const [name, value] of changes) {
      model.set(name, value);
    }
    if (names.includes("direction") || names.includes("first")) {
      model.set("start", null);
    }
    if (names.includes("first") && Array.isArray(model.get("hidden"))) {
      model.set("hidden", "none");
    }
    model.save_changes();
    dress();
    if (anew) {
      kept.act({ ...marks(), counted: [], tapped: null });
    }
    here = firstPlace();
    paint();
    grid.follow(here);
  }

  /**
   * Where a key leads from here.
   * @param {string} key
   * @returns {number | null} null when it does not go anywhere
   */
  function led(key) {
    const { first, last, width } = settings();
    const column = (here - first) % width;
    /** @type {Record<string, number>} */
    const ways = {
      "ArrowRight": here + 1,
      "ArrowLeft": here - 1,
      "ArrowDown": here + width,
      "ArrowUp": here - width,
      "Home": here - column,
      "End": Math.min(last, here - column + width - 1),
      "Shift+Home": first,
      "Shift+End": last,
    };
    const to = ways[key];
    return to === undefined ? null : (to < first || to > last ? here : to);
  }

  /**
   * Use a key on the chart.
   * @param {string} key
   * @returns {boolean} whether it means something
   */
  function useKey(key) {
    const to = led(key);
    if (to !== null) {
      go(to);
      return true;
    }
    if (!isMovable()) {
      return false;
    }
    if (isWriting()) {
      const means = /^([0-9]|Backspace|Delete|Enter)$/.test(key);
      if (means) {
        type(key);
      }
      return means;
    }
    switch (key) {
      case "Enter":
        use(here);
        return true;
      case " ":
        count();
        return true;
      case "Backspace":
        if (marks().counted.length) {
          use(marks().counted[marks().counted.length - 1]);
        }
        return true;
      default:
        return false;
    }
  }

  onKeys(root, (key, { target }) => {
    if (target instanceof Node && grid.area.contains(target)) {
      return useKey(key);
    }
    // Digits go to the chart from the keypad too.
    return isWriting() && isMovable() && /^([0-9]|Backspace)$/.test(key) && useKey(key);
  }, scope);
  grid.area.addEventListener("click", (event) => {
    const number = grid.numberAt(event.target);
    if (number !== null) {
      go(number);
      if (isMovable()) {
        use(number);
      }
    }
  }, scope);
  // A screen reader goes to cells in its own ways.
  grid.area.addEventListener("focusin", (event) => {
    const number = grid.numberAt(event.target);
    if (number !== null && number !== here) {
      go(number);
    }
  }, scope);
  strip.frame.addEventListener("click", () => isWriting() || !isMovable() || count(), scope);
  root.addEventListener("focusout", ({ relatedTarget }) => {
    if (open !== null && relatedTarget instanceof Element && !root.contains(relatedTarget)) {
      open = null;
      paint();
    }
  }, scope);

  for (const name of TRAITS) {
    model.on(`change:${name}`, () => signal.aborted || dress());
  }
  const sizes = new ResizeObserver(() => {
    if (signal.aborted) {
      sizes.disconnect();
    } else {
      measure();
    }
  });
  sizes.observe(strip.frame);
  sizes.observe(grid.area);

  here = settings().first - 1;
  dress();
  el.replaceChildren(root);
}

export default { render };
