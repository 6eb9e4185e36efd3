/**
 * What a coin's face looks like, in tenths of a millimetre around its middle. Python's
 * drawings/coin_face.py draws the same on paper; the proportions are those of
 * data/coin_face.json: shares of a coin's radius, or of its name's or numeral's size.
 *
 * @typedef {import("./coinage.js").Coin} Coin
 */

import FACE from "../../../data/coin_face.json" with { type: "json" };

/**
 * The outline of a coin.
 * @param {Coin} coin
 * @returns {string} the `d` of a path
 */
export function outline(coin) {
  const r = 5 * coin.diameter;
  if (coin.notches) {
    const { half } = FACE.notch;
    const dent = r * FACE.notch.dent;
    const along = `A${n(r)} ${n(r)} 0 0 1 `;
    const into = `A${n(dent)} ${n(dent)} 0 0 0 `;
    const pieces = turns(coin.notches).map((turn) =>
      around(r, turn - half) + into + around(r, turn + half) + along);
    return `M${pieces.join("")}${around(r, -half)}Z`;
  }
  const { corner, bow, points } = corners(coin);
  const [first, ...rest] = points.map((turn) => around(corner, turn));
  const to = bow === Infinity ? "L" : `A${n(bow)} ${n(bow)} 0 0 1 `;
  return `M${first}${[...rest, first].map((point) => to + point).join("")}Z`;
}

/**
 * The corners of a coin, and how the sides between them are bowed. Sides of an odd number are
 * bowed around the opposite corner, so that the coin is equally wide all around.
 * @param {Coin} coin
 * @returns {{ corner: number, bow: number, points: number[] }} how far corners are from the middle,
 *   the radius of the sides, Infinity for straight ones, and the angles of the corners in radians
 *   from twelve; a round coin has three corners that cannot be seen
 */
export function corners({ diameter, sides, flats }) {
  const width = 10 * diameter;
  if (sides === 0) {
    return { corner: width / 2, bow: width / 2, points: turns(3) };
  }
  if (sides % 2) {
    return { corner: width / 2 / Math.cos(Math.PI / 2 / sides), bow: width, points: turns(sides) };
  }
  const half = Math.PI / sides;
  const rise = (flats ? 5 * flats : (width / 2) * Math.cos(half)) - (width / 2) * Math.cos(half);
  const chord = (width / 2) * Math.sin(half);
  return {
    corner: width / 2,
    bow: rise > 0.5 ? (chord * chord + rise * rise) / 2 / rise : Infinity,
    points: turns(sides).map((turn) => turn + half),
  };
}

/**
 * The teeth of an edge, as the dashes of a line around the coin.
 * @param {Coin} coin
 * @returns {number[]} lengths of dashes and gaps in turn, which together go once around; none for
 *   an edge without teeth
 */
export function teeth({ edge, diameter }) {
  const round = 2 * Math.PI * FACE.edge.radius * 5 * diameter;
  const tooth = 10 * (edge === "scalloped" ? FACE.scallop : FACE.edge).tooth;
  if (!["milled", "scalloped", "interrupted"].includes(edge)) {
    return [];
  }
  // An even number of pairs, in six groups and six gaps where they are interrupted.
  const pairs = 12 * Math.round(round / tooth / 12);
  const half = round / pairs / 2;
  if (edge !== "interrupted") {
    return [half, half];
  }
  const group = Array(pairs / 12).fill([half, half]).flat();
  group[group.length - 1] += round / 12;
  return group;
}

/**
 * How large a coin's name can be, on one line or, if it has two words, on two.
 * @param {Coin} coin
 * @param {boolean} alone whether no numeral stands above it
 * @returns {{ lines: string[], size: number, below: number }} the lines, the size of their type,
 *   and how far below the middle of the coin the middle of them is
 */
export function nameOn({ name, diameter }, alone) {
  const { size, below, breadth } = FACE[alone ? "name_alone" : "name"];
  const r = 5 * diameter;
  const lines = name.split(" ");
  const longest = Math.max(...lines.map((line) => line.length));
  const most = lines.length > 1 ? 0.8 * size : size;
  return { lines, size: r * Math.min(most, breadth / longest / FACE.letter), below: r * below };
}

/**
 * @param {number} many
 * @returns {number[]} so many angles all around, in radians from twelve
 */
function turns(many) {
  return Array.from({ length: many }, (_, index) => (2 * Math.PI * index) / many);
}

/**
 * @param {number} radius
 * @param {number} turn radians from twelve, clockwise
 * @returns {string} the point in a path
 */
function around(radius, turn) {
  return `${n(radius * Math.sin(turn))} ${n(-radius * Math.cos(turn))}`;
}

/**
 * @param {number} length
 * @returns {number} the same to a hundredth of a tenth of a millimetre
 */
function n(length) {
  return Math.round(length * 100) / 100;
}
