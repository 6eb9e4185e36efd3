/**
 * Place value blocks: thousands, hundreds, tens and ones on a mat of columns, with readings, the
 * box of blocks and switches beside it. What blocks do is decided in places.js; here it is shown,
 * kept and told.
 */
import { announce } from "../shared/announce.js";
import { makeKept } from "../shared/kept.js";
import { onKeys } from "../shared/keys.js";
import { html } from "../shared/svg.js";
import { makeAir } from "./drawing/air.js";
import { makeBlockTools, makeBox, makePanel } from "./controls.js";
import { holdBlocks } from "./acts/hold.js";
import { Mats } from "./drawing/mats.js";
import { PLACES, changed, facts, full, keyed } from "./exact/places.js";
import { putDown, together, traded } from "./exact/places.js";
import { makeReading } from "./exact/reading.js";
import { counted, isStep, matEquation, runOf, whyNoKey, whyNoStep } from "./tell.js";
import { makeTrading } from "./exact/trading.js";

/**
 * @typedef {import("./exact/places.js").Mat} Mat
 * @typedef {import("./exact/places.js").Place} Place
 * @typedef {import("./exact/reading.js").Read} Read
 * @typedef {import("./exact/ways.js").How} How
 * @typedef {import("../shared/kept.js").Kept<Mat>} KeptMat
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
function render({ model, el, signal = new AbortController().signal }) {
  const life = { signal };
  const mats = new Mats(step, life);
  const air = makeAir();
  const trading = makeTrading(mats, air);
  const reading = makeReading();
  /** @type {Mat} */
  let shown = [];
  /** @type {How} */
  let how = {};
  // Where the steps that are told began, and what they are.
  let told = { from: shown, run: "" };
  let equation = "";
  let active = 0;

  const { box, sources, agree: agreeBox } = makeBox(tradeAll, life);
  const { tools, join, allow } = makeBlockTools({ undo, reset, join: putTogether }, life);
  const { panel, agree } = makePanel((trait) => model.get(trait), choose, layMats, life);
  const note = html("div", { class: "blocks-note", hidden: "" });
  mats.table.append(note);
  const shelf = html("div", { class: "blocks-shelf" }, box, tools);
  const work = html("div", { class: "blocks-work" }, mats.table, shelf);
  const side = html("div", { class: "blocks-side" }, reading.root, panel);
  const body = html("div", { class: "blocks-body" }, work, side, air.layer);
  const root = html("div", {
    "class": "kit kit-blocks kit-manipulative",
    "role": "group",
    "aria-label": "Place value blocks",
    "data-lm-suppress-shortcuts": "true",
  }, html("div", { class: "blocks-room" }, body));
  root.facts = () => facts(shown);
  const say = (/** @type {string} */ sentence) => announce(root, sentence);
  const kept = /** @type {KeptMat} */ (
    makeKept(model, "mat", root, (begun) => paint(begun), life));
  const holding = holdBlocks({
    mats, air, box, sources, hint,
    rules: () => ({ movable: traits().movable, ring: byHand() }),
    put: putIn,
    trade(at, place, indices) {
      act(traded(shown, at, place, 1), { gone: { at, place, indices } });
    },
    touched(at) {
      active = at;
      mark();
    },
  }, life);

  /** @returns {Traits} what the blocks look like and obey */
  function traits() {
    return /** @type {any} */ (Object.fromEntries(TRAITS.map((name) => [name, model.get(name)])));
  }

  /** @returns {boolean} whether blocks are traded by ring and by dropping them */
  function byHand() {
    return ["any", "ring"].includes(traits().trades);
  }

  /**
   * Show the mat.
   * @param {boolean} begun whether it came from outside
   */
  function paint(begun) {
    const before = shown;
    const was = trading.spots();
    shown = kept.now().map(full);
    if (begun) {
      holding.drop();
    }
    holding.forget();
    active = Math.min(active, shown.length - 1);
    trading.settle();
    mats.paint(shown, how.gone);
    tell(before, begun);
    dressControls();
    trading.show(before, shown, was, how);
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
      Boolean(traded(shown, active, place, way)) && (way < 0 || place !== mats.columns[0]));
    const [back, again] = kept.uses();
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
    root.classList.toggle("has-two", shown.length > 1);
    mats.views.forEach(({ root: mat, name }, at) => {
      const marked = shown.length > 1 && traits().movable;
      mat.classList.toggle("is-active", marked && at === active);
      mat.setAttribute("aria-label", shown.length > 1 ? `Mat ${name.textContent}` : "Mat");
    });
  }

  /**
   * Go to another mat in one step.
   * @param {Mat | null} next
   * @param {How} [by]
   */
  function act(next, by = {}) {
    if (next && !holding.isHeld()) {
      hint("");
      how = by;
      const moved = kept.act(next);
      how = {};
      if (moved) {
        said();
      }
    }
  }

  function said() {
    const name = shown.length > 1 ? `${mats.views[active].name.textContent}: ` : "";
    say(`${name}${counted(shown[active])}. ${reading.sentence(shown, traits())}`.trim());
  }

  /**
   * Blocks are put down.
   * @param {import("./acts/hold.js").Picked} taken
   * @param {import("./acts/hold.js").Target | null} target
   * @param {import("./exact/rows.js").Spot[]} from where they were let go
   */
  function putIn({ at, place, indices }, target, from) {
    const taken = { at, place, count: indices.length };
    const { mat, why } = putDown(shown, taken, target, byHand());
    if (why) {
      hint(why);
    } else if (mat) {
      active = target?.at ?? active;
      const held = target ? { at, place, spots: from, target } : undefined;
      act(mat, { held, gone: at === null ? undefined : { at, place, indices } });
    }
  }

  /**
   * @param {number} at
   * @param {Place} place
   * @param {1 | -1} more
   */
  function step(at, place, more) {
    active = at;
    const next = changed(shown, at, { [place]: more });
    if (next) {
      act(next);
    } else {
      hint(whyNoStep(place, more));
    }
  }

  /**
   * @param {Place} place
   * @param {1 | -1} way
   */
  function tradeAll(place, way) {
    act(traded(shown, active, place, way));
  }

  function putTogether() {
    active = 0;
    act(together(shown));
  }

  function undo() {
    if (!holding.isHeld() && kept.undo()) {
      said();
    }
  }

  function reset() {
    if (!holding.isHeld() && kept.reset()) {
      said();
    }
  }

  /**
   * Say something to the child, on the screen and aloud.
   * @param {string} sentence nothing, to take away what was said
   */
  function hint(sentence) {
    note.textContent = sentence;
    note.hidden = sentence === "";
    if (sentence) {
      say(sentence);
    }
  }

  /**
   * @param {string} trait
   * @param {unknown} value
   */
  function choose(trait, value) {
    model.set(trait, value);
    model.save_changes();
    dress();
  }

  /** @param {string} pair "one" for one mat, else what two are for */
  function layMats(pair) {
    if (pair !== "one") {
      choose("pair", pair);
    }
    const [first, second = full()] = shown;
    act(pair === "one" ? [first] : [first, second]);
    dress();
  }

  mats.views.forEach(({ columns }, at) => {
    for (const place of PLACES) {
      const { handle } = columns[place];
      handle.addEventListener("focus", () => {
        active = at;
        dressControls();
      }, life);
      onKeys(handle, (key) => key === "Escape" ? holding.drop() : press(at, place, key), life);
    }
  });

  /**
   * @param {number} at
   * @param {Place} place
   * @param {string} key
   * @returns {boolean} whether there was a use for it
   */
  function press(at, place, key) {
    const { columns } = mats;
    if (key === "Enter" || key === " ") {
      holding.enter({ at, place });
      return true;
    }
    if (key === "ArrowLeft" || key === "ArrowRight") {
      const next = columns[columns.indexOf(place) + (key === "ArrowLeft" ? -1 : 1)];
      mats.views[at].columns[next ?? place].handle.focus();
      return true;
    }
    const trades = traits().trades !== "none";
    const next = keyed(shown, at, place, key, { trades, columns });
    if (next) {
      act(next);
    } else if (next === null) {
      hint(whyNoKey(shown[at], place, key, { trades, columns }));
    }
    return next !== undefined;
  }

  for (const name of TRAITS) {
    model.on(`change:${name}`, () => signal.aborted || dress());
  }
  new ResizeObserver(() => {
    root.classList.toggle("is-low", panel.hidden && root.clientHeight < LOW_PX);
    mats.fit();
  }).observe(mats.table);

  shown = kept.now().map(full);
  told.from = shown;
  el.replaceChildren(root);
  dress();
}

export default { render };
