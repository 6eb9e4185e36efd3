/**
 * Place value blocks: thousands, hundreds, tens and ones on a mat of columns, with readings, the
 * box of blocks and switches beside it. What blocks do is decided in state/; here it is shown.
 */
import { makeFrame } from "../shared/frame.js";
import { html } from "../shared/svg.js";
import { makeActions } from "./actions.js";
import { makeAir } from "./air.js";
import { makeControls } from "./controls.js";
import { holdBlocks } from "./hold.js";
import { useKeys } from "./keys.js";
import { Mats } from "./mats.js";
import { makeReading, makeSteps } from "./reading.js";
import { facts, full } from "./state/places.js";
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
  const air = makeAir();
  const trading = makeTrading(mats, air);
  const reading = makeReading();
  /** @type {import("../shared/state/undoable.js").Undoable<Mat>} */
  const state = frame.undoable("mat", paint);
  let shown = state.now().map(full);
  const steps = makeSteps(shown);
  root.facts = () => facts(shown);

  const actions = makeActions({
    frame, state, mats, hint, byHand, isHeld,
    shown: () => shown,
    reading: () => reading.sentence(shown, traits()),
  });
  const { box, sources, panel, shelf, agree } = makeControls({
    frame, mats, actions, choose, lay: layMats,
  });
  const holding = holdBlocks({
    mats, air, box, sources, hint,
    rules: () => ({ movable: get("movable"), ring: byHand() }),
    put: actions.put,
    trade: actions.trade,
    touched(at) {
      actions.active = at;
      mark();
    },
  }, lifetime);
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
    steps.go(before, shown, begun);
    reading.read(shown, steps.equation(), traits());
    dressControls();
    trading.show(before, shown, was, actions.how);
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
    reading.read(shown, steps.equation(), now);
    dressControls();
    mats.fit();
  }

  function dressControls() {
    agree(shown, state.uses());
    reading.root.hidden = reading.isEmpty();
    side.hidden = reading.root.hidden && panel.hidden;
    mark();
  }

  /** Mark the mat that the buttons work on, where there are two. */
  function mark() {
    root.classList.toggle("has-two", shown.length > 1);
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

  useKeys({ mats, actions, holding, focused: dressControls }, lifetime);
  frame.onTraits(dress);
  frame.onResize([mats.table], () => {
    root.classList.toggle("is-low", panel.hidden && root.clientHeight < LOW_PX);
    mats.fit();
  });
  frame.show(html("div", { class: "blocks-body" }, work, side, air.layer));
  dress();
}

export default { render };
