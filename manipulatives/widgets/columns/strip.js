/** The strip of blocks: for what is written in each row and place as many blocks as it says. */
import BLOCKS from "../../data/blocks.json" with { type: "json" };
import { outlines } from "../blocks/state/block.js";
import { html, put, svg } from "../shared/svg.js";
import { blocksInWords, roleName } from "./describe.js";

/**
 * @typedef {import("./written.js").Sum} Sum
 * @typedef {import("./written.js").Blocks} Blocks
 * @typedef {{ role: string, place: number, group: SVGGElement, count: number }} Heap
 */

/** @type {("ones" | "tens" | "hundreds" | "thousands")[]} */
const PLACES = ["ones", "tens", "hundreds", "thousands"];
// In units, the side of a one: how far one block is from the next, and what a block measures.
const PITCH = [...PLACES.map((place) => BLOCKS.strip.pitch[place]), 13];
const SIZE = [...PLACES.map((place) => BLOCKS.sizes[place].wide), 25.5];
const BACK = 1.5;
const GAP = 3.5;
// Room is reserved for so many, so that not everything moves when one comes in.
const ROOM = 10;
const { column: COLUMN, most: MOST } = BLOCKS.strip;

/**
 * How broad so many blocks lie.
 * @param {number} place 0 for the ones
 * @param {number} count
 * @returns {number} in units
 */
export function breadth(place, count) {
  const across = place === 0 ? Math.ceil(count / COLUMN) : count;
  return across ? SIZE[place] + (across - 1) * PITCH[place] : 0;
}

/**
 * Where a block lies in its place.
 * @param {number} place
 * @param {number} index
 * @returns {{ x: number, y: number }} its top left corner, in units
 */
export function spot(place, index) {
  return place === 0
    ? { x: Math.floor(index / COLUMN) * PITCH[0], y: (index % COLUMN) * PITCH[0] }
    : { x: index * PITCH[place], y: 0 };
}

/**
 * Make a strip.
 * @returns {{ element: HTMLElement, paint: (sum: Sum, blocks: Blocks, all: Blocks[]) => void }}
 *   paint shows blocks, with room for all of those
 */
export function makeStrip() {
  const element = html("div", { class: "columns-strip", role: "img" });
  let plan = "";
  /** @type {Heap[]} */
  let heaps = [];

  /**
   * Lay all rows afresh.
   * @param {Sum} sum
   * @param {string[]} roles
   * @param {number[]} rooms how broad each place is
   */
  function lay(sum, roles, rooms) {
    const broad = rooms.reduce((whole, room) => whole + room, 0);
    const high = rooms[3] ? SIZE[3] : SIZE[2];
    heaps = [];
    element.replaceChildren(...roles.map((role) => {
      const drawing = svg("svg", {
        "viewBox": `-0.3 -0.3 ${broad + 0.6} ${high + 0.6}`,
        "preserveAspectRatio": "xMaxYMid meet",
        "aria-hidden": true,
      });
      let right = broad;
      rooms.forEach((room, place) => {
        right -= room;
        const at = `translate(${right + GAP / 2} 0)`;
        const group = svg("g", { class: `of-${kindOf(place)}`, transform: at });
        heaps.push({ role, place, group, count: 0 });
        drawing.append(group);
      });
      const name = html("span", { class: "columns-role" }, roleName(sum, role));
      return html("div", { class: `columns-blocks is-${role}` }, name, drawing);
    }));
  }

  return {
    element,
    paint(sum, blocks, all) {
      // Nothing is ever carried where the parts are written.
      const roles = Object.keys(blocks).filter((role) =>
        sum.form !== "parts" || role !== "carried");
      const rows = [blocks, ...all].flatMap((each) => Object.values(each));
      // What the steps need is known beforehand; what pupils will write is not.
      const least = all.length ? 1 : ROOM;
      const rooms = sum.answer.map((_, place) => {
        const most = Math.max(...rows.map((counts) => Math.min(counts[place], MOST)));
        return most ? breadth(place, place > 3 ? most : Math.max(most, least)) + GAP : 0;
      });
      const next = JSON.stringify([sum.numbers, roles, rooms]);
      if (next !== plan) {
        plan = next;
        lay(sum, roles, rooms);
      }
      for (const heap of heaps) {
        fill(heap, blocks[heap.role][heap.place]);
      }
      put(element, { "aria-label": `Blocks. ${blocksInWords(sum, blocks)}` });
    },
  };
}

/**
 * @param {number} place
 * @returns {"ones" | "tens" | "hundreds" | "thousands"} which blocks lie there
 */
function kindOf(place) {
  return PLACES[Math.min(place, 3)];
}

/**
 * Lay so many blocks onto a heap, unless they lie there already.
 * @param {Heap} heap
 * @param {number} count
 */
function fill(heap, count) {
  if (heap.count === count) {
    return;
  }
  const { group, place } = heap;
  const many = count > MOST;
  const blocks = Array.from({ length: many ? 1 : count }, (_, index) => blockAt(place, index));
  group.replaceChildren(...blocks.flat());
  if (many) {
    const beside = { "x": SIZE[place] + 1, "y": 7, "font-size": 5, "text-anchor": "start" };
    group.append(svg("text", beside, `\u00d7${count}`));
  }
  heap.count = count;
}

/**
 * @param {number} place
 * @param {number} index
 * @returns {SVGGElement[]} one block; ten thousand are ten thousands, one behind the other
 */
function blockAt(place, index) {
  const many = place > 3 ? 10 : 1;
  const { x, y } = spot(place, index);
  return Array.from({ length: many }, (_, at) => {
    const paths = outlines(kindOf(place)).map(({ part, d }) =>
      svg("path", { class: `block-${part}`, d }));
    return svg("g", { transform: `translate(${x + (many - 1 - at) * BACK} ${y})` }, ...paths);
  });
}
