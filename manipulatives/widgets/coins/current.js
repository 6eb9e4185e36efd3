/** What the tray, the purse and the traits say just now. */
import { coinInWords, coinsInWords, spoken } from "./state/amounts.js";
import { coinOf, currencyOf } from "./state/coinage.js";
import { fits, leftIn, sum } from "./state/tray.js";

/**
 * @typedef {import("./state/places.js").Lying} Lying
 *
 * @typedef {ReturnType<typeof makeCurrent>} Current
 */

/**
 * @param {import("../shared/frame.js").Frame} frame
 * @param {import("../shared/state/undoable.js").Undoable<Lying[]>} state
 * @param {() => number} scale of the drawing
 */
export function makeCurrent({ get, say }, state, scale) {
  let known = { given: null, money: currencyOf("usd") };

  const current = {
    /** @returns {import("./state/coinage.js").Currency} */
    money() {
      const given = get("currency");
      if (given !== known.given) {
        known = { given, money: currencyOf(given) };
      }
      return known.money;
    },

    /** @returns {Lying[]} what lies there, as far as the currency has such coins */
    tray: () => (fits(state.now(), current.money()) ? state.now() : []),

    /** @returns {string[]} */
    keys: () => current.tray().map(({ coin }) => coin),

    /** @returns {[key: string, left: number | null][]} what the purse still holds */
    left: () => leftIn(get("purse"), current.tray())
      .filter(([key]) => coinOf(current.money(), key)),

    /** @returns {import("./drawing.js").Look} */
    look() {
      const [worths, names, photographs, movable, ring] =
        ["worths", "names", "photographs", "movable", "ring"].map(get);
      return {
        money: current.money(), worths, names, photographs, movable, ring, scale: scale(),
      };
    },

    /**
     * @param {string} key
     * @returns {string} what a coin is called, as far as its face tells
     */
    called: (key) => coinInWords(coinOf(current.money(), key), current.money(), current.look()),

    /**
     * @param {string[]} some
     * @returns {string} which coins these are, as far as their faces tell
     */
    calledAll: (some) => coinsInWords(some, current.money(), current.look()),

    /**
     * Say what was done, and the total where it is shown.
     * @param {string} sentence
     */
    tell(sentence) {
      const { length: many } = current.tray();
      const count = `${many} ${many === 1 ? "coin" : "coins"}`;
      const total = get("running_total") ? spoken(sum(current.keys()), current.money()) : count;
      say(`${sentence} ${total}.`);
    },
  };
  return current;
}
