/**
 * Place value blocks: thousands, hundreds, tens and ones on a mat of columns, with readings, the
 * box of blocks and switches beside it. What blocks do is decided in state/; here it is shown.
 */
import { makeFrame } from "../shared/frame.js";
import { html } from "../shared/svg.js";
import { makeActions } from "./actions.js";
import { makeControls } from "./controls.js";
import { makeCurrent } from "./current.js";
import { holdBlocks } from "./hold/hold.js";
import { useInput } from "./input.js";
import { Mats } from "./mats.js";
import { makeOverlay } from "./overlay.js";
import { makeReading } from "./reading.js";
import { facts } from "./state/places.js";
import { makeTrading } from "./trading.js";

/**
 * @typedef {import("./state/places.js").Mat} Mat
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
  const { root, lifetime, get } = frame;
  /** @type {() => Traits} */
  const traits = frame.traits;
  const mats = new Mats(step, lifetime);
  const overlay = makeOverlay(lifetime);
  const trading = makeTrading(mats, overlay);
  /** @type {import("../shared/state/undoable.js").Undoable<Mat>} */
  const state = frame.undoable("mat", paint);
  const current = makeCurrent(get, state);
  let painted = current.mat();
  const reading = makeReading(painted);
  root.facts = () => facts(current.mat());
  const actions = makeActions({
    frame, current, state, mats, hint, isHeld, choose, applyTraits,
    reading: () => reading.sentence(current.mat(), traits()),
  });
  const controls = makeControls({ frame, current, mats, actions, reading, choose });
  const holding = holdBlocks({
    mats, overlay, box: controls.box, sources: controls.sources, hint,
    rules: () => ({ movable: get("movable"), ring: current.byHand() }),
    put: actions.put,
    trade: actions.trade,
    touched(at) {
      actions.active = at;
      mark();
    },
  }, lifetime);

  function isHeld() {
    return holding.isHeld();
  }

  /** @type {import("./mats.js").Step} */
  function step(at, place, more) {
    actions.step(at, place, more);
  }

  /**
   * Show the mat.
   * @param {boolean} fromOutside whether it came from outside
   */
  function paint(fromOutside) {
    const before = painted;
    const was = trading.spots();
    const mat = current.mat();
    painted = mat;
    if (fromOutside) {
      holding.drop();
    }
    holding.forget();
    actions.active = Math.min(actions.active, mat.length - 1);
    trading.settle();
    mats.paint(mat, actions.how.gone);
    reading.step(before, mat, fromOutside);
    reading.read(mat, traits());
    paintControls();
    trading.show(before, mat, was, actions.how);
  }

  /** Show what the traits say, and nothing else. */
  function applyTraits() {
    const now = traits();
    mats.applyTraits(now);
    controls.applyTraits();
    root.classList.toggle("has-panel", now.panel);
    root.classList.toggle("by-hand", current.byHand());
    if (!now.movable) {
      holding.drop();
    }
    mats.paint(current.mat());
    reading.read(current.mat(), now);
    paintControls();
    mats.fit();
  }

  function paintControls() {
    controls.paint(state.uses());
    mark();
  }

  /** Mark the mat that the buttons work on, where there are two. */
  function mark() {
    root.classList.toggle("has-two", current.mat().length > 1);
    mats.mark(get("movable") ? actions.active : -1);
  }

  /** @param {string} sentence which is shown and said; nothing, to take away what was shown */
  function hint(sentence) {
    mats.hint(sentence);
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
    applyTraits();
  }

  useInput({ frame, mats, actions, holding, focused: paintControls });
  const work = html("div", { class: "blocks-work" }, mats.table, controls.shelf);
  frame.start({
    body: html("div", { class: "blocks-body" }, work, controls.side, overlay.root),
    applyTraits,
    sized: [mats.table],
    fit() {
      root.classList.toggle("is-low", !get("panel") && root.clientHeight < LOW_PX);
      mats.fit();
    },
  });
}

export default { render };
