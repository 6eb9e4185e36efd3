/** What a finger, a button or a key does to the tray. Each is one step, and is told. */
import { linedUp, nextPlace, nudged, placeNear } from "./state/places.js";
import { traded } from "./state/tray.js";

/**
 * @typedef {import("./state/places.js").Lying} Lying
 * @typedef {{ x: number, y: number }} Point
 *
 * @typedef {object} Parts of the widget
 * @property {import("./current.js").Current} current
 * @property {import("../shared/state/undoable.js").Undoable<Lying[]>} state
 * @property {import("./mat.js").Mat} mat
 * @property {() => void} unpick pick nothing any more
 * @property {() => void} drop let go of everything
 * @property {() => number[]} picked places of the coins that are picked
 * @property {(sentence: string) => void} say
 *
 * @typedef {ReturnType<typeof makeActions>} Actions
 */

const FULL = "The tray is full.";

/** @param {Parts} parts */
export function makeActions({ current, state, mat, unpick, drop, picked, say }) {
  const { money, tray, keys, left, called, calledAll, tell } = current;

  /**
   * Go to another tray in one step.
   * @param {Lying[]} next
   * @param {Point | null} [origin] where coins come from that were not there
   * @returns {boolean} whether it was another
   */
  function act(next, origin = null) {
    unpick();
    mat.begin(origin);
    return state.act(next);
  }

  /**
   * @param {number} place
   * @returns {Lying[]} what else lies there
   */
  function others(place) {
    return tray().filter((_, other) => other !== place);
  }

  const actions = {
    /**
     * A coin comes to a point of the drawing, or as near as all stay readable.
     * @param {import("./hold.js").Taken} coin
     * @param {Point} point
     */
    put({ key, lying }, point) {
      const { origin } = mat.table();
      const at = { x: point.x - origin.x, y: point.y - origin.y };
      const rest = tray().filter((other) => other !== lying);
      const next = placeNear(key, at.x, at.y, rest, money());
      if (!next) {
        say(FULL);
      } else if (act([...rest, next], at)) {
        mat.focusCoin(rest.length);
        tell(`${called(key)} ${lying ? "moved" : "on the tray"}.`);
      }
    },

    /**
     * A coin of the purse goes onto the mat by itself.
     * @param {number} index of its kind
     */
    add(index) {
      const [key, many] = left()[index];
      const next = many === 0 ? null : nextPlace(key, tray(), money());
      if (!next) {
        say(many === 0 ? "There are no more of these." : FULL);
        return;
      }
      const { middle } = mat.fromPurse(index, left());
      const { origin } = mat.table();
      act([...tray(), next], { x: middle.x - origin.x, y: middle.y - origin.y });
      tell(`${called(key)} on the tray.`);
    },

    /** @param {number[]} places of coins that go back into the purse */
    back(places) {
      const away = places.map((place) => keys()[place]);
      act(tray().filter((_, place) => !places.includes(place)));
      tell(`${away.length === 1 ? called(away[0]) : calledAll(away)} back in the purse.`);
    },

    /** @param {number} place of a coin that goes back into the purse, if there is one */
    remove(place) {
      if (left().length) {
        actions.back([place]);
        if (tray().length) {
          mat.focusCoin(Math.min(place, tray().length - 1));
        } else {
          mat.focusKind(0);
        }
      }
    },

    /**
     * Move a coin a step.
     * @param {number} place
     * @param {[number, number]} way
     */
    nudge(place, [right, down]) {
      const rest = others(place);
      const next = nudged(tray()[place], right, down, rest, money());
      if (next && act([...rest, next])) {
        mat.focusCoin(rest.length);
        tell(`${called(next.coin)} moved.`);
      }
    },

    undo() {
      drop();
      if (state.undo()) {
        tell("Undone.");
      }
    },

    reset() {
      drop();
      if (state.reset()) {
        tell("As it was at first.");
      }
    },

    sweep() {
      if (act([])) {
        tell("Swept.");
      }
    },

    lineUp() {
      const next = linedUp(keys(), money());
      if (!next) {
        say("There is no room to line up.");
      } else if (act(next)) {
        tell(`Lined up: ${calledAll(keys())}.`);
      }
    },

    /** @param {string[]} into what the picked coins become */
    trade(into) {
      const places = picked();
      const away = places.map((place) => tray()[place]);
      const next = traded(tray(), places, into, money());
      if (!next) {
        say(FULL);
        return;
      }
      act(next, { x: away[0].x, y: away[0].y });
      mat.focusCoin(next.length - 1);
      tell(`Traded ${calledAll(away.map(({ coin }) => coin))} for ${calledAll(into)}.`);
    },
  };
  return actions;
}
