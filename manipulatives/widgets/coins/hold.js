/**
 * Taking hold of coins: drag one from the purse or over the mat, or tap it and then tap where it
 * goes. While coins are traded, several can be picked; else one at a time.
 */
import { onDrag } from "../shared/drag.js";
import { pointIn } from "../shared/svg.js";
import { inside } from "./state/table.js";

/**
 * @typedef {{ x: number, y: number }} Point
 *
 * @typedef {object} Hands what coins are taken from, and what is done with them
 * @property {SVGSVGElement} drawing
 * @property {HTMLElement} handles what holds everything that can be taken
 * @property {() => { movable: boolean, trade: boolean }} traits
 * @property {() => import("./state/table.js").Table} table
 * @property {(point: Point) => Taken | null} taken what is at a point of the drawing
 * @property {(taken: Taken) => void} focus
 * @property {(taken: Taken | null, event: PointerEvent, grab: Point) => void} float show a coin
 *   under the pointer, or none any more
 * @property {(taken: Taken, at: Point) => void} put a coin comes to a point of the drawing
 * @property {(places: number[]) => void} back coins go back into the purse
 * @property {() => void} changed something was picked or let go
 *
 * @typedef {{ key: string, place: number | null, middle: Point }} Taken a coin, its place in the
 *   tray or null for one of the purse, and where its middle is on the drawing
 *
 * @typedef {{ taken: Taken, grab: Point, first: PointerEvent, last: PointerEvent,
 *   lifted: boolean }} Hold
 */

// A pointer that stays nearer than this has tapped.
const TAP_PX = 6;

/**
 * Let coins be taken.
 * @param {Hands} hands
 * @param {{ signal: AbortSignal }} scope
 * @returns {{
 *   isHeld: () => boolean,
 *   kind: () => string | null,
 *   places: () => number[],
 *   pick: (taken: Taken) => void,
 *   drop: () => boolean,
 * }} whether a coin is held; what is picked from the purse, and from the tray; pick, or let go of,
 *   a coin; let go of everything, and say whether there was anything
 */
export function holdCoins(hands, { signal }) {
  const { drawing, handles, traits, table } = hands;
  /** @type {Hold | null} */
  let held = null;
  /** @type {Taken | null} */
  let fromPurse = null;
  /** @type {number[]} */
  let places = [];

  /**
   * @param {Taken | null} kind
   * @param {number[]} others
   */
  function keep(kind, others) {
    const same = kind?.key === fromPurse?.key && String(others) === String(places);
    fromPurse = kind;
    places = others;
    if (!same) {
      hands.changed();
    }
  }

  /** @param {Taken} taken */
  function pick(taken) {
    const { key, place } = taken;
    if (place === null) {
      keep(fromPurse?.key === key ? null : taken, []);
    } else if (places.includes(place)) {
      keep(null, places.filter((other) => other !== place));
    } else {
      keep(null, traits().trade ? [...places, place] : [place]);
    }
  }

  /**
   * What was picked goes to a point.
   * @param {Point} point
   * @returns {boolean} whether something did
   */
  function putDown(point) {
    const { mat, purse } = table();
    const [kind, others] = [fromPurse, places];
    if (kind && inside(mat, point)) {
      keep(null, []);
      hands.put(kind, point);
    } else if (others.length && inside(purse, point)) {
      keep(null, []);
      hands.back(others);
    } else if (others.length === 1 && inside(mat, point)) {
      keep(null, []);
      hands.put({ key: "", place: others[0], middle: point }, point);
    } else {
      return false;
    }
    return true;
  }

  /**
   * A coin was tapped.
   * @param {Taken} taken
   * @param {Point} point
   */
  function tap(taken, point) {
    const elsewhere = taken.place === null ? places.length > 0 : fromPurse !== null;
    if (!elsewhere || !putDown(point)) {
      pick(taken);
    }
  }

  /**
   * A coin was let go.
   * @param {Hold} hold
   */
  function letGo({ taken, grab, last }) {
    const point = pointIn(drawing, last);
    const { mat, purse } = table();
    keep(null, []);
    if (taken.place !== null && inside(purse, point)) {
      hands.back([taken.place]);
    } else if (taken.place !== null || inside(mat, point)) {
      hands.put(taken, { x: point.x - grab.x, y: point.y - grab.y });
    }
  }

  onDrag(handles, {
    start(event) {
      const point = pointIn(drawing, event);
      const taken = held || !traits().movable ? null : hands.taken(point);
      if (taken) {
        const grab = { x: point.x - taken.middle.x, y: point.y - taken.middle.y };
        held = { taken, grab, first: event, last: event, lifted: false };
        hands.focus(taken);
      }
      return taken !== null;
    },
    move(event) {
      if (!held) {
        return;
      }
      held.last = event;
      const { clientX, clientY } = held.first;
      held.lifted ||= Math.hypot(event.clientX - clientX, event.clientY - clientY) >= TAP_PX;
      if (held.lifted) {
        hands.float(held.taken, event, held.grab);
      }
    },
    end(event) {
      const hold = held;
      held = null;
      hands.float(null, event, { x: 0, y: 0 });
      if (hold?.lifted) {
        letGo(hold);
      } else if (hold) {
        tap(hold.taken, pointIn(drawing, hold.first));
      }
    },
  }, { signal });

  // The system took the pointer, to scroll or for a call: nothing was let go.
  handles.addEventListener("pointercancel", (event) => {
    if (event.pointerId === held?.first.pointerId) {
      hands.float(null, event, held.grab);
      held = null;
    }
  }, { signal });

  drawing.addEventListener("click", (event) => {
    putDown(pointIn(drawing, event));
  }, { signal });

  return {
    isHeld: () => held !== null,
    kind: () => fromPurse?.key ?? null,
    places: () => places,
    pick,
    drop() {
      const any = held !== null || fromPurse !== null || places.length > 0;
      if (held) {
        hands.float(null, held.last, held.grab);
      }
      held = null;
      keep(null, []);
      return any;
    },
  };
}
