/**
 * Place value blocks: thousands, hundreds, tens and ones on a mat of columns, with readings, the
 * box of blocks and switches beside it. What blocks do is decided in state/; here it is shown.
 */
import { makeFrame } from "../shared/frame.js";
import { onKeys } from "../shared/keys.js";
import { html } from "../shared/svg.js";
import { makeActions } from "./actions.js";
import { makeAir } from "./air.js";
import { makeBlockTools, makeBox, makePanel } from "./controls.js";
import { holdBlocks } from "./hold.js";
import { Mats } from "./mats.js";
import { makeReading } from "./reading.js";
import { PLACES, facts, full, together, traded } from "./state/places.js";
import { isStep, matEquation, runOf } from "./state/tell.js";
import { makeTrading } from "./trading.js";

/**
 * @typedef {import("./state/places.js").Mat} Mat
 * @typedef {import("./state/places.js").Place} Place
 * @typedef {import("./reading.js").Read} Read
 *
 * @typedef {object} Looks the traits beside the mat, each described in blocks.py
 * @property {number} places
 * @property {boolean} movable
 * @property {"any" | "ring" | "button" | "none"} trades
 * @property {boolean} digits
 * @property {boolean} buttons
 * @property {boolean} panel
 *
 * @typedef {Looks & Read} Traits
 */

const TRAITS = [
  "places", "pair", "result", "movable", "trades", "digits", "numeral", "expanded", "zeros",
  "words", "equation", "vocabulary", "buttons", "panel",
];
// So low there is no room for trades between the blocks of the box; there are other ways to trade.
const LOW_PX = 420;

/**
 * @param {RenderProps} props
 * @returns {void}
 */
function render(props) {
  const frame = makeFrame(props, "blocks", "Place value blocks", TRAITS);
  const { root, scope, get } = frame;
  /** @type {() => Traits} */
  const traits = frame.traits;
  const mats = new Mats(step, scope);
  const air = makeAir();
  const trading = makeTrading(mats, air);
  const reading = makeReading();
  /** @type {import("../shared/state/undoable.js").Undoable<Mat>} */
  const state = frame.undoable("mat", paint);
  let shown = state.now().map(full);
  // Where the steps that are told began, and what they are.
  let told = { from: shown, run: "" };
  let equation = "";
  root.facts = () => facts(shown);

  const note = html("div", { class: "blocks-note", hidden: "" });
  mats.table.append(note);
  const actions = makeActions({
    frame, state, mats, hint, byHand, isHeld,
    shown: () => shown,
    reading: () => reading.sentence(shown, traits()),
  });
  const { box, sources, agree: agreeBox } = makeBox(actions.tradeAll, scope);
  const { tools, join, allow } = makeBlockTools(actions, scope);
  const { panel, agree } = makePanel(get, choose, layMats, scope);
  const holding = holdBlocks({
    mats, air, box, sources, hint,
    rules: () => ({ movable: get("movable"), ring: byHand() }),
    put: actions.put,
    trade: actions.trade,
    touched(at) {
      actions.active = at;
      mark();
    },
  }, scope);
  const shelf = html("div", { class: "blocks-shelf" }, box, tools);
  const work = html("div", { class: "blocks-work" }, mats.table, shelf);
  const side = html("div", { class: "blocks-side" }, reading.root, panel);

  /** @returns {boolean} whether blocks are traded by ring and by dropping them */
  function byHand() {
    return ["any", "ring"].includes(get("trades"));
  }

  function isHeld() {
    return holding.isHeld();
  }

  /** @type {import("./mats.js").Step} */
  function step(at, place, more) {
    actions.step(at, place, more);
  }

  /**
   * Show the mat.
   * @param {boolean} begun whether it came from outside
   */
  function paint(begun) {
    const before = shown;
    const was = trading.spots();
    shown = state.now().map(full);
    if (begun) {
      holding.drop();
    }
    holding.forget();
    actions.active = Math.min(actions.active, shown.length - 1);
    trading.settle();
    mats.paint(shown, actions.how.gone);
    tell(before, begun);
    dressControls();
    trading.show(before, shown, was, actions.how);
  }

  /**
   * Write what is to be read.
   * @param {Mat} before
   * @param {boolean} begun
   */
  function tell(before, begun) {
    const run = begun ? "" : runOf(before, shown);
    told = { from: run && run === told.run ? told.from : before, run };
    equation = begun && !isStep(before, shown) ? "" : matEquation(told.from, shown);
    reading.read(shown, equation, traits());
  }

  /** Show what is to be shown, and nothing else. */
  function dress() {
    const now = traits();
    mats.dress(now);
    panel.hidden = !now.panel;
    root.classList.toggle("has-panel", now.panel);
    root.classList.toggle("by-hand", byHand());
    shelf.hidden = !now.movable;
    if (!now.movable) {
      holding.drop();
    }
    mats.paint(shown);
    reading.read(shown, equation, now);
    dressControls();
    mats.fit();
  }

  function dressControls() {
    const now = traits();
    agreeBox(mats.columns, ["any", "button"].includes(now.trades), (place, way) =>
      Boolean(traded(shown, actions.active, place, way)) &&
      (way < 0 || place !== mats.columns[0]));
    const [back, again] = state.uses();
    allow(back, again, Boolean(together(shown)));
    join.hidden = shown.length === 1 || now.pair !== "add";
    tools.hidden = !now.buttons;
    reading.root.hidden = reading.isEmpty();
    side.hidden = reading.root.hidden && panel.hidden;
    agree(shown.length);
    mark();
  }

  /** Mark the mat that the buttons work on, where there are two. */
  function mark() {
    const two = shown.length > 1;
    root.classList.toggle("has-two", two);
    mats.views.forEach(({ root: mat, name }, at) => {
      mat.classList.toggle("is-active", two && get("movable") && at === actions.active);
      mat.setAttribute("aria-label", two ? `Mat ${name.textContent}` : "Mat");
    });
  }

  /**
   * Say something to the child, on the screen and aloud.
   * @param {string} sentence nothing, to take away what was said
   */
  function hint(sentence) {
    note.textContent = sentence;
    note.hidden = sentence === "";
    if (sentence) {
      frame.say(sentence);
    }
  }

  /**
   * @param {string} trait
   * @param {unknown} value
   */
  function choose(trait, value) {
    frame.set({ [trait]: value });
    dress();
  }

  /** @param {string} pair "one" for one mat, else what two are for */
  function layMats(pair) {
    if (pair !== "one") {
      choose("pair", pair);
    }
    actions.layMats(pair === "one");
    dress();
  }

  mats.views.forEach(({ columns }, at) => {
    for (const place of PLACES) {
      const { handle } = columns[place];
      handle.addEventListener("focus", () => {
        actions.active = at;
        dressControls();
      }, scope);
      onKeys(handle, (key) => {
        if (key === "Enter" || key === " ") {
          holding.enter({ at, place });
          return true;
        }
        return key === "Escape" ? holding.drop() : actions.key(at, place, key);
      }, scope);
    }
  });
  frame.onTraits(dress);
  frame.onResize([mats.table], () => {
    root.classList.toggle("is-low", panel.hidden && root.clientHeight < LOW_PX);
    mats.fit();
  });
  frame.show(html("div", { class: "blocks-body" }, work, side, air.layer));
  dress();
}

export default { render };
