/**
 * Taking hold of coins: drag one from the purse or over the mat, or tap it and then tap where it
 * goes. Each finger holds one. While coins are traded, several can be picked; else one at a time.
 */
import { makeGrab } from "../shared/grab.js";
import { pointIn } from "../shared/svg.js";
import { inside } from "./state/table.js";

/**
 * @typedef {{ x: number, y: number }} Point
 * @typedef {import("./state/places.js").Lying} Lying
 *
 * @typedef {object} Hands what coins are taken from, and what is done with them
 * @property {import("./mat.js").Mat} mat
 * @property {() => { movable: boolean, trade: boolean }} traits
 * @property {() => Lying[]} tray
 * @property {(point: Point) => Taken | null} taken what is at a point of the drawing
 * @property {(taken: Taken) => void} focus
 * @property {(hold: Hold) => void} float show a coin under its pointer
 * @property {(taken: Taken, at: Point) => void} put a coin comes to a point of the drawing
 * @property {(places: number[]) => void} back coins go back into the purse
 * @property {() => void} changed something was picked or let go
 *
 * @typedef {{ key: string, lying: Lying | null, middle: Point }} Taken a coin, the same as it lies
 *   in the tray or null for one of the purse, and where its middle is on the drawing
 * @typedef {Taken & { grab: Point }} Held with where it is held, from its middle
 * @typedef {import("../shared/grab.js").Hold<Held>} Hold
 */

/**
 * Let coins be taken.
 * @param {Hands} hands
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   isHeld: () => boolean,
 *   kind: () => string | null,
 *   places: () => number[],
 *   pick: (taken: Taken) => void,
 *   unpick: () => void,
 *   drop: () => boolean,
 * }} whether a coin is held; what is picked from the purse, and from the tray; pick, or let go of,
 *   a coin; pick nothing any more; let go of everything, and say whether there was anything
 */
export function holdCoins(hands, lifetime) {
  const { mat, traits, tray } = hands;
  const { drawing } = mat;
  /** @type {Taken | null} */
  let fromPurse = null;
  /** @type {number[]} */
  let places = [];

  /**
   * @param {Taken | null} kind
   * @param {number[]} others
   */
  function choose(kind, others) {
    const same = kind?.key === fromPurse?.key && String(others) === String(places);
    fromPurse = kind;
    places = others;
    if (!same) {
      hands.changed();
    }
  }

  function unpick() {
    choose(null, []);
  }

  /** @param {Taken} taken */
  function pick(taken) {
    const place = taken.lying ? tray().indexOf(taken.lying) : null;
    if (place === null) {
      choose(fromPurse?.key === taken.key ? null : taken, []);
    } else if (places.includes(place)) {
      choose(null, places.filter((other) => other !== place));
    } else {
      choose(null, traits().trade ? [...places, place] : [place]);
    }
  }

  /**
   * What was picked goes to a point.
   * @param {Point} point
   * @returns {boolean} whether something did
   */
  function putDown(point) {
    const table = mat.table();
    const [kind, others] = [fromPurse, places];
    if (kind && inside(table.mat, point)) {
      unpick();
      hands.put(kind, point);
    } else if (others.length && inside(table.purse, point)) {
      unpick();
      hands.back(others);
    } else if (others.length === 1 && inside(table.mat, point)) {
      const lying = tray()[others[0]];
      unpick();
      hands.put({ key: lying.coin, lying, middle: point }, point);
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
    const elsewhere = taken.lying ? fromPurse !== null : places.length > 0;
    if (!elsewhere || !putDown(point)) {
      pick(taken);
    }
  }

  /**
   * A coin was let go.
   * @param {Held} taken
   * @param {Point} point
   */
  function letGo(taken, point) {
    const { grab, lying } = taken;
    const table = mat.table();
    unpick();
    if (lying && inside(table.purse, point)) {
      hands.back([tray().indexOf(lying)]);
    } else if (lying || inside(table.mat, point)) {
      hands.put(taken, { x: point.x - grab.x, y: point.y - grab.y });
    }
  }

  /** @type {import("../shared/grab.js").Grab<Held>} */
  const holding = makeGrab({
    move(hold) {
      if (hold.carried) {
        hands.float(hold);
      }
    },
    end({ thing, first, last, carried }) {
      mat.land(thing);
      // What somebody else did meanwhile may have taken it from the tray.
      if (thing.lying && !tray().includes(thing.lying)) {
        return;
      }
      if (carried) {
        letGo(thing, pointIn(drawing, last));
      } else {
        tap(thing, pointIn(drawing, first));
      }
    },
    // Nothing was let go.
    cancel: ({ thing }) => mat.land(thing),
  }, lifetime);

  holding.on(mat.handles, (event) => {
    const point = pointIn(drawing, event);
    const taken = traits().movable ? hands.taken(point) : null;
    const held = holding.holds().map(({ thing }) => thing.lying);
    if (!taken || (taken.lying && held.includes(taken.lying))) {
      return null;
    }
    hands.focus(taken);
    return { ...taken, grab: { x: point.x - taken.middle.x, y: point.y - taken.middle.y } };
  });

  drawing.addEventListener("click", (event) => {
    putDown(pointIn(drawing, event));
  }, lifetime);

  function isHeld() {
    return holding.holds().length > 0;
  }

  return {
    isHeld,
    kind: () => fromPurse?.key ?? null,
    places: () => places,
    pick,
    unpick,
    drop() {
      const any = isHeld() || fromPurse !== null || places.length > 0;
      for (const { thing } of holding.holds()) {
        mat.land(thing);
      }
      holding.drop();
      unpick();
      return any;
    },
  };
}
