/**
 * Taking hold of blocks: drag them, or tap some of one column and then tap where they go, or draw
 * a ring round them. A ring round ten makes them one of the next place; any other ring picks what
 * is in it.
 */
import { onDrag } from "../../shared/drag.js";
import { pointIn } from "../../shared/svg.js";
import { makePicks } from "./pick.js";
import { PLACES, beside, named } from "../exact/places.js";
import { isRing, rings } from "./ring.js";
import { SIZES } from "../exact/rows.js";
import { some } from "../tell.js";

/**
 * @typedef {import("../exact/places.js").Place} Place
 * @typedef {import("../exact/rows.js").Spot} Spot
 * @typedef {{ at: number, place: Place }} Target
 *
 * @typedef {import("./pick.js").Picked} Picked
 *
 * @typedef {object} Hold
 * @property {Target | { at: null, place: Place }} from
 * @property {number} index of the block that was taken, -1 when a ring is drawn
 * @property {Picked | null} lifted what is carried
 * @property {Spot[]} spots of what is carried, when it was lifted
 * @property {Spot[]} line the ring
 * @property {PointerEvent} first
 * @property {PointerEvent} last
 *
 * @typedef {object} Hands
 * @property {import("../drawing/mats.js").Mats} mats
 * @property {ReturnType<typeof import("../drawing/air.js").makeAir>} air
 * @property {HTMLElement} box what blocks come from and go back into
 * @property {Record<Place, HTMLElement>} sources
 * @property {() => { movable: boolean, ring: boolean }} rules
 * @property {(taken: Picked, target: Target | null, spots: Spot[]) => void} put
 * @property {(at: number, place: Place, indices: number[]) => void} trade
 * @property {(sentence: string) => void} hint
 * @property {(at: number) => void} touched a mat
 */

// A pointer that stays nearer than this has tapped; a finger may be so far off a block.
const TAP_PX = 6;
const SLACK = { finger: 10, other: 3 };
const RISE_PX = 24;
// How large a ring is across at least, in units.
const LEAST_RING = 1.5;

/**
 * Let blocks be taken.
 * @param {Hands} hands
 * @param {{ signal: AbortSignal }} life
 * @returns {{
 *   isHeld: () => boolean,
 *   enter: (target: Target) => void,
 *   forget: () => void,
 *   drop: () => boolean,
 * }} whether something is held; the key that takes a block, or puts down what is picked; blocks of
 *   a mat are picked no more, for they may lie elsewhere; let go of everything, and say whether
 *   there was anything
 */
