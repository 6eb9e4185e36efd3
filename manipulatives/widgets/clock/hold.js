/**
 * Taking hold of a hand: drag it, or tap it and then tap where it goes. A hand that is dragged
 * does not jump to the finger; it turns as far as the finger goes around from where it began.
 */
import { onDrag } from "../shared/drag.js";
import { pointIn } from "../shared/svg.js";
import { turned } from "./dial.js";
import { HANDS } from "./drawing.js";
import { angleOf, angleOfHand, nearerHand, turnBetween } from "./face.js";

/**
 * @typedef {import("./dial.js").Dial} Dial
 * @typedef {import("./dial.js").Hand} Hand
 *
 * @typedef {object} Clock what is taken hold of
 * @property {() => Dial} dial
 * @property {() => import("./dial.js").Rules} traits
 * @property {(next: Dial) => void} change go to another dial, while a hand is held
 * @property {(next: Dial) => void} act go to another dial in one step
 * @property {(was: Dial) => void} settle the drag that began here is over
 * @property {(sentence: string) => void} say
 *
 * @typedef {object} Hold
 * @property {Hand} hand
 * @property {Dial} from the dial when it was taken
 * @property {PointerEvent} first where and when it was taken
 * @property {number} far pixels that the finger went away from there, at most
 * @property {number} angle where it is, seen from the centre
 * @property {number} turn degrees that it went around since
 */

// So near to the centre the angle of a finger means nothing.
const CENTRE = 8;
// A finger that left sooner and stayed nearer has tapped; one that adjusts a hand takes longer.
const TAP_PX = 6;
const TAP_MS = 350;

/**
 * Let hands be taken.
 * @param {import("./drawing.js").Face} face
 * @param {HTMLElement} root
 * @param {Clock} clock
 * @param {{ signal: AbortSignal }} life
 * @returns {{ isHeld: () => boolean, drop: () => Dial | null }} whether a hand is held; let go of
 *   everything, and say what the dial was before, if anything was held or picked
 */
export function holdHands(face, root, { dial, traits, change, act, settle, say }, { signal }) {
  /** @type {Hold | null} */
  let held = null;
  /** @type {Hand | null} */
  let picked = null;

  /**
   * @param {Hold | null} hold what is held from now on
   * @param {Hand | null} pick what goes where the face is tapped
   */
  function keep(hold, pick = null) {
    held = hold;
    picked = pick;
    root.classList.toggle("is-held", hold !== null);
    for (const hand of HANDS) {
      face.handles[hand].classList.toggle("is-picked", hand === pick);
    }
  }

  /** @type {import("../shared/drag.js").Drag} */
  const drag = {
    start(event) {
      if (held) {
        return false;
      }
      const point = pointIn(face.drawing, event);
      const hand = nearerHand(dial(), point);
      keep({ hand, from: dial(), first: event, far: 0, angle: angleOf(point), turn: 0 }, picked);
      face.handles[hand].focus({ preventScroll: true });
      return true;
    },
    move(event) {
      const point = pointIn(face.drawing, event);
      if (held && Math.hypot(point.x, point.y) > CENTRE) {
        const { first, far, angle } = held;
        const away = Math.hypot(event.clientX - first.clientX, event.clientY - first.clientY);
        held.far = Math.max(far, away);
        held.angle = angleOf(point);
        held.turn += turnBetween(angle, held.angle);
        change(turned(held.from, held.hand, held.turn, traits()));
      }
    },
    end(event) {
      if (!held) {
        return;
      }
      const { hand, from, first, far } = held;
      const tapped = far < TAP_PX && event.timeStamp - first.timeStamp < TAP_MS;
      keep(null, tapped && picked !== hand ? hand : null);
      if (tapped) {
        change(from);
      } else {
        settle(from);
      }
      if (picked) {
        say("Now tap where the hand goes.");
      }
    },
  };
  onDrag(face.handles.hour, drag, { signal });
  onDrag(face.handles.minute, drag, { signal });

  face.drawing.addEventListener("click", (event) => {
    const hand = picked;
    if (hand) {
      const way = angleOf(pointIn(face.drawing, event)) - angleOfHand(dial(), hand);
      keep(null);
      act(turned(dial(), hand, turnBetween(0, way), traits()));
    }
  }, { signal });

  return {
    isHeld: () => held !== null,
    drop() {
      const was = held?.from ?? (picked && dial());
      keep(null);
      return was;
    },
  };
}
