/** The squared sheet: a square for each digit and each mark, walked by arrow keys. */
import WORDS from "../../data/place_words.json" with { type: "json" };
import { ICONS } from "../shared/controls.js";
import { onKeys } from "../shared/keys.js";
import { html, icon, put } from "../shared/svg.js";
import { inSigns, rowName, signOf } from "./describe.js";
import { NAMES, isOpen, readAt, unit } from "./written.js";

/**
 * @typedef {import("./written.js").Sum} Sum
 * @typedef {import("./written.js").Row} Row
 * @typedef {{ row: Row, column: number }} Place
 *
 * @typedef {object} Look
 * @property {boolean} headings
 * @property {boolean} marks
 * @property {boolean} below whether carry marks stand below the answer
 * @property {boolean} open whether it can be written to
 *
 * @typedef {{ kind: "number" | Row, index: number }} Line a row of the sheet
 * @typedef {{ element: HTMLElement, line: Line, column: number }} Square
 * @typedef {{ text: string, as: string }} Written a number in a square, with the class of its look
 */

const LETTERS = NAMES.map((name) => /** @type {Record<string, string>} */ (WORDS.short)[name]);
const RIGHT = "M4 13L10 19L20 6";
/** @type {Record<string, [number, number]>} */
const WAYS = {
  ArrowUp: [-1, 0], ArrowDown: [1, 0], ArrowLeft: [0, -1], ArrowRight: [0, 1],
};

/**
 * Which rows a sheet has.
 * @param {Sum} sum
 * @param {Look} look
 * @returns {Line[]} from above to below
 */
export function linesOf(sum, { marks, below }) {
  const adding = sum.operation === "+";
  const numbers = sum.numbers.map((_, index) => line("number", index));
  const marked = marks && sum.form !== "line" && !(adding && sum.form === "parts");
  const under = adding && below;
  return [
    ...(marked && !under ? [line("marks")] : []),
    ...numbers,
    ...(sum.form === "parts" ? [line("parts")] : []),
    line("answer"),
    ...(marked && under ? [line("marks")] : []),
  ];
}

/**
 * @param {Line["kind"]} kind
 * @param {number} [index]
 * @returns {Line}
 */
function line(kind, index = 0) {
  return { kind, index };
}

/**
 * Make a sheet.
 * @param {object} actions
 * @param {(key: string) => void} actions.type a digit or "back" for the current square
 * @param {() => void} actions.check the place of the current square
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   element: HTMLElement, current: () => Place | null, size: { across: number, down: number },
 *   build: (sum: Sum, look: Look) => void,
 *   paint: (sum: Sum, seen: { verdicts: Map<number, boolean>, column: number | null }) => void,
 * }} size says how many squares there are across and down, a heading for half a one
 */
export function makeGrid({ type, check }, lifetime) {
  const element = html("div", { class: "columns-grid", role: "grid" });
  /** @type {Square[][]} */
  let squares = [];
  /** @type {HTMLElement[]} */
  let heads = [];
  let at = [0, 0];
  let open = false;
  const size = { across: 0, down: 0 };

  /** @returns {Square | undefined} */
  function here() {
    return squares[at[0]]?.[at[1]];
  }

  /** @returns {Place | null} the current square, if it may be written to */
  function current() {
    const square = here();
    if (!open || !square || square.element.getAttribute("aria-readonly") === "true") {
      return null;
    }
    return { row: /** @type {Row} */ (square.line.kind), column: square.column };
  }

  /**
   * Make another square the current one.
   * @param {number} down
   * @param {number} across
   * @param {FocusOptions | null} focus how the focus goes there, if it does
   */
  function go(down, across, focus) {
    const next = squares[down]?.[across];
    if (!next) {
      return;
    }
    const was = here()?.element;
    if (was) {
      put(was, { tabindex: -1 });
      was.classList.remove("is-current");
    }
    at = [down, across];
    put(next.element, { tabindex: 0 });
    next.element.classList.toggle("is-current", current() !== null);
    if (focus) {
      next.element.focus(focus);
    }
  }

  onKeys(element, (key) => {
    const [down, across] = at;
    if (key in WAYS) {
      const [rows, columns] = WAYS[key];
      go(down + rows, across + columns, {});
    } else if (key === "Home" || key === "End") {
      go(down, key === "Home" ? 0 : squares[down].length - 1, {});
    } else if (!current()) {
      return false;
    } else if (/^[0-9]$/.test(key)) {
      type(key);
    } else if (key === "Backspace" || key === "Delete") {
      type("back");
    } else if (key === "Enter") {
      check();
    } else {
      return false;
    }
    return true;
  }, lifetime);

  element.addEventListener("pointerdown", (event) => {
    const target = /** @type {Element} */ (event.target);
    squares.forEach((row, down) => row.forEach((square, across) => {
      if (square.element.contains(target)) {
        go(down, across, { preventScroll: true });
        event.preventDefault();
      }
    }));
  }, lifetime);

  return {
    element,
    current,
    size,
    build(sum, look) {
      const focused = current();
      ({ open } = look);
      const lines = linesOf(sum, look);
      // The sign has a column of its own, which in an addition takes what is carried farthest.
      const across = Math.max(...sum.numbers.map((number) => String(number).length)) + 1;
      const columns = Array.from({ length: across }, (_, index) => across - 1 - index);
      squares = lines.map((each) => columns.map((column) => {
        const attributes = { class: `columns-square is-${each.kind}`, role: "gridcell" };
        const square = html("div", attributes);
        return { element: square, line: each, column };
      }));
      heads = columns.map((column) => {
        const place = NAMES[column].replace(" ", "-");
        const attributes = { class: `columns-head of-${place}`, role: "columnheader" };
        return html("div", attributes, column < sum.answer.length ? LETTERS[column] : "");
      });
      const rows = squares.map((row, down) => html(
        "div", { class: `columns-row has-${lines[down].kind}`, role: "row" },
        ...row.map((square) => square.element),
      ));
      const head = html("div", { class: "columns-row columns-heads", role: "row" }, ...heads);
      element.replaceChildren(...(look.headings ? [head] : []), ...rows);
      put(element, { "aria-label": inSigns(sum), "data-form": sum.form });
      size.across = across;
      size.down = lines.length + (look.headings ? 0.5 : 0);
      const place = focused ?? { row: "answer", column: 0 };
      const down = lines.findIndex(({ kind }) => kind === place.row);
      const found = columns.indexOf(place.column);
      dressAll(sum);
      const answer = lines.findIndex(({ kind }) => kind === "answer");
      go(down < 0 ? answer : down, found < 0 ? across - 1 : found, null);
    },
    paint(sum, { verdicts, column }) {
      for (const square of squares.flat()) {
        const right = square.line.kind === "answer" ? verdicts.get(square.column) : undefined;
        paintSquare(sum, square, right, square.column === column);
      }
      heads.forEach((head, index) =>
        head.classList.toggle("is-worked", heads.length - 1 - index === column));
    },
  };

  /** @param {Sum} sum */
  function dressAll(sum) {
    for (const { element: square, line: { kind }, column } of squares.flat()) {
      const free = kind !== "number" && column < sum.answer.length && isOpen(sum, kind, column);
      square.classList.toggle("is-free", open && free);
      square.classList.toggle("is-wide", sum.form === "parts");
      put(square, { "tabindex": -1, "aria-readonly": !(open && free) });
    }
  }
}

