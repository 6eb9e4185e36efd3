/**
 * A pen that writes over everything on the board, by finger, stylus or mouse. Each part of a lesson
 * has its own strokes.
 */
import { button } from "../../../widgets/shared/controls.js";
import { makeGrab } from "../../../widgets/shared/grab.js";
import { html, icon, put } from "../../../widgets/shared/svg.js";
import { makeHistory } from "../../../widgets/shared/state/history.js";
import { makeInk } from "./ink.js";
import { withPoint, pointOf, strokesOf, afterWiping, withStroke } from "./strokes.js";

/**
 * @typedef {import("./strokes.js").Stroke} Stroke
 *
 * @typedef {object} Pen
 * @property {HTMLElement} button switches it on and off
 * @property {HTMLElement} tools the buttons shown while it is on
 * @property {HTMLElement} sheet the layer with the strokes, over the whole page
 * @property {(part: string) => void} turnTo show the strokes of this part of the lesson
 * @property {(width: number, height: number) => void} fit set the size of the page
 * @property {(done: number, of: number) => void} clear wipe this share of the strokes
 */

const ICONS = {
  pen: "M4 20L5.2 15.2L16.5 3.9L20.1 7.5L8.8 18.8ZM14 6.4L17.6 10",
  undo: "M9 5L4 10L9 15M4 10H14.5A5 5 0 0 1 14.5 20H10",
  wipe: "M3.5 15.5L13 6L19 12L11.5 19.5H7.5ZM8.5 10.5L14.5 16.5M11.5 19.5H20",
};
// Ignore touches for this time after the pen was seen: the hand that writes rests on the glass.
const PALM_DELAY_MS = 2000;

/**
 * @param {{
 *   storage: import("../../../widgets/shared/state/storage.js").LessonStorage,
 *   go: { back: () => void, next: () => void },
 * }} given where strokes are stored, and how to move through the lesson, whose own buttons the pen
 *   covers
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {Pen}
 */
export function makePen({ storage, go }, lifetime) {
  let on = false;
  let part = "";
  /** @type {Stroke[]} */
  let strokes = [];
  /** The stroke that is being drawn.
   * @type {Stroke}
   */
  let current = [];
  /** The strokes before wiping began; wiping leaves fewer and fewer of them.
   * @type {Stroke[] | null}
   */
  let beforeWiping = null;
  let history = /** @type {ReturnType<typeof makeHistory<Stroke[]>>} */ (makeHistory());
  let penSeenAt = -Infinity;

  const ink = makeInk();
  const undo = tool(ICONS.undo, "Undo", undoStroke);
  const wipe = tool(ICONS.wipe, "Wipe", wipeAll);
  const moves = [button(["Back"], go.back, lifetime), button(["Next"], go.next, lifetime)];
  const tools = html("div", { "class": "session-pen", "role": "group", "aria-label": "Pen" },
    undo, wipe, ...moves);
  const toggleButton = tool(ICONS.pen, "Pen", () => setOn(!on), {
    "class": "kit-button session-tool", "aria-pressed": "false",
  });
  tools.hidden = true;

  /**
   * @param {string} drawing
   * @param {string} name
   * @param {() => void} press
   * @param {Record<string, unknown>} [attributes]
   */
  function tool(drawing, name, press, attributes) {
    return button([icon(drawing), html("span", {}, name)], press, lifetime, attributes);
  }

  /** @param {boolean} wanted */
  function setOn(wanted) {
    on = wanted;
    put(toggleButton, { "aria-pressed": on });
    tools.hidden = !on;
    ink.paper.classList.toggle("is-on", on);
  }

  /** @param {Stroke[]} next */
  function change(next) {
    strokes = next;
    storage.write(`ink/${part}`, strokes);
    paint();
  }

  function undoStroke() {
    beforeWiping = null;
    // After a reload there is no history: remove stroke by stroke.
    change(history.back() ?? strokes.slice(0, -1));
  }

  function wipeAll() {
    if (strokes.length) {
      beforeWiping = null;
      history.push(strokes);
      change([]);
    }
  }

  function paint() {
    ink.paint(current.length ? [...strokes, current] : strokes);
    for (const each of [undo, wipe]) {
      put(each, { "aria-disabled": !strokes.length && (each === wipe || !history.steps) });
    }
  }

  /** @param {PointerEvent} event */
  function draw(event) {
    // Between two frames a hand moves far; the browser has recorded the points between.
    const seen = event.getCoalescedEvents?.() ?? [];
    const { left, top } = ink.paper.getBoundingClientRect();
    for (const { clientX, clientY, pressure, pointerType } of seen.length ? seen : [event]) {
      const spot = { x: clientX - left, y: clientY - top, pressure, kind: pointerType };
      current = withPoint(current, pointOf(spot, ink.size));
    }
    ink.draw(strokes.length, current);
  }

  /** @type {import("../../../widgets/shared/grab.js").Grab<"stroke">} */
  const grab = makeGrab({
    move: ({ last }) => draw(last),
    end() {
      const stroke = current;
      current = [];
      beforeWiping = null;
      history.push(strokes);
      change(withStroke(strokes, stroke));
    },
  }, lifetime);

  /**
   * Whether a pointer may write: no touch while a pen is used, and no second touch or mouse.
   * @param {PointerEvent} event
   * @returns {boolean}
   */
  function mayWrite({ pointerType }) {
    const holds = grab.holds();
    return pointerType === "pen" ? holds.every(({ first }) => first.pointerType === "touch")
      : holds.length === 0 &&
        (pointerType !== "touch" || performance.now() - penSeenAt >= PALM_DELAY_MS);
  }

  grab.on(/** @type {any} */ (ink.paper), (event) => {
    if (!mayWrite(event)) {
      return null;
    }
    if (grab.holds().length) {
      // A hand touched the glass before its pen did: discard its stroke.
      grab.drop();
      current = [];
      paint();
    }
    draw(event);
    return "stroke";
  });

  for (const name of ["pointerdown", "pointermove"]) {
    ink.paper.addEventListener(name, (event) => {
      if (/** @type {PointerEvent} */ (event).pointerType === "pen") {
        penSeenAt = performance.now();
      }
    }, lifetime);
  }
  paint();

  return {
    button: toggleButton,
    tools,
    sheet: ink.sheet,
    turnTo(name) {
      if (name !== part) {
        part = name;
        beforeWiping = null;
        history = makeHistory();
        strokes = strokesOf(storage.read(`ink/${part}`));
        paint();
      }
    },
    fit(width, height) {
      if (ink.fit(width, height)) {
        paint();
      }
    },
    clear(done, of) {
      if (!beforeWiping) {
        beforeWiping = strokes;
        if (strokes.length) {
          history.push(strokes);
        }
      }
      change(afterWiping(beforeWiping, done, of));
    },
  };
}
