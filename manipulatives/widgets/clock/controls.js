/** What stands beside the face: readings, step buttons, undo and reset, switches of free play. */
import { ICONS, button, makeSwitches, makeTools } from "../shared/controls.js";
import { html, icon, put, svg } from "../shared/svg.js";
import { readingInDigits, readingInWords } from "./describe.js";
import { HANDS, HAND_NAMES } from "./drawing.js";
import { handOutline } from "./face.js";

/**
 * @typedef {import("./dial.js").Hand} Hand
 * @typedef {import("../shared/controls.js").Lifetime} Lifetime
 */

const MINUS = "M5 12H19";
const PLUS = "M5 12H19M12 5V19";

// What can be switched, by its trait, in the one word that fits a small tile.
/** @type {[string, string][]} */
const SWITCHES = [
  ["mode", "Gears"],
  ["numerals", "Hours"],
  ["minute_numbers", "Minutes"],
  ["ticks", "Marks"],
  ["digital", "Digits"],
  ["words", "Words"],
  ["sector", "Sector"],
  ["arc", "Fives"],
];
const SNAPS = [1, 5, 15, 30, 60];

/**
 * All that stands beside the face.
 * @param {{
 *   frame: import("../shared/frame.js").Frame,
 *   actions: import("./actions.js").Actions,
 *   choose: (trait: string, value: unknown) => void,
 * }} parts of the widget
 */
export function makeControls({ frame: { get, lifetime }, actions, choose }) {
  const digits = html("div", { class: "clock-digits" });
  const words = html("div", { class: "clock-words" });
  const { moves, allow } = makeMoves(actions, lifetime);
  const { panel, update } = makePanel(get, choose, lifetime);
  return {
    side: html("div", { class: "clock-side" }, digits, words, moves, panel),

    /**
     * Show what the traits say.
     * @param {import("./clock.js").Traits} now
     */
    applyTraits(now) {
      digits.hidden = !now.digital;
      // Free hands may not fit each other. The line that says so stays, so that nothing jumps.
      words.hidden = !now.words && !(now.digital && now.mode === "free");
      moves.hidden = !now.movable || !now.buttons;
      panel.hidden = !now.panel;
      update();
    },

    /**
     * Write what the dial shows.
     * @param {import("./dial.js").Dial} dial
     * @param {import("./clock.js").Traits} now
     * @param {boolean[]} uses whether there is something to undo, and to reset
     */
    paint(dial, now, uses) {
      const [time, half] = readingInDigits(dial, now).split(" ");
      digits.replaceChildren(time, html("small", {}, half ? ` ${half}` : ""));
      words.textContent = readingInWords(dial, now);
      allow(...uses);
    },
  };
}

/**
 * The buttons that move the hands, and the way back.
 * @param {{ step: (hand: Hand, way: number) => void, undo: () => void, reset: () => void }} actions
 * @param {Lifetime} lifetime
 * @returns {{ moves: HTMLElement, allow: (...uses: boolean[]) => void }} the buttons,
 *   and whether there is something to undo and to reset
 */
function makeMoves({ step, undo, reset }, lifetime) {
  const { buttons, allow } = makeTools(
    [[ICONS.undo, "Undo", undo], [ICONS.reset, "Reset", reset]], lifetime,
  );
  const steppers = HANDS.map((hand) => {
    const name = HAND_NAMES[hand];
    const outline = svg("path", { class: `clock-${hand}`, d: handOutline(hand) });
    return html(
      "div", { class: "clock-stepper", role: "group", "aria-label": name },
      button([icon(MINUS)], () => step(hand, -1), lifetime, { "aria-label": `${name} back` }),
      svg("svg", { viewBox: "-12 -92 24 94", "aria-hidden": true }, outline),
      button([icon(PLUS)], () => step(hand, 1), lifetime, { "aria-label": `${name} on` }),
    );
  });
  const rows = [steppers, buttons].map((row) => html("div", { class: "clock-row" }, ...row));
  return { moves: html("div", { class: "clock-moves" }, ...rows), allow };
}

/**
 * The switches of free play: what is shown, whether the hands are geared, and the snap.
 * @param {(trait: string) => unknown} get what a trait is now
 * @param {(trait: string, value: unknown) => void} choose
 * @param {Lifetime} lifetime
 * @returns {{ panel: HTMLElement, update: () => void }} the switches; update them from the
 *   traits
 */
function makePanel(get, choose, lifetime) {
  const { tiles, update } = makeSwitches(
    SWITCHES,
    (trait) => (trait === "mode" ? get(trait) === "geared" : get(trait)),
    (trait, on) => choose(trait, trait === "mode" ? (on ? "geared" : "free") : on),
    lifetime,
  );
  const snaps = SNAPS.map((snap) =>
    button([`${snap}`], () => choose("snap", snap), lifetime, {
      "aria-label": `Steps of ${snap}`,
    }));
  return {
    panel: html(
      "div", { class: "clock-panel" },
      html("div", { class: "clock-tiles" }, ...tiles),
      html("div", { class: "clock-snaps" }, "Steps", html("div", {}, ...snaps)),
    ),
    update() {
      update();
      SNAPS.forEach((snap, index) => put(snaps[index], { "aria-pressed": get("snap") === snap }));
    },
  };
}