export function holdBlocks(hands, { signal }) {
  const { mats, air, box, sources, rules, hint } = hands;
  /** @type {Hold | null} */
  let held = null;
  const picks = makePicks(mats, box, sources, hint);
  const { pick, say } = picks;
  // The pointer has done what it came for; the click that follows it means nothing more.
  let done = false;

  /**
   * What is picked goes somewhere.
   * @param {Target | null} target
   */
  function putDown(target) {
    const taken = picks.now;
    if (taken) {
      const unit = mats.unit;
      const spots = taken.at === null ? [] : inAir(taken.at, spotsOf(taken));
      // What comes out of the box can be put in again and again.
      pick(taken.at === null && target ? taken : null);
      hint("");
      hands.put(taken, target, taken.at === null ? [middleOf(sources[taken.place], unit)] : spots);
    }
  }

  /**
   * @param {Target} target
   * @param {number} index of the block that was tapped, -1 for none
   */
  function tap(target, index) {
    const { at, place } = target;
    hands.touched(at);
    if (picks.now && (picks.now.at !== at || picks.now.place !== place)) {
      putDown(target);
      return;
    }
    const own = picks.now?.indices ?? [];
    if (index < 0) {
      pick(null);
    } else if (own.includes(index)) {
      pick({ at, place, indices: own.filter((other) => other !== index) });
    } else {
      pick({ at, place, indices: [...own, index] });
    }
    say();
  }

  /** @param {Place} place */
  function tapSource(place) {
    if (picks.now && picks.now.at !== null) {
      putDown(null);
    } else {
      pick(picks.now?.place === place ? null : { at: null, place, indices: [0] });
      say();
    }
  }

  /**
   * @param {Picked} taken
   * @returns {Spot[]}
   */
  function spotsOf({ at, place, indices }) {
    return at === null ? [] : indices.map((index) => mats.views[at].columns[place].spots[index]);
  }

  /**
   * @param {number} at
   * @param {Spot[]} spots on its field
   * @returns {Spot[]} on the layer above everything
   */
  function inAir(at, spots) {
    const { left, top } = air.layer.getBoundingClientRect();
    const field = mats.views[at].drawing.getBoundingClientRect();
    return spots.map(({ x, y }) => ({ x: x + field.left - left, y: y + field.top - top }));
  }

  /**
   * @param {Element} element
   * @param {number} unit
   * @returns {Spot} where a block would be that is taken out of it
   */
  function middleOf(element, unit) {
    const around = air.layer.getBoundingClientRect();
    const { left, top, width, height } = element.getBoundingClientRect();
    return { x: left + width / 2 - around.left - unit, y: top + height / 2 - around.top - unit };
  }

  /**
   * The pointer went far enough: what it took comes along.
   * @param {Hold} hold
   */
  function lift(hold) {
    const { from: { at, place }, index, first } = hold;
    const { now } = picks;
    const among = now?.at === at && now.place === place && now.indices.includes(index);
    const taken = among ? now : { at, place, indices: [index] };
    pick(null);
    hint("");
    hold.lifted = taken;
    if (at === null) {
      const { x, y } = pointIn(air.layer, first);
      const { wide, high } = SIZES[place];
      hold.spots = [{ x: x - (wide / 2) * mats.unit, y: y - (high / 2) * mats.unit }];
    } else {
      hold.spots = inAir(at, spotsOf(taken));
      fade(taken, true);
    }
    air.hold(place, hold.spots, mats.unit);
  }

  /**
   * @param {Picked} taken
   * @param {boolean} away
   */
  function fade({ at, place, indices }, away) {
    if (at !== null) {
      for (const index of indices) {
        mats.views[at].columns[place].blocks[index]?.classList.toggle("is-away", away);
      }
    }
  }

  /** @param {Target | null} target */
  function aim(target) {
    mats.views.forEach(({ columns }, at) => {
      for (const place of PLACES) {
        const aimed = target?.at === at && target.place === place;
        columns[place].handle.classList.toggle("is-target", aimed);
      }
    });
  }

  /**
   * A ring was drawn.
   * @param {number} at
   * @param {Spot[]} line
   */
  function ringed(at, line) {
    if (!isRing(line, LEAST_RING * mats.unit)) {
      hint("Bring the ring back to where it began.");
      return;
    }
    const kinds = mats.columns
      .map((place) => ({
        place,
        indices: mats.middles(at, place).flatMap((point, index) =>
          (rings(line, point) ? [index] : [])),
      }))
      .filter(({ indices }) => indices.length > 0);
    const [{ place, indices } = { place: /** @type {Place} */ ("ones"), indices: [] }] = kinds;
    const larger = beside(place, 1);
    if (kinds.length > 1) {
      hint("Ring one kind of block.");
    } else if (indices.length === 10 && larger && mats.columns.includes(larger)) {
      hands.trade(at, place, indices);
    } else if (indices.length) {
      pick({ at, place, indices });
      const make = larger ? ` Ten make a ${named(larger, 1)}.` : "";
      hint(`You ringed ${some(indices.length, place)}.${make}`);
    }
  }

  /**
   * @param {Hold["from"]} from
   * @param {(event: PointerEvent) => Hold | null} take
   * @returns {import("../../shared/drag.js").Drag}
   */
  function drag(from, take) {
    return {
      start(event) {
        done = false;
        if (held || !rules().movable) {
          return false;
        }
        held = take(event);
        return held !== null;
      },
      move(event) {
        if (!held) {
          return;
        }
        held.last = event;
        const { first, index } = held;
        const right = event.clientX - first.clientX;
        const down = event.clientY - first.clientY;
        if (index < 0 && from.at !== null) {
          const { drawing, ring } = mats.views[from.at];
          const { x, y } = pointIn(drawing, event);
          held.line.push({ x, y });
          ring.setAttribute("d", `M${held.line.map((point) => `${point.x} ${point.y}`).join("L")}`);
          return;
        }
        if (!held.lifted && Math.hypot(right, down) >= TAP_PX) {
          lift(held);
        }
        if (held.lifted) {
          air.carry(right, down - riseOf(first));
          aim(mats.columnAt(event));
        }
      },
      end() {
        const hold = held;
        letGo();
        done = true;
        if (!hold) {
          return;
        }
        const { first, last, lifted, index, line } = hold;
        if (lifted) {
          const right = last.clientX - first.clientX;
          const down = last.clientY - first.clientY - riseOf(first);
          const spots = hold.spots.map(({ x, y }) => ({ x: x + right, y: y + down }));
          hands.put(lifted, mats.columnAt(last), spots);
        } else if (from.at === null) {
          tapSource(from.place);
        } else if (index < 0 && spread(line) >= TAP_PX) {
          ringed(from.at, line);
        } else {
          tap(from, index);
        }
      },
    };
  }

  /** The hand is empty. */
  function letGo() {
    if (held?.lifted) {
      fade(held.lifted, false);
    }
    held = null;
    air.letGo();
    aim(null);
    for (const { ring } of mats.views) {
      ring.removeAttribute("d");
    }
  }

  mats.views.forEach(({ drawing, columns }, at) => {
    for (const place of PLACES) {
      const { handle, heap } = columns[place];
      const from = { at, place };
      onDrag(handle, drag(from, (event) => {
        const finger = event.pointerType === "touch";
        const point = pointIn(drawing, event);
        const index = mats.blockAt(at, place, point, finger ? SLACK.finger : SLACK.other);
        // Beside the blocks a finger scrolls the page.
        if (index < 0 && (!rules().ring || (finger && event.target !== heap))) {
          return null;
        }
        handle.focus({ preventScroll: true, focusVisible: false });
        hands.touched(at);
        const line = [{ x: point.x, y: point.y }];
        return { from, index, lifted: null, spots: [], line, first: event, last: event };
      }), { signal });
      handle.addEventListener("click", () => {
        if (!done) {
          tap(from, -1);
        }
        done = false;
      }, { signal });
      handle.addEventListener("pointercancel", letGo, { signal });
    }
  });
  for (const place of PLACES) {
    const from = { at: null, place };
    onDrag(sources[place], drag(from, (event) => ({
      from, index: 0, lifted: null, spots: [], line: [], first: event, last: event,
    })), { signal });
    sources[place].addEventListener("click", () => {
      if (!done) {
        tapSource(place);
      }
      done = false;
    }, { signal });
    sources[place].addEventListener("pointercancel", letGo, { signal });
  }
  box.addEventListener("click", (event) => {
    if (event.target === box && picks.now && picks.now.at !== null) {
      putDown(null);
    }
  }, { signal });

  return {
    isHeld: () => held !== null,
    enter(target) {
      const { at, place } = target;
      const own = picks.now?.at === at && picks.now.place === place ? picks.now.indices : [];
      const { blocks } = mats.views[at].columns[place];
      const free = blocks.map((_, index) => index).filter((index) => !own.includes(index));
      tap(target, free.pop() ?? -1);
    },
    forget() {
      if (picks.now && picks.now.at !== null) {
        pick(null);
      }
    },
    drop() {
      const any = held !== null || picks.now !== null;
      letGo();
      pick(null);
      hint("");
      return any;
    },
  };
}

/**
 * @param {PointerEvent} event
 * @returns {number} how far what is carried is above a finger, so that it is seen
 */
function riseOf({ pointerType }) {
  return pointerType === "touch" ? RISE_PX : 0;
}

/**
 * @param {Spot[]} line
 * @returns {number} how far it goes from where it began
 */
function spread(line) {
  return Math.max(...line.map(({ x, y }) => Math.hypot(x - line[0].x, y - line[0].y)));
}
