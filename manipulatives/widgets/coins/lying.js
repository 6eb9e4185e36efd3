/** The coins on the mat as elements: each stays the same element as long as it lies there. */
import { html, svg } from "../shared/svg.js";
import { coinOf } from "./state/coinage.js";
import { drawCoin } from "./drawing.js";
import { LINE, MAT, reach } from "./state/places.js";
import { counting } from "./state/tray.js";

/**
 * @typedef {import("./state/places.js").Lying} Lying
 * @typedef {import("./drawing.js").Look} Look
 * @typedef {{ x: number, y: number }} Point
 * @typedef {{ lying: Lying, drawn: SVGGElement, handle: HTMLElement }} Piece
 */

const FIGURE = 62;
const LEFT_BELOW = 10;

/**
 * The coins that lie on a mat.
 * @returns {{
 *   coins: SVGGElement,
 *   figures: SVGGElement,
 *   handles: HTMLElement,
 *   pieces: () => Piece[],
 *   lay: (tray: Lying[], look: Look, from: Point | null) => void,
 *   redraw: () => void,
 *   count: (tray: Lying[], look: Look, many: number, type: number) => void,
 * }} what holds the coins, the figures below them, and what a finger takes of each; the elements of
 *   each; lay coins as a tray says, those that are new or moved coming from a point if one is
 *   given; forget how they look; write the figures of counting on below so many of them
 */
export function makeLying() {
  const coins = svg("g", { class: "coins-lying" });
  const figures = svg("g", { class: "coins-figures" });
  const handles = html("div");
  /** @type {Piece[]} */
  let there = [];
  let stale = false;

  /**
   * Take the elements of a coin that lies just so, or of one that lay elsewhere before.
   * @param {Piece[]} pool
   * @param {Lying} lying
   * @param {boolean} moved
   * @returns {Piece | undefined}
   */
  function take(pool, lying, moved) {
    const index = pool.findIndex(({ lying: { coin, x, y } }) =>
      coin === lying.coin && (moved || (x === lying.x && y === lying.y)));
    return index < 0 ? undefined : pool.splice(index, 1)[0];
  }

  return {
    coins,
    figures,
    handles,
    pieces: () => there,
    redraw() {
      stale = true;
    },
    lay(tray, look, from) {
      const pool = [...there];
      const same = tray.map((lying) => take(pool, lying, false));
      const begin = new Map();
      there = tray.map((lying, index) => {
        const kind = coinOf(look.money, lying.coin);
        const old = same[index] ?? take(pool, lying, true);
        const drawn = old && !stale ? old.drawn : drawCoin(kind, look);
        const handle = old?.handle ?? html("div", { class: "coins-handle is-round" });
        handle.style.setProperty("--size", String(2 * reach(kind)));
        if (!same[index] && (from || !old)) {
          begin.set(drawn, from ?? lying);
        } else if (stale) {
          begin.set(drawn, old?.lying ?? lying);
        }
        return { lying, drawn, handle };
      });
      stale = false;
      const elements = there.map(({ drawn }) => drawn);
      if (elements.length !== coins.childElementCount ||
        elements.some((element, index) => element !== coins.children[index])) {
        coins.replaceChildren(...elements);
      }
      // Handles stay in their order: one that is put elsewhere in the document loses the focus.
      for (const { handle } of pool) {
        handle.remove();
      }
      // Where a coin begins it is at once; from there it glides.
      for (const [element, point] of begin) {
        element.style.transition = "none";
        element.style.transform = shift(point);
      }
      if (begin.size) {
        coins.getBoundingClientRect();
      }
      for (const { lying, drawn, handle } of there) {
        drawn.style.transition = "";
        drawn.style.transform = shift(lying);
        handle.style.setProperty("--x", String(lying.x));
        handle.style.setProperty("--y", String(lying.y));
        if (handle.parentNode !== handles) {
          handles.append(handle);
        }
      }
    },
    count(tray, { money }, many, type) {
      let all = 0;
      const size = Math.max(FIGURE, type);
      figures.replaceChildren(...counting(tray).slice(0, many).map((place) => {
        const { coin, x, y } = tray[place];
        all += Number(coin);
        const below = y + reach(coinOf(money, coin)) + LINE - LEFT_BELOW;
        const at = { x, y: Math.min(below, MAT - LEFT_BELOW), "font-size": size };
        return svg("text", { ...at, "stroke-width": size / 6 }, String(all));
      }));
    },
  };
}

/**
 * @param {Point} point
 * @returns {string} CSS
 */
function shift({ x, y }) {
  return `translate(${x}px, ${y}px)`;
}
