/**
 * Taking hold of hands: drag one, or tap it and then tap where it goes. A hand that is dragged does
 * not jump to the finger; it turns as far as the finger goes around from where it began. Free hands
 * can be held by two fingers at once; of geared ones one moves the other.
 */
import { makeGrab } from "../shared/grab.js";
import { pointIn } from "../shared/svg.js";
import { turned } from "./dial.js";
import { HANDS } from "./drawing.js";
import { angleOf, angleOfHand, nearerHand, turnBetween } from "./face.js";

/**
 * @typedef {import("./dial.js").Dial} Dial
 * @typedef {import("./dial.js").Hand} Hand
 *
 * @typedef {object} Parts of the widget
 * @property {import("../shared/frame.js").Frame} frame
 * @property {import("./drawing.js").Face} face
 * @property {import("../shared/state/undoable.js").Undoable<Dial>} state
 * @property {() => import("./dial.js").Rules} traits
 * @property {import("./actions.js").Actions} actions
 *
 * @typedef {object} Taken
 * @property {Hand} hand
 * @property {Dial} from the dial when it was taken
 * @property {number} angle where the finger is, seen from the centre
 * @property {number} turn degrees that it went around since
 */

// So near to the centre the angle of a finger means nothing.
const CENTRE = 8;
// A finger that left sooner has tapped; one that adjusts a hand takes longer.
const TAP_MS = 350;

/**
 * Let hands be taken.
 * @param {Parts} parts
 * @returns {{ isHeld: () => boolean, drop: () => Dial | null }} whether a hand is held; let go of
 *   everything, and say what the dial was before, if anything was held or picked
 */
export function holdHands({ frame, face, state, traits, actions }) {
  const { root, lifetime } = frame;
  // The dial when the first of all that is held was taken: what follows is one step.
  let began = state.now();
  /** @type {Hand | null} */
  let picked = null;

  /** @type {import("../shared/grab.js").Grab<Taken>} */
  const grab = makeGrab({
    move({ thing, last }) {
      const point = pointIn(face.drawing, last);
      if (Math.hypot(point.x, point.y) > CENTRE) {
        const { hand, from } = thing;
        const angle = angleOf(point);
        thing.turn += turnBetween(thing.angle, angle);
        thing.angle = angle;
        slide(hand, turned(from, hand, thing.turn, traits()));
      }
    },
    end({ thing: { hand, from }, first, carried }, { timeStamp }) {
      const tapped = !carried && timeStamp - first.timeStamp < TAP_MS;
      pick(tapped && picked !== hand ? hand : null);
      if (tapped) {
        slide(hand, from);
      } else if (!isHeld()) {
        actions.settle(began);
      }
      if (picked) {
        frame.say("Now tap where the hand goes.");
      }
    },
  }, lifetime);

  function isHeld() {
    return grab.holds().length > 0;
  }

  /** @param {Hand | null} hand which goes where the face is tapped */
  function pick(hand) {
    picked = hand;
    root.classList.toggle("is-held", isHeld());
    for (const each of HANDS) {
      face.handles[each].classList.toggle("is-picked", each === hand);
    }
  }

  /**
   * Put a hand where it is on another dial.
   * @param {Hand} hand
   * @param {Dial} next
   */
  function slide(hand, next) {
    state.slide(traits().mode === "free" ? { ...state.now(), [hand]: next[hand] } : next);
  }

  /**
   * @param {PointerEvent} event
   * @returns {Taken | null} the hand that is there, unless a finger has it
   */
  function take(event) {
    const point = pointIn(face.drawing, event);
    const from = state.now();
    const hand = nearerHand(from, point);
    const others = grab.holds();
    if (others.some(({ thing }) => thing.hand === hand || traits().mode === "geared")) {
      return null;
    }
    began = others.length ? began : from;
    root.classList.add("is-held");
    face.handles[hand].focus({ preventScroll: true });
    return { hand, from, angle: angleOf(point), turn: 0 };
  }

  for (const each of HANDS) {
    grab.on(face.handles[each], take);
  }

  face.drawing.addEventListener("click", (event) => {
    const hand = picked;
    if (hand) {
      const dial = state.now();
      const way = angleOf(pointIn(face.drawing, event)) - angleOfHand(dial, hand);
      pick(null);
      actions.go(turned(dial, hand, turnBetween(0, way), traits()));
    }
  }, lifetime);

  return {
    isHeld,
    drop() {
      const was = isHeld() ? began : picked && state.now();
      grab.drop();
      pick(null);
      return was;
    },
  };
}
