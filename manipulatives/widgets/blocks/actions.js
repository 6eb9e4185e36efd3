/** What a hand, a button or a key does to the mats. Each is one step, and is told. */
import { changed, full, keyed, putDown, together, traded } from "./state/places.js";
import { counted, whyNoKey, whyNoStep } from "./state/tell.js";

/**
 * @typedef {import("./state/places.js").Mat} Mat
 * @typedef {import("./state/places.js").Place} Place
 * @typedef {import("./state/ways.js").How} How
 *
 * @typedef {object} Parts of the widget
 * @property {import("../shared/frame.js").Frame} frame
 * @property {import("./current.js").Current} current
 * @property {import("../shared/state/undoable.js").Undoable<Mat>} state
 * @property {import("./mats.js").Mats} mats
 * @property {(sentence: string) => void} hint
 * @property {() => string} reading what is written, as it is said
 * @property {() => boolean} isHeld
 * @property {(trait: string, value: unknown) => void} choose
 * @property {() => void} applyTraits
 *
 * @typedef {ReturnType<typeof makeActions>} Actions
 */

/** @param {Parts} parts */
export function makeActions(parts) {
  const { frame, current: { mat: shown, byHand }, state, mats, hint, reading, isHeld } = parts;

  const actions = {
    // The mat that buttons work on.
    active: 0,

    /**
     * How the step that is painted now is made.
     * @type {How}
     */
    how: {},

    /**
     * Blocks are put down.
     * @param {import("./hold/pick.js").Picked} taken
     * @param {import("./hold/hold.js").Target | null} target
     * @param {import("./state/rows.js").Spot[]} from where they were let go
     */
    put({ at, place, indices }, target, from) {
      const taken = { at, place, count: indices.length };
      const { mat, why } = putDown(shown(), taken, target, byHand());
      if (why) {
        hint(why);
      } else if (mat) {
        actions.active = target?.at ?? actions.active;
        const held = target ? { at, place, spots: from, target } : undefined;
        act(mat, { held, gone: at === null ? undefined : { at, place, indices } });
      }
    },

    /**
     * A ring was drawn round ten.
     * @param {number} at
     * @param {Place} place
     * @param {number[]} indices
     */
    trade(at, place, indices) {
      act(traded(shown(), at, place, 1), { gone: { at, place, indices } });
    },

    /**
     * @param {number} at
     * @param {Place} place
     * @param {1 | -1} more
     */
    step(at, place, more) {
      actions.active = at;
      const next = changed(shown(), at, { [place]: more });
      if (next) {
        press(next);
      } else {
        hint(whyNoStep(place, more));
      }
    },

    /**
     * @param {Place} place
     * @param {1 | -1} way
     */
    tradeAll(place, way) {
      press(traded(shown(), actions.active, place, way));
    },

    join() {
      actions.active = 0;
      press(together(shown()));
    },

    /** @param {string} pair "one" for one mat, else what two are for */
    layMats(pair) {
      if (pair !== "one") {
        parts.choose("pair", pair);
      }
      const [first, second = full()] = shown();
      press(pair === "one" ? [first] : [first, second]);
      parts.applyTraits();
    },

    undo() {
      if (!isHeld() && state.undo()) {
        said();
      }
    },

    reset() {
      if (!isHeld() && state.reset()) {
        said();
      }
    },

    /**
     * A key on a column.
     * @param {number} at
     * @param {Place} place
     * @param {string} key
     * @returns {boolean} whether there was a use for it
     */
    key(at, place, key) {
      const { columns } = mats;
      if (key === "ArrowLeft" || key === "ArrowRight") {
        const next = columns[columns.indexOf(place) + (key === "ArrowLeft" ? -1 : 1)];
        mats.views[at].columns[next ?? place].handle.focus();
        return true;
      }
      const trades = frame.get("trades") !== "none";
      const next = keyed(shown(), at, place, key, { trades, columns });
      if (next) {
        press(next);
      } else if (next === null) {
        hint(whyNoKey(shown()[at], place, key, { trades, columns }));
      }
      return next !== undefined;
    },
  };

  /**
   * Go to another mat in one step.
   * @param {Mat | null} next
   * @param {How} by
   */
  function act(next, by) {
    if (next) {
      hint("");
      actions.how = by;
      const moved = state.act(next);
      actions.how = {};
      if (moved) {
        said();
      }
    }
  }

  /**
   * Go to another mat by a button or a key, unless a hand holds blocks.
   * @param {Mat | null} next
   */
  function press(next) {
    if (!isHeld()) {
      act(next, {});
    }
  }

  function said() {
    const { active } = actions;
    const name = shown().length > 1 ? `${mats.views[active].name.textContent}: ` : "";
    frame.say(`${name}${counted(shown()[active])}. ${reading()}`.trim());
  }

  return actions;
}
