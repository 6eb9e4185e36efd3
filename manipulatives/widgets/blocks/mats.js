/** The mats: headings, the blocks in their columns, and digits below, fitted to the room. */
import WORDS from "../../data/place_words.json" with { type: "json" };
import { html, put, svg } from "../shared/svg.js";
import { drawBlock, drawBox, makeMat, moveBlock } from "./drawing.js";
import { PLACES, columnsOf, full } from "./state/places.js";
import { SIZES, boxSpots, boxesIn, lay, spotsOf } from "./state/rows.js";
import { counted, some } from "./state/tell.js";

/**
 * @typedef {import("./state/places.js").Mat} Mat
 * @typedef {import("./state/places.js").Place} Place
 * @typedef {import("./state/rows.js").Spot} Spot
 *
 * @typedef {object} Shown
 * @property {number} places
 * @property {boolean} movable
 * @property {boolean} digits
 * @property {boolean} buttons
 * @property {"compare" | "add" | "take"} pair
 *
 * @typedef {(at: number, place: Place, more: 1 | -1) => void} Step one block more or less
 * @typedef {import("./drawing.js").Column} Column
 * @typedef {import("./drawing.js").Lifetime} Lifetime
 * @typedef {import("./drawing.js").MatView} MatView
 */

// Shares of the size of the type; headings stand over the blocks, with room for a ring between.
const PAD = 0.4;
const HEAD = 2.1;
const NARROW = 5.6;
const GAP = 0.7;
// A narrower column has no room for steps, or has them below the digit and not beside it.
const TIGHT_PX = { wide: 90, high: 240 };
const STACKED_PX = 170;

/** Two mats, of which the second may be hidden. */
export class Mats {
  /** @type {MatView[]} */
  views;

  table;

  #note = html("div", { class: "blocks-note", hidden: "" });

  unit = 1;

  /** @type {Place[]} */
  columns = [];

  /** @type {Mat} */
  #mat = [full()];

  /** @type {Shown} */
  #shown = { places: 3, movable: true, digits: false, buttons: true, pair: "compare" };

  /**
   * @param {Step} step
   * @param {Lifetime} lifetime
   */
  constructor(step, lifetime) {
    this.views = [0, 1].map((at) => makeMat((place, more) => step(at, place, more), lifetime));
    this.table = html(
      "div", { class: "blocks-table" }, ...this.views.map(({ root }) => root), this.#note,
    );
  }

  /**
   * Show what the traits say.
   * @param {Shown} shown
   * @returns {void}
   */
  applyTraits(shown) {
    this.#shown = shown;
    this.views.forEach(({ root, name, drawing }, at) => {
      name.textContent = WORDS.mats[shown.pair][at];
      root.classList.toggle("has-digits", shown.digits);
      root.classList.toggle("has-steps", shown.movable && shown.buttons);
      put(drawing, { "aria-hidden": shown.movable ? "true" : null });
    });
  }

