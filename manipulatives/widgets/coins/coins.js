/**
 * The coin tray: a purse, a mat, and coins that go from one to the other. What coins are worth,
 * where they may lie and what they can be traded for is decided in state/; here it is shown.
 */
import { makeFrame } from "../shared/frame.js";
import { html, put } from "../shared/svg.js";
import { makeActions } from "./actions.js";
import { makeControls } from "./controls.js";
import { makeCurrent } from "./current.js";
import { holdCoins } from "./hold.js";
import { useInput } from "./input.js";
import { makeMat } from "./mat.js";
import { facts } from "./state/tray.js";

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
  const state = frame.undoable("tray", stateChanged);
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
    changed: pickChanged,
  }, lifetime);

  const controls = makeControls({ frame, current, actions, choose });
  body.append(controls.side);

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
    controls.paint(picked().map((place) => keys()[place]), state.uses());
  }

  /** Lay everything out afresh, and show what the traits say and nothing else. */
  function applyTraits() {
    controls.applyTraits();
    mat.layOut(shown());
    paint();
  }

  /** Something was picked, or let go. */
  function pickChanged() {
    paint();
    const kind = holding.kind();
    const some = kind === null ? picked().map((place) => keys()[place]) : [kind];
    if (some.length) {
      const what = some.length > 1 ? current.calledAll(some) : current.called(some[0]);
      say(`Picked: ${what}.`);
    }
  }

  /** @param {boolean} fromOutside whether the tray came from outside */
  function stateChanged(fromOutside) {
    if (fromOutside) {
      holding.drop();
      applyTraits();
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
    applyTraits();
    if (trait === "counts" && value) {
      actions.lineUp();
    }
  }

  useInput({ frame, mat, current, actions, holding });
  frame.start({ body, applyTraits, sized: [mat.place], fit: applyTraits });
}

export default { render };
