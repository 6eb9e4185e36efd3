/**
 * The clock: two hands to take hold of, with readings, step buttons and switches beside the face.
 * What the hands do is decided in dial.js; here it is shown, kept and told.
 */
import { announce } from "../shared/announce.js";
import { onKeys } from "../shared/keys.js";
import { html, put } from "../shared/svg.js";
import { makeHistory } from "../shared/state/history.js";
import { makeMoves, makePanel } from "./controls.js";
import { handsInWords, hourPlace, minutePlace } from "./describe.js";
import { readingInDigits, readingInWords } from "./describe.js";
import { HOUR, dialAt, facts, keyed, minutesBetween, pressed, same, timeMeant } from "./dial.js";
import { HANDS, drawFace } from "./drawing.js";
import { holdHands } from "./hold.js";

/**
 * @typedef {import("./dial.js").Dial} Dial
 * @typedef {import("./dial.js").Rules} Rules
 *
 * @typedef {object} Looks the traits beside the dial, each described in clock.py
 * @property {boolean} movable
 * @property {boolean} numerals
 * @property {boolean} ticks
 * @property {boolean} minute_numbers
 * @property {boolean} digital
 * @property {boolean} words
 * @property {boolean} sector
 * @property {boolean} arc
 * @property {boolean} half_day
 * @property {"us" | "uk"} vocabulary
 * @property {boolean} buttons
 * @property {boolean} panel
 *
 * @typedef {Rules & Looks} Traits
 */

const TRAITS = [
  "mode", "hour_drag", "snap", "movable", "numerals", "ticks", "minute_numbers", "digital",
  "words", "sector", "arc", "half_day", "vocabulary", "buttons", "panel",
];

/**
 * @param {RenderProps} props
 * @returns {void}
 */
function render({ model, el, signal = new AbortController().signal }) {
  const life = { signal };
  /** @type {Dial} */
  let dial = model.get("dial");
  // Where reset leads: the dial that came from outside, not from a hand.
  let start = dial;
  const history = makeHistory();

  const face = drawFace();
  const digits = html("div", { class: "clock-digits" });
  const words = html("div", { class: "clock-words" });
  const { moves, allow } = makeMoves(
    (hand, way) => act(pressed(dial, hand, way, traits())), undo, () => act(start), life,
  );
  const { panel, agree } = makePanel((trait) => model.get(trait), choose, life);
  const side = html("div", { class: "clock-side" }, digits, words, moves, panel);
  const body = html("div", { class: "clock-body" }, face.frame, side);
  const root = html("div", {
    class: "kit kit-clock kit-manipulative",
    role: "group",
    "aria-label": "Clock",
    "data-lm-suppress-shortcuts": "true",
  }, html("div", { class: "clock-room" }, body));
  root.facts = () => facts(dial);
  const say = (/** @type {string} */ sentence) => announce(root, sentence);
  const clock = { dial: () => dial, traits, change, act, settle, say };
  const holding = holdHands(face, root, clock, life);

  /** @returns {Traits} what the clock looks like and obeys */
  function traits() {
    return /** @type {any} */ (Object.fromEntries(TRAITS.map((name) => [name, model.get(name)])));
  }

  /**
   * Show the dial.
   * @param {number} [minutes] that a geared clock went on for it
   */
  function paint(minutes) {
    const now = traits();
    const { hour, minute } = dial;
    face.stand(dial, minutes);
    put(face.handles.hour, { "aria-valuenow": hour, "aria-valuetext": hourPlace(hour) });
    put(face.handles.minute, { "aria-valuenow": minute, "aria-valuetext": minutePlace(minute) });
    put(face.drawing, { "aria-label": handsInWords(dial) });
    const [time, half] = readingInDigits(dial, now).split(" ");
    digits.replaceChildren(time, html("small", {}, half ? ` ${half}` : ""));
    words.textContent = readingInWords(dial, now);
  }

  /** Show what is to be shown, and nothing else. */
  function dress() {
    const now = traits();
    face.show(now);
    agree();
    put(root, { "data-mode": now.mode });
    digits.hidden = !now.digital;
    // Free hands may not fit each other. The line that says so is kept, so that nothing jumps.
    words.hidden = !now.words && !(now.digital && now.mode === "free");
    moves.hidden = !now.movable || !now.buttons;
    panel.hidden = !now.panel;
    if (!now.movable) {
      holding.drop();
    }
    paint();
  }

  /**
   * Begin anew with a dial from outside.
   * @param {Dial} next
   */
  function begin(next) {
    holding.drop();
    history.forget();
    allow(false, false);
    dial = next;
    start = next;
    paint();
    root.dispatchEvent(new CustomEvent("kit:change", { bubbles: true }));
  }

  /**
   * Go to another dial.
   * @param {Dial} next
   * @param {number} [minutes] that a geared clock goes on for it
   * @returns {boolean} whether it was another
   */
  function change(next, minutes) {
    if (same(next, dial)) {
      return false;
    }
    dial = next;
    // Seen first: whoever listens to the model may take its time.
    paint(minutes);
    model.set("dial", next);
    model.save_changes();
    root.dispatchEvent(new CustomEvent("kit:change", { bubbles: true }));
    return true;
  }

  /**
   * Go to another dial in one step.
   * @param {Dial} next
   * @param {boolean} [more] it goes on with the step before
   */
  function act(next, more) {
    const { mode, hour_drag: hourDrag } = traits();
    const minutes = minutesBetween(dial, next);
    const turns = mode === "geared" && hourDrag === "turns" && Math.abs(minutes) <= HOUR;
    const was = dial;
    if (!holding.isHeld() && change(next, turns ? minutes : 0)) {
      settle(more ? dial : was);
    }
  }

  /**
   * A step is over: it is said, and can be undone from now on.
   * @param {Dial} was the dial before
   */
  function settle(was) {
    if (!same(was, dial)) {
      history.remember(was);
    }
    allow(history.steps > 0, !same(dial, start));
    const now = traits();
    say(now.digital || now.words ? readingInWords(dial, now) : handsInWords(dial));
  }

  function undo() {
    if (history.steps && !holding.isHeld()) {
      change(history.back());
      settle(dial);
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
    if (value === "geared") {
      act(dialAt(timeMeant(dial)));
    }
  }

  for (const hand of HANDS) {
    onKeys(face.handles[hand], (key, event) => {
      if (key === "Escape") {
        const was = holding.drop();
        return was !== null && (change(was) || true);
      }
      const next = keyed(dial, hand, key, traits());
      if (next) {
        act(next, event.repeat);
      }
      return Boolean(next);
    }, life);
  }

  model.on("change:dial", () => {
    const next = model.get("dial");
    if (!signal.aborted && !same(next, dial)) {
      begin(next);
    }
  });
  for (const name of TRAITS) {
    model.on(`change:${name}`, () => signal.aborted || dress());
  }
  new ResizeObserver(face.fit).observe(face.frame);

  dress();
  begin(dial);
  el.replaceChildren(root);
}

export default { render };
