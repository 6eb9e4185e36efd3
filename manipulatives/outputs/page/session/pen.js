/**
 * A pen that writes over everything on the board, by finger, pen or mouse. Each part of a lesson
 * has a sheet of its own.
 */
import { button } from "../../../widgets/shared/controls.js";
import { onDrag } from "../../../widgets/shared/drag.js";
import { html, icon, put, svg } from "../../../widgets/shared/svg.js";
import { makeHistory } from "../../../widgets/shared/state/history.js";
import { grown, lines, pointOf, strokesOf, wiped, written } from "./strokes.js";

/**
 * @typedef {import("./strokes.js").Stroke} Stroke
 *
 * @typedef {object} Pen
 * @property {HTMLElement} button turns it on and off
 * @property {HTMLElement} tools what it can do while it is on
 * @property {HTMLElement} sheet what is written on; it lies over the whole page
 * @property {(part: string) => void} turnTo show what was written on this part of the lesson
 * @property {(width: number, height: number) => void} fit the page has another size
 * @property {(done: number, of: number) => void} clear wipe so much of what was written
 */

const ICONS = {
  pen: "M4 20L5.2 15.2L16.5 3.9L20.1 7.5L8.8 18.8ZM14 6.4L17.6 10",
  undo: "M9 5L4 10L9 15M4 10H14.5A5 5 0 0 1 14.5 20H10",
  wipe: "M3.5 15.5L13 6L19 12L11.5 19.5H7.5ZM8.5 10.5L14.5 16.5M11.5 19.5H20",
  on: "M5 12H19M13 6L19 12L13 18",
};
// Who writes with a pen rests a hand on the glass. Milliseconds.
const PALM = 2000;
// Pixels.
const RIM = 3;

/**
 * @param {{
 *   memory: import("../../../widgets/shared/state/storage.js").LessonStorage,
 *   go: { back: () => void, next: () => void },
 * }} given where it is kept, and how the lesson moves, which can be had while the pen lies over
 *   everything
 * @param {{ signal: AbortSignal }} life
 * @returns {Pen}
 */
export function makePen({ memory, go }, life) {
  let on = false;
  let part = "";
  let size = { width: 1, height: 1 };
  /** @type {Stroke[]} */
  let strokes = [];
  /** @type {Stroke} */
  let drawn = [];
  /** What was there before the wiping began, of which less and less is left.
   * @type {Stroke[] | null}
   */
  let whole = null;
  let history = /** @type {ReturnType<typeof makeHistory<Stroke[]>>} */ (makeHistory());
  let penAt = -Infinity;

  // A rim of paper keeps what is written apart from whatever it crosses.
  const rims = svg("g", { class: "ink-rims" });
  const ink = svg("g", { class: "ink-lines" });
  const paper = svg("svg", { "class": "session-ink", "aria-hidden": "true" }, rims, ink);
  const sheet = html("div", { class: "kit kit-session session-sheet" }, paper);
  const undo = tool(ICONS.undo, "Undo", takeBack);
  const wipe = tool(ICONS.wipe, "Wipe", wipeAll);
  const turns = [button(["Back"], go.back, life), button(["Next"], go.next, life)];
  const tools = html("div", { "class": "session-pen", "role": "group", "aria-label": "Pen" },
    undo, wipe, ...turns);
  const toggle = tool(ICONS.pen, "Pen", () => turn(!on), {
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
    return button([icon(drawing), html("span", {}, name)], press, life, attributes);
  }

  /** @param {boolean} wanted */
  function turn(wanted) {
    on = wanted;
    put(toggle, { "aria-pressed": on });
    tools.hidden = !on;
    paper.classList.toggle("is-on", on);
  }

  /** @param {Stroke[]} next */
  function change(next) {
    strokes = next;
    memory.write(`ink/${part}`, strokes);
    paint();
  }

  function takeBack() {
    whole = null;
    // What was written before the page was loaded anew goes stroke by stroke.
    change(history.back() ?? strokes.slice(0, -1));
  }

  function wipeAll() {
    if (strokes.length) {
      whole = null;
      history.remember(strokes);
      change([]);
    }
  }

  function paint() {
    const all = drawn.length ? [...strokes, drawn] : strokes;
    for (const layer of [rims, ink]) {
      layer.replaceChildren(...all.map(() => svg("g")));
    }
    all.forEach((stroke, index) => lay(index, stroke));
    for (const each of [undo, wipe]) {
      put(each, { "aria-disabled": !strokes.length && (each === wipe || !history.steps) });
    }
  }

  /**
   * Draw one stroke. Of one that is being drawn only the end is new.
   * @param {number} index
   * @param {Stroke} stroke
   */
  function lay(index, stroke) {
    for (const [number, { d, width }] of lines(stroke, size).entries()) {
      for (const layer of [rims, ink]) {
        const place = layer.children[index];
        const path = place.children[number] ?? place.appendChild(svg("path"));
        if (path.getAttribute("d") !== d) {
          put(path, { d, "stroke-width": layer === rims ? width + RIM : width });
        }
      }
    }
  }

  /** @param {PointerEvent} event */
  function draw(event) {
    // Between two frames a hand goes a long way; the browser has kept it.
    const seen = event.getCoalescedEvents?.() ?? [];
    const { left, top } = paper.getBoundingClientRect();
    for (const { clientX, clientY, pressure, pointerType } of seen.length ? seen : [event]) {
      const spot = { x: clientX - left, y: clientY - top, pressure, kind: pointerType };
      drawn = grown(drawn, pointOf(spot, size));
    }
    lay(strokes.length, drawn);
  }

  paper.addEventListener("pointermove", ({ pointerType }) => {
    penAt = pointerType === "pen" ? performance.now() : penAt;
  }, life);

  onDrag(/** @type {any} */ (paper), {
    start(event) {
      if (event.pointerType === "touch" && performance.now() - penAt < PALM) {
        return false;
      }
      for (const layer of [rims, ink]) {
        layer.append(svg("g"));
      }
      draw(event);
      return true;
    },
    move: draw,
    end() {
      const stroke = drawn;
      drawn = [];
      whole = null;
      history.remember(strokes);
      change(written(strokes, stroke));
    },
  }, life);
  paint();

  return {
    button: toggle,
    tools,
    sheet,
    turnTo(name) {
      if (name !== part) {
        part = name;
        whole = null;
        history = makeHistory();
        strokes = strokesOf(memory.read(`ink/${part}`));
        paint();
      }
    },
    fit(width, height) {
      if (width !== size.width || height !== size.height) {
        size = { width, height };
        put(paper, { width, height });
        paint();
      }
    },
    clear(done, of) {
      if (!whole) {
        whole = strokes;
        if (strokes.length) {
          history.remember(strokes);
        }
      }
      change(wiped(whole, done, of));
    },
  };
}
