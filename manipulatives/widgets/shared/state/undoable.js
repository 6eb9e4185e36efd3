/**
 * The state of a manipulative: it is in one trait of its model, changes step by step, and every
 * step can be undone. States are plain data and are never changed in place.
 */

// More steps than anyone takes: a tray is undone all the way.
const MOST = 10000;

/**
 * @template State
 * @typedef {object} Undoable
 * @property {() => State} now
 * @property {() => State} first the state that came from outside, to which reset goes back
 * @property {(next: State) => boolean} act go to another state in one step; whether it was another
 * @property {(next: State) => boolean} slide go to another state while something is held, which is
 *   no step yet; whether it was another
 * @property {(was: State) => boolean} settle what was held is let go: all since that state is one
 *   step; whether there was any
 * @property {() => boolean} undo whether there was a step to take back
 * @property {() => boolean} reset whether it was another; can be undone
 * @property {() => boolean[]} uses whether there is something to undo, and to reset
 */

/**
 * Make a state undoable.
 * @template State
 * @param {WidgetModel} model
 * @param {string} trait
 * @param {HTMLElement} root what tells of each change
 * @param {(fromOutside: boolean) => void} paint show the state, which may come from outside
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {Undoable<State>}
 */
export function makeUndoable(model, trait, root, paint, { signal }) {
  /** @type {State} */
  let state = model.get(trait);
  let start = state;
  /** @type {State[]} */
  const history = [];

  /**
   * @param {State} one
   * @param {State} other
   */
  function same(one, other) {
    return JSON.stringify(one) === JSON.stringify(other);
  }

  function notify() {
    root.dispatchEvent(new CustomEvent("kit:change", { bubbles: true }));
  }

  /** @param {State} was */
  function push(was) {
    if (history.push(was) > MOST) {
      history.shift();
    }
  }

  /** @param {State} next */
  function change(next) {
    state = next;
    // Seen first: whoever listens to the model may take its time.
    paint(false);
    model.set(trait, next);
    model.save_changes();
    notify();
  }

  /**
   * @param {State} next
   * @param {boolean} step
   */
  function go(next, step) {
    const other = !same(next, state);
    if (other) {
      if (step) {
        push(state);
      }
      change(next);
    }
    return other;
  }

  /** @param {State} was */
  function settle(was) {
    const other = !same(was, state);
    if (other) {
      push(was);
      paint(false);
    }
    return other;
  }

  function hear() {
    const next = model.get(trait);
    if (!same(next, state)) {
      history.length = 0;
      state = next;
      start = next;
      paint(true);
      notify();
    }
  }

  model.on(`change:${trait}`, hear);
  signal.addEventListener("abort", () => model.off(`change:${trait}`, hear));

  return {
    now: () => state,
    first: () => start,
    act: (next) => go(next, true),
    slide: (next) => go(next, false),
    settle,
    undo() {
      const was = history.pop();
      return was !== undefined && go(was, false);
    },
    reset: () => go(start, true),
    uses: () => [history.length > 0, !same(state, start)],
  };
}