/**
 * Show what stands in a square, unless it stands there already.
 * @param {Sum} sum
 * @param {Square} square
 * @param {boolean | undefined} right what was found of it
 * @param {boolean} worked whether its column is worked on
 */
function paintSquare(sum, square, right, worked) {
  const { element, line: { kind, index }, column } = square;
  const texts = textsIn(sum, square.line, column);
  const part = sum.form === "parts" && (kind === "number" || kind === "parts");
  const plus = part && texts.length > 0 && hasMore(sum, kind, index, column);
  const look = JSON.stringify([texts, right, worked, plus]);
  if (look === element.dataset.look) {
    return;
  }
  element.dataset.look = look;
  element.replaceChildren(...texts.map(({ text, as }) => html("span", { class: as }, text)));
  if (right !== undefined) {
    element.append(icon(right ? RIGHT : ICONS.reset));
  }
  const { classList } = element;
  classList.toggle("is-right", right === true);
  classList.toggle("is-again", right === false);
  classList.toggle("is-worked", worked);
  classList.toggle("has-plus", plus);
  put(element, { "aria-label": labelOf(sum, square, texts, right) });
}

/**
 * @param {Sum} sum
 * @param {Line} line
 * @param {number} column
 * @returns {Written[]} what stands in a square
 */
function textsIn(sum, { kind, index }, column) {
  if (kind === "number") {
    return numberIn(sum, index, column);
  }
  if (kind === "marks") {
    const marks = sum.marks[column] ?? [];
    return marks.map((mark, place) =>
      ({ text: String(mark), as: place < marks.length - 1 ? "is-crossed" : "" }));
  }
  const number = readAt(sum, kind, column);
  return number === null ? [] : [{ text: String(number), as: "" }];
}

/**
 * @param {Sum} sum
 * @param {number} index
 * @param {number} column
 * @returns {Written[]} the digit of a number, crossed out where it was rewritten; the sign
 */
function numberIn(sum, index, column) {
  const text = String(sum.numbers[index]);
  const digit = text[text.length - 1 - column];
  if (digit !== undefined) {
    const crossed = sum.operation === "-" && index === 0 && sum.marks[column].length > 0;
    const number = Number(digit) * unit(sum, column);
    return [{ text: String(number), as: crossed ? "is-crossed" : "" }];
  }
  const last = index === sum.numbers.length - 1;
  const width = Math.max(...sum.numbers.map((number) => String(number).length));
  return last && column === width ? [{ text: signOf(sum), as: "columns-sign" }] : [];
}

/**
 * @param {Sum} sum
 * @param {string} kind
 * @param {number} index
 * @param {number} column
 * @returns {boolean} whether something stands to the left, to be joined with a plus
 */
function hasMore(sum, kind, index, column) {
  return kind === "number"
    ? column + 1 < String(sum.numbers[index]).length
    : sum.parts.slice(column + 1).some((part) => part !== null);
}

/**
 * @param {Sum} sum
 * @param {Square} square
 * @param {Written[]} texts
 * @param {boolean | undefined} right
 * @returns {string} what a square is and says
 */
function labelOf(sum, { line: { kind, index }, column }, texts, right) {
  const place = column < sum.answer.length ? `, ${NAMES[column]}` : "";
  const name = kind === "number" ? String(sum.numbers[index]) : rowName(sum, kind);
  const crossed = kind === "number" && texts[0]?.as === "is-crossed";
  const said = texts.at(-1)?.text ?? "empty";
  const judged = right === undefined ? "" : right ? ", right" : ", look once more";
  return `${name}${place}: ${said}${crossed ? ", crossed out" : ""}${judged}`;
}
