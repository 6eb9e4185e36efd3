/**
 * What is above the mats for a while: blocks in the hand, and blocks on their way, such as ten
 * ones that become a ten.
 *
 * @typedef {import("./state/places.js").Mat} Mat
 * @typedef {import("./state/places.js").Place} Place
 * @typedef {import("./state/rows.js").Spot} Spot
 * @typedef {import("./state/ways.js").Way} Way
 */
import { svg } from "../shared/svg.js";
import { drawBlock, moveBlock } from "./drawing.js";

// More blocks than this do not fly; they are there at once.
const MOST = 120;
const FLIGHT = { duration: 520, easing: "ease-in-out", fill: /** @type {"both"} */ ("both") };
const APART_MS = 18;

/**
 * A layer above everything.
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   root: SVGSVGElement,
 *   hold: (place: Place, spots: Spot[], unit: number) => SVGGElement,
 *   letGo: (hand: SVGGElement) => void,
 *   fly: (ways: Way[], unit: number, landed: () => void) => void,
 *   stop: () => void,
 * }} the layer; take blocks into a hand, and let go of them; let blocks fly, and end all flights at
 *   once
 */
export function makeOverlay({ signal }) {
  const flyers = svg("g", {});
  const root = svg("svg", { "class": "blocks-air", "aria-hidden": true }, flyers);
  /** @type {SVGGElement[]} */
  const hands = [];
  let flight = 0;

  function addHand() {
    const hand = svg("g", { class: "blocks-hand" });
    hands.push(hand);
    root.append(hand);
    return hand;
  }

  function stop() {
    flight += 1;
    flyers.replaceChildren();
  }

  addHand();
  signal.addEventListener("abort", stop);
  return {
    root,
    hold(place, spots, unit) {
      root.style.setProperty("--unit", `${unit}`);
      const hand = hands.find(({ childElementCount: many }) => many === 0) ?? addHand();
      hand.replaceChildren(...spots.map((spot) => {
        const block = drawBlock(place);
        moveBlock(block, spot, unit);
        return block;
      }));
      return hand;
    },
    letGo(hand) {
      hand.replaceChildren();
      hand.style.transform = "";
    },
    fly(ways, unit, landed) {
      stop();
      const mine = flight;
      const moves = ways.flatMap(({ place, from, to }) =>
        to.map((spot, index) => ({ place, from: from[index], to: spot })));
      if (moves.length === 0 || moves.length > MOST || moves.some(({ from }) => !from)) {
        landed();
        return;
      }
      root.style.setProperty("--unit", `${unit}`);
      moves.forEach(({ place, from, to }, index) => {
        const block = drawBlock(place);
        moveBlock(block, from, unit);
        flyers.append(block);
        const start = block.style.transform;
        moveBlock(block, to, unit);
        const delay = Math.min(index, 20) * APART_MS;
        const way = [{ transform: start }, { transform: block.style.transform }];
        block.animate(way, { ...FLIGHT, delay }).onfinish = () => {
          if (index === moves.length - 1 && mine === flight) {
            stop();
            landed();
          }
        };
      });
    },
    stop,
  };
}
