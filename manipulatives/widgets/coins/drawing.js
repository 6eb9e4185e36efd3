/** Coins, mat and purse as elements of a drawing. */
import FACE from "../../data/coin_face.json" with { type: "json" };
import { grip, put, svg } from "../shared/svg.js";
import { signOn } from "./state/amounts.js";
import { nameOn, outline, teeth } from "./state/face.js";
import { reach } from "./state/places.js";

/**
 * @typedef {import("./state/coinage.js").Coin} Coin
 * @typedef {import("./state/coinage.js").Currency} Currency
 * @typedef {import("./state/table.js").Box} Box
 *
 * @typedef {object} Look what is shown on coins
 * @property {Currency} money
 * @property {boolean} worths
 * @property {boolean} names
 * @property {Record<string, string>} photographs
 * @property {boolean} movable
 * @property {string} ring the coin that a line is drawn around
 * @property {number} scale pixels for each tenth of a millimetre
 */

const TYPE_PX = 18;
const GRIP_PX = 5;
const DIGIT_HEIGHT = 0.7;
const LETTER_HEIGHT = 0.52;

/**
 * Draw a coin around the origin.
 * @param {Coin} coin
 * @param {Look} look
 * @returns {SVGGElement} the coin
 */
export function drawCoin(coin, look) {
  const { money, worths, photographs, movable, scale, ring } = look;
  const r = 5 * coin.diameter;
  const shape = outline(coin);
  const photograph = photographs[coin.worth];
  const made = svg(
    "g", { class: `coin is-${coin.metal}` },
    svg("path", { class: "coin-metal", d: shape, "stroke-width": r * FACE.rim.width }),
  );
  if (photograph) {
    made.append(...photo(photograph, shape, r));
  } else {
    made.append(...relief(coin, shape, r));
  }
  if (!photograph && worths) {
    made.append(numeral(signOn(coin, money), r, nameFits(coin, look)));
  }
  if (!photograph && nameFits(coin, look)) {
    made.append(...nameLines(coin, !worths));
  }
  if (movable) {
    const sign = grip(Math.max(r * FACE.grip.radius, scale > 0 ? GRIP_PX / scale : 0));
    made.append(put(sign, { transform: `translate(0 ${r * FACE.grip.below})` }));
  }
  if (String(coin.worth) === ring) {
    made.append(svg("circle", { class: "coin-ring", r: r + 14 }));
  }
  return made;
}

/**
 * Whether a coin has room for its name in type that is large enough.
 * @param {Coin} coin
 * @param {Look} look
 * @returns {boolean}
 */
export function nameFits(coin, { names, worths, scale, photographs }) {
  return names && !photographs[coin.worth] && nameOn(coin, !worths).size * scale >= TYPE_PX;
}

/**
 * @param {Coin} coin
 * @param {string} shape
 * @param {number} r
 * @returns {SVGElement[]} what makes it a coin, but for what is written on it
 */
function relief(coin, shape, r) {
  const parts = [];
  const dashes = teeth(coin);
  if (dashes.length) {
    parts.push(svg("circle", {
      "class": "coin-edge",
      "r": r * FACE.edge.radius,
      "stroke-width": r * FACE.edge.width,
      "stroke-dasharray": dashes.map((dash) => dash.toFixed(2)).join(" "),
    }));
  }
  parts.push(svg("path", {
    "class": "coin-line",
    "d": shape,
    "transform": `scale(${FACE.line.radius})`,
    "stroke-width": (r * FACE.line.width) / FACE.line.radius,
  }));
  if (coin.centre) {
    const size = { r: r * FACE.centre.radius, "stroke-width": r * FACE.centre.width };
    parts.push(svg("circle", { class: `coin-centre is-${coin.centre}`, ...size }));
  }
  return parts;
}

/**
 * @param {string} source
 * @param {string} shape
 * @param {number} r
 * @returns {SVGElement[]} a teacher's photograph in the outline of the coin
 */
function photo(source, shape, r) {
  const id = `kit-${Math.random().toString(36).slice(2)}`;
  const size = { x: -r, y: -r, width: 2 * r, height: 2 * r };
  return [
    svg("clipPath", { id }, svg("path", { d: shape })),
    svg("image", {
      "href": source,
      "clip-path": `url(#${id})`,
      "preserveAspectRatio": "xMidYMid slice",
      ...size,
    }),
  ];
}

/**
 * @param {string} sign
 * @param {number} r
 * @param {boolean} named whether the name stands below it
 * @returns {SVGTextElement}
 */
function numeral(sign, r, named) {
  const { size, below } = FACE[named ? "numeral_named" : "numeral"];
  const type = r * size * FACE.fit[Math.min(sign.length, FACE.fit.length) - 1];
  const y = r * below + (type * DIGIT_HEIGHT) / 2;
  return svg("text", { y, "font-size": type }, sign);
}

/**
 * @param {Coin} coin
 * @param {boolean} alone
 * @returns {SVGTextElement[]} its lines
 */
function nameLines(coin, alone) {
  const { lines, size, below } = nameOn(coin, alone);
  return lines.map((line, index) => {
    const shift = (index - (lines.length - 1) / 2) * size * 0.95;
    const y = below + shift + (size * LETTER_HEIGHT) / 2;
    return svg("text", { y, "font-size": size }, line);
  });
}

/**
 * A box of the table.
 * @param {string} look its class
 * @param {Box} box
 * @returns {SVGRectElement}
 */
export function drawBox(look, { x, y, width, height }) {
  return svg("rect", { class: look, x, y, width, height, rx: 50 });
}

/**
 * A kind of the purse with what is below and beside it.
 * @param {Coin} coin
 * @param {Box} box
 * @param {number | null} left how many there are, null for no end
 * @param {Look} look
 * @param {number} type the size of type
 * @param {boolean} tagged whether its name stands below it
 * @returns {SVGGElement}
 */
export function drawSlot(coin, box, left, look, type, tagged) {
  const lines = tagged ? coin.name.split(" ") : [];
  const x = box.x + box.width / 2;
  const y = box.y + (box.height - lines.length * 1.1 * type) / 2;
  const face = drawCoin(coin, { ...look, ring: "" });
  const made = svg("g", {}, put(face, { transform: `translate(${x} ${y})` }));
  lines.forEach((line, index) => {
    const baseline = y + reach(coin) + (index + 1) * 1.1 * type;
    made.append(svg("text", { x, y: baseline, "font-size": type }, line));
  });
  if (left !== null) {
    const r = 0.75 * type;
    const at = { x: x + 0.85 * reach(coin), y: y - 0.75 * reach(coin) };
    made.append(
      svg("circle", { class: "coins-badge", cx: at.x, cy: at.y, r }),
      svg("text", { "class": "coins-left", "x": at.x, "y": at.y + 0.35 * type, "font-size": type },
        String(left)),
    );
  }
  return made;
}