  /**
   * Show the mat.
   * @param {Mat} mat
   * @param {import("./state/ways.js").Gone} [gone] which blocks of a column went, when it were not
   *   the last ones
   * @returns {void}
   */
  paint(mat, gone) {
    const columns = columnsOf(mat, this.#shown.places);
    const changed = mat.length !== this.#mat.length ||
      columns.length !== this.columns.length;
    this.#mat = mat;
    this.columns = columns;
    if (gone) {
      const { blocks } = this.views[gone.at].columns[gone.place];
      const away = blocks.filter((_, index) => gone.indices.includes(index));
      for (const block of away) {
        blocks.splice(blocks.indexOf(block), 1)[0].remove();
      }
    }
    if (changed) {
      this.#arrange();
    }
    this.#settle();
  }

  /**
   * Mark a mat, where there are two.
   * @param {number} active
   * @returns {void}
   */
  mark(active) {
    const two = this.#mat.length > 1;
    this.views.forEach(({ root, name }, at) => {
      root.classList.toggle("is-active", two && at === active);
      put(root, { "aria-label": two ? `Mat ${name.textContent}` : "Mat" });
    });
  }

  /**
   * Show a sentence.
   * @param {string} sentence nothing, to take away what was shown
   * @returns {void}
   */
  hint(sentence) {
    this.#note.textContent = sentence;
    this.#note.hidden = sentence === "";
  }

  /** Fit the blocks to the room there is. @returns {void} */
  fit() {
    this.#arrange();
    this.table.classList.add("is-still");
    this.#settle();
    // What is moved here is moved at once.
    this.table.getBoundingClientRect();
    this.table.classList.remove("is-still");
  }

  /** Lay out the mats and their columns. */
  #arrange() {
    const { table, views, columns } = this;
    const two = this.#mat.length > 1;
    table.style.setProperty("--columns", String(columns.length));
    views.forEach((view, at) => {
      view.root.hidden = at >= this.#mat.length;
      view.name.hidden = !two;
      for (const place of PLACES) {
        const { head, foot, handle, group, boxes } = view.columns[place];
        const there = columns.indexOf(place);
        head.hidden = there < 0;
        foot.hidden = there < 0;
        handle.hidden = there < 0 || !this.#shown.movable;
        handle.style.insetInlineStart = `${(100 * there) / columns.length}%`;
        handle.style.inlineSize = `${100 / columns.length}%`;
        put(group, { display: there < 0 ? "none" : null });
        put(boxes, { display: there < 0 ? "none" : null });
      }
    });
    table.classList.toggle("is-beside", two && this.#isBroad());
  }

  /** @returns {boolean} whether blocks are larger on two mats beside each other */
  #isBroad() {
    const { table, views: [{ root, field }] } = this;
    const { clientWidth: wide, clientHeight: high } = table;
    const gap = GAP * this.#type();
    const besideField = root.offsetWidth - field.clientWidth;
    const aboveField = root.offsetHeight - field.clientHeight;
    const [beside, below] = [[2, 1], [1, 2]].map(([across, down]) => this.#lay(
      (wide - gap * (across - 1)) / across - besideField,
      (high - gap * (down - 1)) / down - aboveField,
    ).unit);
    return beside > below;
  }

  /**
   * @param {number} wide
   * @param {number} high
   */
  #lay(wide, high) {
    const type = this.#type();
    const width = Math.max(wide / this.columns.length - 2 * PAD * type, 1);
    return lay(this.#mat, this.columns, width, Math.max(high - (HEAD + PAD) * type, 1), type);
  }

  #type() {
    return parseFloat(getComputedStyle(this.table).fontSize) || 18;
  }

  /** Put every block where it lies. */
  #settle() {
    const { clientWidth: wide, clientHeight: high } = this.views[0].field;
    if (!wide || !high) {
      // Not on the screen yet; it is done when it comes there.
      return;
    }
    const type = this.#type();
    const pad = PAD * type;
    const top = HEAD * type;
    const breadth = wide / this.columns.length;
    const laid = this.#lay(wide, high);
    this.unit = laid.unit;
    const narrow = breadth < NARROW * type;
    const low = this.views[0].root.clientHeight < TIGHT_PX.high;
    this.table.classList.toggle("is-tight", low || breadth < TIGHT_PX.wide);
    this.table.classList.toggle("is-stacked", breadth < STACKED_PX);
    this.#mat.forEach((blocks, at) => {
      const view = this.views[at];
      put(view.drawing, {
        viewBox: `0 0 ${wide} ${high}`, "aria-label": counted(blocks),
      });
      view.drawing.style.setProperty("--unit", `${laid.unit}`);
      const rules = this.columns.slice(1).map((_, index) => `M${(index + 1) * breadth} 0V${high}`);
      put(view.rules, { d: rules.join("") });
      let leading = true;
      this.columns.forEach((place, index) => {
        const column = view.columns[place];
        const count = blocks[place];
        const left = breadth * index + pad;
        /** @type {[number, number, number, number]} */
        const room = [count, breadth - 2 * pad, high - top - pad, type];
        const { side, high: above } = boxesIn(...room);
        column.spots = spotsOf(laid, place, count, laid.boxed ? above : 0)
          .map(({ x, y }) => ({ x: left + x, y: top + y }));
        this.#sync(column, place);
        const boxes = laid.boxed ? boxSpots(...room) : [];
        column.boxes.replaceChildren(...boxes.flatMap(({ size, line, spots }) => [
          svg("text", { x: left + breadth / 2 - pad, y: top + line, "font-size": type },
            narrow ? String(size) : `${size} each`),
          ...spots.map(({ x, y }) => drawBox(left + x, top + y, side)),
        ]));
        this.#heap(column, place, breadth * index, breadth, high);
        leading &&= count === 0 && place !== "ones";
        column.digit.textContent = leading ? "" : String(count);
        column.digit.classList.toggle("is-many", count > 9);
        column.head.textContent = (narrow ? WORDS.short : WORDS.heads)[place];
        put(column.handle, { "aria-valuenow": count, "aria-valuetext": some(count, place) });
      });
    });
  }

  /**
   * @param {Column} column
   * @param {Place} place
   */
  #sync({ blocks, spots, group }, place) {
    while (blocks.length > spots.length) {
      blocks.pop()?.remove();
    }
    while (blocks.length < spots.length) {
      const block = drawBlock(place);
      blocks.push(block);
      group.append(block);
    }
    blocks.forEach((block, index) => moveBlock(block, spots[index], this.unit));
  }

  /**
   * @param {Column} column
   * @param {Place} place
   * @param {number} left of the column
   * @param {number} breadth
   * @param {number} high
   */
  #heap({ heap, spots }, place, left, breadth, high) {
    const { wide: across, high: down } = SIZES[place];
    // A ring begins a little away from what it goes round.
    const margin = Math.max(40, this.unit);
    const xs = spots.map(({ x }) => x - left);
    const ys = spots.map(({ y }) => y);
    const x = Math.max(0, Math.min(...xs) - margin);
    const y = Math.max(0, Math.min(...ys) - margin);
    heap.hidden = spots.length === 0;
    if (spots.length) {
      const right = Math.min(breadth, Math.max(...xs) + across * this.unit + margin);
      const foot = Math.min(high, Math.max(...ys) + down * this.unit + margin);
      heap.style.cssText =
        `inset-inline-start:${x}px;inset-block-start:${y}px;` +
        `inline-size:${right - x}px;block-size:${foot - y}px`;
    }
  }

  /**
   * The block at a point of a field, the uppermost where several are, or the nearest one.
   * @param {number} at
   * @param {Place} place
   * @param {Spot} point
   * @param {number} slack how far off it may be, in pixels
   * @returns {number} its index, -1 when there is none
   */
  blockAt(at, place, point, slack) {
    const { spots } = this.views[at].columns[place];
    const { wide, high } = SIZES[place];
    let found = -1;
    let near = slack;
    spots.forEach(({ x, y }, index) => {
      const off = Math.hypot(
        Math.max(x - point.x, 0, point.x - x - wide * this.unit),
        Math.max(y - point.y, 0, point.y - y - high * this.unit),
      );
      if (off < near || (off === 0 && near === 0)) {
        near = off;
        found = index;
      }
    });
    return found;
  }

  /**
   * The middle of what is seen of each block in a column.
   * @param {number} at
   * @param {Place} place
   * @returns {Spot[]}
   */
  middles(at, place) {
    const { spots } = this.views[at].columns[place];
    const { wide, high } = SIZES[place];
    return spots.map(({ x, y }, index) => {
      const next = spots[index + 1] ?? { x: Infinity, y: Infinity };
      const covered = next.x - x < wide * this.unit && next.y - y < high * this.unit &&
        next.x >= x && next.y >= y;
      const right = covered && next.x > x ? next.x - x : wide * this.unit;
      const down = covered && next.y > y ? next.y - y : high * this.unit;
      return { x: x + right / 2, y: y + down / 2 };
    });
  }

  /**
   * The column under a point of the screen.
   * @param {{ clientX: number, clientY: number }} point
   * @returns {{ at: number, place: Place } | null} null beside the mats
   */
  columnAt({ clientX, clientY }) {
    for (let at = 0; at < this.#mat.length; at += 1) {
      const { left, right, top, bottom } = this.views[at].root.getBoundingClientRect();
      if (clientX >= left && clientX < right && clientY >= top && clientY < bottom) {
        const share = (clientX - left) / (right - left);
        return { at, place: this.columns[Math.floor(share * this.columns.length)] };
      }
    }
    return null;
  }

  /**
   * Leave a trace of blocks that were traded.
   * @param {number} at
   * @param {Place} place
   * @param {Spot[]} spots where they were
   * @returns {void}
   */
  trace(at, place, spots) {
    this.views[at].traces.replaceChildren(...spots.map((spot) => {
      const block = drawBlock(place);
      moveBlock(block, spot, this.unit);
      return block;
    }));
  }
}
