/** What stands beside the mat: the total, the tools, what coins can be traded for, the switches. */
import { ICONS, button, makeSwitches, makeTools } from "../shared/controls.js";
import { html, put, svg } from "../shared/svg.js";
import { coinsInWords, inWriting } from "./state/amounts.js";
import { coinOf } from "./state/coinage.js";
import { drawCoin } from "./drawing.js";
import { sum, trades } from "./state/tray.js";

/**
 * @typedef {import("./drawing.js").Look} Look
 * @typedef {import("./mat.js").Left} Left
 * @typedef {{ signal: AbortSignal }} Lifetime
 */

const LINE_UP = "M4 6A3 3 0 1 0 10 6A3 3 0 1 0 4 6M14 6A3 3 0 1 0 20 6A3 3 0 1 0 14 6" +
  "M4 17A3 3 0 1 0 10 17A3 3 0 1 0 4 17M14 17H20";
const SWEEP = "M19 4L13 11M8 10C12 10 14 12 14 16L10 21L3 14Z";

/** @type {[string, string][]} */
const SWITCHES = [
  ["running_total", "Total"],
  ["worths", "Worths"],
  ["names", "Names"],
  ["counts", "Counts"],
  ["trade", "Trade"],
];
const WRITINGS = ["mixed", "small", "decimal"];
const SAMPLE = 141;

/**
 * All that stands beside the mat.
 * @param {{
 *   frame: import("../shared/frame.js").Frame,
 *   current: import("./current.js").Current,
 *   actions: import("./actions.js").Actions,
 *   choose: (trait: string, value: unknown) => void,
 * }} parts of the widget
 */
export function makeControls({ frame: { get, lifetime }, current, actions, choose }) {
  const { money, tray, keys, left, look } = current;
  const total = html("div", { class: "coins-total" });
  const { tools, allow, sweeper } = makeCoinTools(actions, lifetime);
  const { trades: offers, offer } = makeTrades(actions.trade, lifetime);
  const { panel, update } = makePanel(get, choose, lifetime);
  const side = html("div", { class: "coins-side" }, total, tools, offers, panel);
  return {
    side,

    /** Show what the traits say. */
    applyTraits() {
      const movable = get("movable");
      const purse = left().length > 0;
      total.hidden = !get("running_total");
      tools.hidden = !movable || !get("buttons");
      sweeper.hidden = !purse;
      offers.hidden = !movable || !get("trade") || !purse;
      panel.hidden = !get("panel");
      side.hidden = [total, tools, offers, panel].every(({ hidden }) => hidden);
      update(look());
    },

    /**
     * Write the total, and offer what can be done.
     * @param {string[]} picked the coins that are picked
     * @param {boolean[]} uses whether there is something to undo, and to reset
     */
    paint(picked, uses) {
      total.textContent = inWriting(sum(keys()), money(), get("writing"));
      const any = tray().length > 0;
      allow(...uses, any, any);
      if (!offers.hidden) {
        offer(picked, left(), look());
      }
    },
  };
}

/**
 * The tools.
 * @param {{ undo: () => void, reset: () => void, lineUp: () => void, sweep: () => void }} actions
 * @param {Lifetime} lifetime
 * @returns {{ tools: HTMLElement, allow: (...uses: boolean[]) => void, sweeper: HTMLElement }}
 *   the buttons; whether there is something to do for each, in the order undo, reset, line up,
 *   sweep; the last of them alone
 */
function makeCoinTools({ undo, reset, lineUp, sweep }, lifetime) {
  const { buttons, allow } = makeTools([
    [ICONS.undo, "Undo", undo],
    [ICONS.reset, "Reset", reset],
    [LINE_UP, "Line up", lineUp],
    [SWEEP, "Sweep", sweep],
  ], lifetime);
  return { tools: html("div", { class: "coins-tools" }, ...buttons), allow, sweeper: buttons[3] };
}

/**
 * What picked coins can be traded for.
 * @param {(offer: string[]) => void} trade
 * @param {Lifetime} lifetime
 * @returns {{
 *   trades: HTMLElement, offer: (picked: string[], left: Left, look: Look) => void,
 * }} the place for the offers; make those for what is picked, or say that there are none
 */
function makeTrades(trade, lifetime) {
  const said = html("div");
  const row = html("div", { class: "coins-offers" });
  return {
    trades: html("div", { class: "coins-trades" }, said, row),
    offer(picked, left, look) {
      const offers = picked.length ? trades(picked, left) : [];
      const none = picked.length > 1 ? "No coin is worth just that." : "There is nothing smaller.";
      const hint = picked.length ? none : "Tap coins to trade them.";
      said.textContent = offers.length ? "Trade for" : hint;
      row.replaceChildren(...offers.map((offer) => {
        const label = coinsInWords(offer, look.money, look);
        return button(groups(offer, look), () => trade(offer), lifetime, {
          "class": "kit-button coins-offer",
          "aria-label": label,
        });
      }));
    },
  };
}

/**
 * @param {string[]} offer
 * @param {Look} look
 * @returns {(Node | string)[]} each kind once, with how many there are of it
 */
function groups(offer, look) {
  return [...new Set(offer)].flatMap((key) => {
    const coin = coinOf(look.money, key);
    const many = offer.filter((other) => other === key).length;
    const half = 5 * coin.diameter + 8;
    const size = `${(half / 41).toFixed(2)}em`;
    const picture = svg(
      "svg", { viewBox: `${-half} ${-half} ${2 * half} ${2 * half}`, "aria-hidden": true },
      drawCoin(coin, { ...look, names: false, movable: false, ring: "" }),
    );
    picture.style.inlineSize = size;
    picture.style.blockSize = size;
    return many > 1 ? [`${many}\u00d7`, picture] : [picture];
  });
}

/**
 * The switches of free play.
 * @param {(trait: string) => any} get what a trait is now
 * @param {(trait: string, value: unknown) => void} choose
 * @param {Lifetime} lifetime
 * @returns {{ panel: HTMLElement, update: (look: Look) => void }} the switches; update them
 *   with the traits
 */
function makePanel(get, choose, lifetime) {
  const { tiles, update } = makeSwitches(SWITCHES, get, choose, lifetime);
  const next = () => WRITINGS[(WRITINGS.indexOf(get("writing")) + 1) % WRITINGS.length];
  const writing = button([], () => choose("writing", next()), lifetime);
  const note = html("p", { class: "coins-note" }, "Real coins belong beside the screen.");
  return {
    panel: html("div", { class: "coins-panel" }, ...tiles, writing, note),
    update({ money, worths, names }) {
      update();
      note.hidden = worths || names;
      const sample = inWriting(SAMPLE, money, get("writing"));
      put(writing, { "aria-label": `Written ${sample}`, "aria-disabled": !money.major });
      writing.textContent = sample;
    },
  };
}
