/**
 * The coin tray: a purse, a mat, and coins that go from one to the other. What coins are worth,
 * where they may lie and what they can be traded for is decided in state/; here it is shown.
 */
import { makeFrame } from "../shared/frame.js";
import { html, put } from "../shared/svg.js";
import { makeActions } from "./actions.js";
import { makeCoinTools, makePanel, makeTrades } from "./controls.js";
import { makeCurrent } from "./current.js";
import { holdCoins } from "./hold.js";
import { useKeys } from "./keys.js";
import { makeMat } from "./mat.js";
import { inWriting } from "./state/amounts.js";
import { facts, sum } from "./state/tray.js";

/** @typedef {import("./state/places.js").Lying} Lying */

const TRAITS = [
  "currency", "purse", "running_total", "writing", "worths", "names", "counts", "photographs",
  "trade", "movable", "ring", "buttons", "panel",
];

/**
 * @param {RenderProps} props
 * @returns {void}
 */
function render(props) {
  const frame = makeFrame(props, "coins", "Coins", TRAITS);
  const { root, lifetime, get, say } = frame;
  const body = html("div", { class: "coins-body" });
  const mat = makeMat(root, body);
  /** @type {import("../shared/state/undoable.js").Undoable<Lying[]>} */
  const state = frame.undoable("tray", turn);
  const current = makeCurrent(frame, state, () => mat.table().scale);
  const { money, tray, keys, left, look } = current;
  root.facts = () => facts(tray(), money(), get("purse"));

  const actions = makeActions({ current, state, mat, unpick, drop, picked, say });
  const holding = holdCoins({
    mat,
    tray,
    traits: () => ({ movable: get("movable"), trade: get("trade") }),
    taken: (point) => mat.taken(point, tray(), left(), look()),
    focus: ({ key, lying }) => (lying
      ? mat.focusCoin(tray().indexOf(lying))
      : mat.focusKind(left().findIndex(([other]) => other === key))),
    float: (hold) => mat.float(hold, look()),
    put: actions.put,
    back: actions.back,
    changed,
  }, lifetime);

  const total = html("div", { class: "coins-total" });
  const { tools, allow, sweeper } = makeCoinTools(actions, lifetime);
  const { trades: offers, offer } = makeTrades(actions.trade, lifetime);
  const { panel, agree } = makePanel(get, choose, lifetime);
  const side = html("div", { class: "coins-side" }, total, tools, offers, panel);
  body.append(side);

  function unpick() {
    holding.unpick();
  }

  function drop() {
    holding.drop();
  }

  function picked() {
    return holding.places();
  }

  /** @returns {import("./mat.js").Shown} what lies there and what may be done with it */
  function shown() {
    const counts = get("counts");
    return {
      tray: tray(),
      left: left(),
      look: look(),
      called: current.called,
      kind: holding.kind(),
      places: holding.places(),
      several: get("trade"),
      counted: counts === true ? Infinity : Number(counts),
    };
  }

  /** Show what lies there. */
  function paint() {
    mat.paint(shown());
    const movable = get("movable");
    put(mat.drawing, {
      "role": movable ? null : "img",
      "aria-label": movable ? null : current.calledAll(keys()),
      "aria-hidden": movable ? true : null,
    });
    total.textContent = inWriting(sum(keys()), money(), get("writing"));
    const any = tray().length > 0;
    allow(...state.uses(), any, any);
    if (!offers.hidden) {
      offer(picked().map((place) => keys()[place]), left(), look());
    }
  }

  /** Lay everything out afresh, and show what is to be shown and nothing else. */
  function dress() {
    const movable = get("movable");
    total.hidden = !get("running_total");
    tools.hidden = !movable || !get("buttons");
    sweeper.hidden = left().length === 0;
    offers.hidden = !movable || !get("trade") || left().length === 0;
    panel.hidden = !get("panel");
    side.hidden = [total, tools, offers, panel].every(({ hidden }) => hidden);
    agree(look());
    mat.dress(shown());
    paint();
  }

  /** Something was picked, or let go. */
  function changed() {
    paint();
    const kind = holding.kind();
    const some = kind === null ? picked().map((place) => keys()[place]) : [kind];
    if (some.length) {
      const what = some.length > 1 ? current.calledAll(some) : current.called(some[0]);
      say(`Picked: ${what}.`);
    }
  }

  /** @param {boolean} begun whether the tray came from outside */
  function turn(begun) {
    if (begun) {
      holding.drop();
      dress();
    } else {
      paint();
    }
  }

  /**
   * @param {string} trait
   * @param {unknown} value
   */
  function choose(trait, value) {
    frame.set({ [trait]: value });
    dress();
    if (trait === "counts" && value) {
      actions.lineUp();
    }
  }

  useKeys({ frame, mat, current, actions, holding });
  frame.onTraits(dress);
  frame.onResize([mat.place], dress);
  dress();
  frame.show(body);
}

export default { render };
