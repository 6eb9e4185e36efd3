/**
 * The state of a manipulative: kept in one trait of its model, changed step by step, with the way
 * back. Keep states that are plain data and are never changed in place.
 */
import { makeHistory } from "./history.js";

// More steps than anyone takes: a tray is undone all the way.
const STEPS = 10000;

/**
 * @template State
 * @typedef {object} Kept
 * @property {() => State} now
 * @property {(next: State) => boolean} act go to another state in one step; whether it was another
 * @property {(next: State) => boolean} slide go to another state while something is held, which is
 *   no step yet; whether it was another
 * @property {(was: State) => boolean} settle what was held is let go: all since that state is one
 *   step; whether there was any
 * @property {() => boolean} undo whether there was a step to take back
 * @property {() => boolean} reset go back to the state that came from outside; can be undone
 * @property {() => boolean[]} uses whether there is something to undo, and to reset
 */

/**
 * Keep a state.
 * @template State
 * @param {WidgetModel} model
 * @param {string} trait
 * @param {HTMLElement} root what tells of each change
 * @param {(begun: boolean) => void} paint show the state, which may have begun anew from outside
 * @param {{ signal: AbortSignal }} life
 * @returns {Kept<State>}
 */
export function makeKept(model, trait, root, paint, { signal }) {
  /** @type {State} */
  let state = model.get(trait);
  let start = state;
  const history = /** @type {ReturnType<typeof makeHistory<State>>} */ (makeHistory(STEPS));

  /**
   * @param {State} one
   * @param {State} other
   */
  function same(one, other) {
    return JSON.stringify(one) === JSON.stringify(other);
  }

  function tell() {
    root.dispatchEvent(new CustomEvent("kit:change", { bubbles: true }));
  }

  /** @param {State} next */
  function change(next) {
    state = next;
    // Seen first: whoever listens to the model may take its time.
    paint(false);
    model.set(trait, next);
    model.save_changes();
    tell();
  }

  /** @param {State} next */
  function slide(next) {
    const other = !same(next, state);
    if (other) {
      change(next);
    }
    return other;
  }

  /** @param {State} was */
  function settle(was) {
    const other = !same(was, state);
    if (other) {
      history.remember(was);
      paint(false);
    }
    return other;
  }

  /** @param {State} next */
  function act(next) {
    if (same(next, state)) {
      return false;
    }
    history.remember(state);
    change(next);
    return true;
  }

  model.on(`change:${trait}`, () => {
    const next = model.get(trait);
    if (!signal.aborted && !same(next, state)) {
      history.forget();
      state = next;
      start = next;
      paint(true);
      tell();
    }
  });

  return {
    now: () => state,
    act,
    slide,
    settle,
    undo() {
      const was = history.back();
      if (was === undefined) {
        return false;
      }
      change(was);
      return true;
    },
    reset: () => act(start),
    uses: () => [history.steps > 0, !same(state, start)],
  };
}
