/**
 * Taking hold of blocks: drag them, or tap some of one column and then tap where they go, or draw
 * a ring round them. A ring round ten makes them one of the next place; any other ring picks what
 * is in it. Each finger holds or rings something of its own.
 */
import { makeGrab } from "../../shared/grab.js";
import { pointIn } from "../../shared/svg.js";
import { makeCarrying } from "./carrying.js";
import { makePicks } from "./pick.js";
import { drawRing, makeRinging, spread } from "./ringing.js";
import { PLACES } from "../state/places.js";

/**
 * @typedef {import("../state/places.js").Place} Place
 * @typedef {import("../state/rows.js").Spot} Spot
 * @typedef {{ at: number, place: Place }} Target
 *
 * @typedef {import("./pick.js").Picked} Picked
 *
 * @typedef {object} Taken
 * @property {Target | { at: null, place: Place }} from
 * @property {number} index of the block that was taken, -1 when a ring is drawn
 * @property {Spot[]} line the ring
 * @property {import("./carrying.js").Carried | null} carried
 *
 * @typedef {import("../../shared/grab.js").Hold<Taken>} Hold
 *
 * @typedef {object} Hands
 * @property {import("../mats.js").Mats} mats
 * @property {ReturnType<typeof import("../overlay.js").makeOverlay>} overlay
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

/**
 * Let blocks be taken.
 * @param {Hands} hands
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   isHeld: () => boolean,
 *   enter: (target: Target) => void,
 *   forget: () => void,
 *   drop: () => boolean,
 * }} whether something is held; the key that takes a block, or puts down what is picked; blocks of
 *   a mat are picked no more, for they may lie elsewhere; let go of everything, and say whether
 *   there was anything
 */
export function holdBlocks(hands, lifetime) {
  const { mats, overlay, box, sources, rules, hint } = hands;
  const picks = makePicks(mats, box, sources, hint);
  const { pick, say } = picks;
  const carrying = makeCarrying(mats, overlay);
  const ringed = makeRinging(mats, { pick, hint, trade: hands.trade });
  // The pointer's action is done: the click event that follows it is ignored.
  let done = false;

  /**
   * What is picked goes somewhere.
   * @param {Target | null} target
   */
  function putDown(target) {
    const taken = picks.now;
    if (taken) {
      const spots = carrying.spotsOf(taken);
      // What comes out of the box can be put in again and again.
      pick(taken.at === null && target ? taken : null);
      hint("");
      hands.put(taken, target, taken.at === null
        ? [carrying.middleOf(sources[taken.place])]
        : spots);
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
   * The pointer went far enough: what it took comes along.
   * @param {Hold} hold
   */
  function lift({ thing, first }) {
    const { from: { at, place }, index } = thing;
    const { now } = picks;
    const among = now?.at === at && now.place === place && now.indices.includes(index);
    const taken = among ? now : { at, place, indices: [index] };
    pick(null);
    hint("");
    thing.carried = carrying.lift(taken, first);
  }

  /** @type {import("../../shared/grab.js").Grab<Taken>} */
  const grab = makeGrab({
    move(hold) {
      const { thing, last } = hold;
      const { from, index, line } = thing;
      if (index < 0 && from.at !== null) {
        line.push(pointIn(mats.views[from.at].drawing, last));
        drawRing(mats, from.at, line);
        return;
      }
      if (!thing.carried && hold.carried) {
        lift(hold);
      }
      if (thing.carried) {
        carrying.carry(thing.carried, last);
      }
    },
    end({ thing, last }) {
      const { from, index, line, carried } = thing;
      letGo(thing);
      done = true;
      if (carried) {
        hands.put(carried.taken, mats.columnAt(last), carried.spotsAt(last));
      } else if (from.at === null) {
        tapSource(from.place);
      } else if (index < 0 && spread(line) >= TAP_PX) {
        ringed(from.at, line);
      } else {
        tap(from, index);
      }
    },
    cancel: ({ thing }) => letGo(thing),
  }, lifetime);

  /** @param {Taken} thing which is held no more */
  function letGo({ from, carried }) {
    if (carried) {
      carrying.letGo(carried);
    }
    if (from.at !== null) {
      drawRing(mats, from.at, []);
    }
  }

  /**
   * @param {Taken["from"]} from
   * @param {number} index
   * @returns {boolean} whether another finger has it, or draws a ring there
   */
  function isTaken({ at, place }, index) {
    return at !== null && grab.holds().some(({ thing }) => thing.from.at === at &&
      (index < 0 ? thing.index < 0 : thing.from.place === place &&
        (thing.index === index || thing.carried?.taken.indices.includes(index))));
  }

  /**
   * @param {HTMLElement} element
   * @param {() => void} tapped by what is no pointer
   * @param {(event: PointerEvent) => Taken | null} take
   */
  function listen(element, tapped, take) {
    grab.on(element, (event) => {
      done = false;
      return rules().movable ? take(event) : null;
    });
    element.addEventListener("click", () => {
      if (!done) {
        tapped();
      }
      done = false;
    }, lifetime);
  }

  mats.views.forEach(({ drawing, columns }, at) => {
    for (const place of PLACES) {
      const { handle, heap } = columns[place];
      const from = { at, place };
      listen(handle, () => tap(from, -1), (event) => {
        const finger = event.pointerType === "touch";
        const point = pointIn(drawing, event);
        const index = mats.blockAt(at, place, point, finger ? SLACK.finger : SLACK.other);
        // Beside the blocks a finger scrolls the page.
        const rings = rules().ring && (!finger || event.target === heap);
        if ((index < 0 && !rings) || isTaken(from, index)) {
          return null;
        }
        handle.focus({ preventScroll: true, focusVisible: false });
        hands.touched(at);
        return { from, index, line: [point], carried: null };
      });
    }
  });
  for (const place of PLACES) {
    listen(sources[place], () => tapSource(place), () =>
      ({ from: { at: null, place }, index: 0, line: [], carried: null }));
  }
  box.addEventListener("click", (event) => {
    if (event.target === box && picks.now && picks.now.at !== null) {
      putDown(null);
    }
  }, lifetime);

  function isHeld() {
    return grab.holds().length > 0;
  }

  return {
    isHeld,
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
      const any = isHeld() || picks.now !== null;
      for (const { thing } of grab.holds()) {
        letGo(thing);
      }
      grab.drop();
      pick(null);
      hint("");
      return any;
    },
  };
}
