/** The chart on the screen: made once for its numbers; a press paints only what it changes. */
import { numberInWords } from "../shared/state/number_words.js";
import { html, put } from "../shared/svg.js";
import { blanks, cells } from "./count.js";
import { readable } from "./hints.js";

/**
 * @typedef {import("./count.js").Settings} Settings
 * @typedef {import("./count.js").Marks} Marks
 * @typedef {{ state: string, text: string }} Look of a cell
 */

/**
 * What each cell looks like.
 * @param {Marks} marks
 * @param {Settings} settings
 * @param {number | null} open the cell that is written in just now, so not judged yet
 * @returns {(number: number) => Look}
 */
export function looks(marks, settings, open) {
  const { counted, tapped, written } = marks;
  const { mode } = settings;
  const covered = new Set(blanks(settings));
  const canBeRead = readable(marks, settings);
  const lit = new Set(counted);
  const last = counted[counted.length - 1];
  return (number) => {
    const text = String(number);
    if (mode === "write" && covered.has(number)) {
      const digits = written[text] ?? "";
      const judged = canBeRead(number) ? "right" : "wrong";
      return { state: digits ? (number === open ? "open" : judged) : "blank", text: digits };
    }
    if (mode === "wipe" && lit.has(number)) {
      return { state: "wiped", text: "" };
    }
    if (number === tapped) {
      return { state: "tapped", text: canBeRead(number) ? text : "" };
    }
    if (!canBeRead(number)) {
      return { state: "hidden", text: "" };
    }
    return { state: number === last ? "at" : (lit.has(number) ? "counted" : "plain"), text };
  };
}

/**
 * What a cell is called for those who listen: no more than is to be seen.
 * @param {number} number
 * @param {Look} look
 * @param {string} vocabulary
 * @returns {string}
 */
export function called(number, { state, text }, vocabulary) {
  const words = numberInWords(number, vocabulary);
  switch (state) {
    case "blank":
    case "hidden":
      return state;
    case "open":
      return text;
    case "right":
      return `${words}, right`;
    case "wrong":
      return `${text}, not right yet`;
    case "wiped":
      return `${words}, wiped`;
    case "tapped":
      return `${text ? words : "hidden"}, not next`;
    case "counted":
      return `${words}, counted`;
    case "at":
      return `${words}, counted last`;
    default:
      return words;
  }
}

/**
 * @typedef {object} Grid
 * @property {HTMLElement} area the chart, in a place where it can be scrolled
 * @property {(settings: Settings) => void} draw make the chart afresh, when its numbers changed
 * @property {(look: (number: number) => Look, here: number, vocabulary: string) => void} paint
 *   show what changed; `here` is where the keys are
 * @property {(number: number) => void} focus
 * @property {(number: number) => void} follow scroll to a cell, inside the area alone
 * @property {() => void} measure the area has another size
 * @property {(target: EventTarget | null) => number | null} numberAt whose cell something is in
 */

/**
 * Make a chart.
 * @returns {Grid}
 */
export function makeGrid() {
  const grid = html("div", { class: "chart-grid", role: "grid" });
  const area = html("div", { class: "chart-area" }, grid);
  /** @type {Map<number, HTMLElement>} */
  let made = new Map();
  /** @type {WeakMap<Element, number>} */
  const named = new WeakMap();
  /** @type {Map<number, string>} */
  let shown = new Map();
  let drawn = "";
  /** @type {number | null} */
  let tabbed = null;
  let place = { first: 0, width: 1 };
  // Asked for once, since the page would have to be laid out for every answer.
  let size = { wide: 0, high: 0, across: 0, down: 0 };

  /**
   * @param {number} from the first number of a row
   * @param {Settings} settings
   */
  function row(from, { last, width }) {
    const numbers = cells({ first: from, last: Math.min(last, from + width - 1) });
    return html("div", { class: "chart-row", role: "row" }, ...numbers.map((number) => {
      const cell = html("div", { class: "chart-cell", role: "gridcell", tabindex: -1 });
      made.set(number, cell);
      named.set(cell, number);
      return cell;
    }));
  }

  return {
    area,
    draw(settings) {
      const { first, last, width } = settings;
      put(grid, { "aria-label": `Numbers from ${first} to ${last}` });
      const now = [first, last, width].join();
      if (now === drawn) {
        return;
      }
      drawn = now;
      place = { first, width };
      made = new Map();
      shown = new Map();
      tabbed = null;
      const rows = Math.ceil((last - first + 1) / width);
      area.style.setProperty("--columns", String(width));
      area.style.setProperty("--rows", String(rows));
      area.style.setProperty("--digits", String(String(last).length));
      grid.replaceChildren(
        ...Array.from({ length: rows }, (_, index) => row(first + index * width, settings)),
      );
    },
    paint(look, here, vocabulary) {
      for (const [number, cell] of made) {
        const { state, text } = look(number);
        const now = `${state} ${text} ${vocabulary}`;
        if (shown.get(number) !== now) {
          shown.set(number, now);
          const label = called(number, { state, text }, vocabulary);
          put(cell, { "data-state": state, "aria-label": label });
          if (cell.textContent !== text) {
            cell.textContent = text;
          }
        }
      }
      if (here !== tabbed) {
        if (tabbed !== null) {
          put(/** @type {HTMLElement} */ (made.get(tabbed)), { tabindex: -1 });
        }
        put(/** @type {HTMLElement} */ (made.get(here)), { tabindex: 0 });
        tabbed = here;
      }
    },
    focus(number) {
      made.get(number)?.focus({ preventScroll: true });
    },
    follow(number) {
      const { first, width } = place;
      const { wide, high, across, down } = size;
      if (high > down) {
        const each = high / Math.ceil(made.size / width);
        const top = Math.floor((number - first) / width) * each;
        // A row more, so that what comes next is seen as well.
        area.scrollTop = Math.max(top + 2 * each - down, Math.min(top - each, area.scrollTop));
      }
      if (wide > across) {
        const each = wide / width;
        const left = ((number - first) % width) * each;
        area.scrollLeft = Math.max(left + each - across, Math.min(left, area.scrollLeft));
      }
    },
    measure() {
      const { scrollWidth: wide, scrollHeight: high } = area;
      size = { wide, high, across: area.clientWidth, down: area.clientHeight };
    },
    numberAt(target) {
      const cell = target instanceof Element ? target.closest(".chart-cell") : null;
      return (cell && named.get(cell)) ?? null;
    },
  };
}
