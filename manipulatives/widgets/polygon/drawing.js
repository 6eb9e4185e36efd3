/**
 * The paper as elements, made once and painted from then on: dots, guide, sides, cuts and marks in
 * a drawing, and over it what a finger takes.
 */
import MARKS from "../../data/shape_marks.json" with { type: "json" };
import { grip, html, icon, put, svg } from "../shared/svg.js";
import { cutSpot, distance, marksOf, middle } from "./state/marks.js";
import { SPACES, UNIT, dots, place, range } from "./state/paper.js";

/**
 * @typedef {import("./state/paper.js").Grid} Grid
 * @typedef {import("./state/paper.js").Shape} Shape
 * @typedef {import("./state/paper.js").Spot} Spot
 * @typedef {ReturnType<typeof makeSheet>} Sheet
 *
 * @typedef {object} Painted
 * @property {Shape} shape
 * @property {Grid} grid
 * @property {Shape | null} guide
 * @property {string[]} show
 * @property {string} count
 * @property {import("./state/look.js").Look} look the shape, looked at already
 * @property {boolean} movable whether points can be taken
 * @property {boolean} pointed whether points are seen
 * @property {number | null} picked
 */

// Lengths in hundredths of a space, as in Python's drawings/polygon.py.
const PAPER = MARKS.paper;
const SIZE = SPACES * UNIT;
const WHOLE = SIZE + 2 * PAPER.margin;
const TYPE_PX = 18;
// A side on which there is room for a handle between those of its ends.
const ROOM_PX = 104;
const ROLES = ["mirror", "right", "equal", "parallel", "crossing"];
const PLUS = "M5 12H19M12 5V19";

/**
 * @returns {{
 *   frame: HTMLElement,
 *   drawing: SVGSVGElement,
 *   handles: HTMLElement,
 *   pen: HTMLElement,
 *   points: () => HTMLElement[],
 *   paint: (painted: Painted) => void,
 *   unit: () => number,
 *   fit: () => void,
 *   layDots: (grid: Grid) => void,
 *   movePen: (spot: Spot) => void,
 *   showSpots: (spots: Spot[]) => void,
 *   preview: (spots: Spot[], wrong: boolean) => void,
 * }} the drawing in its frame, and what a finger takes; paint a shape; how many pixels a hundredth
 *   of a space has; fit handles and numbers to the size on the screen; lay dots; put the pen; show
 *   where a cut can go through, and what would be drawn next
 */
export function makeSheet() {
  const lines = Object.fromEntries([
    "fill", "dots", "guide", "outline", "cuts", ...ROLES, "spots", "preview",
  ].map((name) => [name, svg("path", { class: `polygon-${name}` })]));
  const numbers = svg("g", { class: "polygon-numbers" });
  const sheet = svg("rect", {
    class: "polygon-sheet", x: 4 - PAPER.margin, y: 4 - PAPER.margin, width: WHOLE - 8,
    height: WHOLE - 8, rx: 14,
  });
  const drawing = svg(
    "svg", { viewBox: `${-PAPER.margin} ${-PAPER.margin} ${WHOLE} ${WHOLE}`, role: "img" },
    sheet, ...Object.values(lines), numbers,
  );
  const handles = html("div", { class: "polygon-handles", role: "group", "aria-label": "Points" });
  const pen = html("div", { class: "polygon-pen", role: "button", tabindex: 0 }, ring());
  const frame = html("div", { class: "polygon-paper" }, drawing, pen, handles);
  const plusses = html("div", { class: "polygon-plusses" });
  handles.append(plusses);
  let unit = 0;

  /** @returns {HTMLElement[]} */
  function points() {
    return /** @type {HTMLElement[]} */ ([...handles.children].slice(1));
  }

  /**
   * @param {Painted} painted
   * @returns {void}
   */
  function paint({ shape, grid, guide, show, count, look, movable, pointed, picked }) {
    const { curve, closed } = shape;
    const hollow = curve ? [...(curve === "circle" ? [0, 1] : [])] : look.outline.straight;
    const filled = closed && (curve || look.outline.polygon);
    const path = pathOf(shape, grid);
    draw(lines.guide, guide ? pathOf(guide, grid) : "");
    draw(lines.fill, filled ? path : "");
    draw(lines.outline, path);
    const cuts = (shape.cuts ?? []).map((cut) => chain(cut.map((at) => cutSpot(shape, grid, at))));
    draw(lines.cuts, cuts.join(""));
    const marks = marksOf(shape, grid, [...show, "crossing"], count, look);
    for (const role of ROLES) {
      const ofRole = marks.filter((mark) => mark.role === role);
      draw(lines[role], ofRole.map(({ points: [spot, ...others] }) =>
        (others.length ? chain([spot, ...others]) : circle(spot, PAPER.crossing))).join(""));
    }
    const texts = marks.filter(({ role }) => role === "number");
    if (texts.length || numbers.childElementCount) {
      numbers.replaceChildren(...texts.map(({ points: [{ x, y }], text }) =>
        svg("text", { x, y }, text)));
    }
    paintPoints(shape, grid, hollow, movable, pointed, picked);
  }

  /**
   * @param {Shape} shape
   * @param {Grid} grid
   * @param {number[]} hollow
   * @param {boolean} movable
   * @param {boolean} pointed
   * @param {number | null} picked
   */
  function paintPoints(shape, grid, hollow, movable, pointed, picked) {
    const many = shape.points.length;
    handles.append(...range(many - points().length).map(() =>
      html("div", { class: "polygon-point" }, handleSign())));
    points().slice(many).forEach((point) => point.remove());
    const spots = shape.points.map((point) => place(point, grid));
    points().forEach((point, index) => {
      stand(point, spots[index]);
      point.classList.toggle("is-hollow", hollow.includes(index));
      point.classList.toggle("is-first", index === 0 && !shape.closed && many > 2);
      point.classList.toggle("is-picked", index === picked);
    });
    frame.classList.toggle("is-movable", movable);
    frame.classList.toggle("is-pointed", pointed);
    // While a point is picked, all of the paper is there to put it.
    const open = !shape.closed || shape.curve || picked !== null;
    paintPlusses(movable && !open ? spots : []);
  }

  /** @param {Spot[]} spots of a shape whose sides can have more points */
  function paintPlusses(spots) {
    const between = spots.map((spot, index) => {
      const next = spots[(index + 1) % spots.length];
      return { index, spot: middle(spot, next), far: distance(spot, next) };
    }).filter(({ far }) => far * unit >= ROOM_PX);
    while (plusses.childElementCount > between.length) {
      plusses.lastElementChild?.remove();
    }
    while (plusses.childElementCount < between.length) {
      plusses.append(html("div", { class: "polygon-plus" }, icon(PLUS)));
    }
    between.forEach(({ index, spot }, at) => {
      const plus = /** @type {HTMLElement} */ (plusses.children[at]);
      plus.dataset.side = String(index);
      stand(plus, spot);
    });
  }

  return {
    frame,
    drawing,
    handles,
    pen,
    points,
    paint,
    unit: () => unit,
    fit() {
      unit = Math.min(frame.clientWidth, frame.clientHeight) / WHOLE;
      frame.style.setProperty("--unit", `${unit}px`);
      put(numbers, { "font-size": Math.max(PAPER.number, unit ? TYPE_PX / unit : 0) });
    },
    layDots(grid) {
      draw(lines.dots, dots(grid).map((dot) => spotPath(place(dot, grid))).join(""));
    },
    movePen(spot) {
      stand(pen, spot);
    },
    showSpots(spots) {
      draw(lines.spots, spots.map(spotPath).join(""));
    },
    preview(spots, wrong) {
      draw(lines.preview, spots.length ? chain(spots) + spotPath(spots[spots.length - 1]) : "");
      lines.preview.classList.toggle("is-wrong", wrong);
    },
  };
}

/**
 * @param {SVGPathElement} path
 * @param {string} d
 */
function draw(path, d) {
  if (path.getAttribute("d") !== d) {
    put(path, { d });
  }
}

/**
 * @param {HTMLElement} element
 * @param {Spot} spot where its middle comes to be
 */
function stand(element, { x, y }) {
  const where = [x, y].map((part) => `calc(${(part - SIZE / 2).toFixed(2)} * var(--unit))`);
  // Only what moves is touched: the others need no new layout.
  if (element.dataset.at !== String(where)) {
    element.dataset.at = String(where);
    element.style.translate = where.join(" ");
  }
}

/** @returns {SVGSVGElement} the sign of a point that can be taken */
function handleSign() {
  return svg("svg", { "viewBox": "-16 -16 32 32", "aria-hidden": true }, grip(11));
}

/** @returns {SVGSVGElement} the sign of the pen */
function ring() {
  const path = svg("path", { d: "M-14 0H-5M5 0H14M0 -14V-5M0 5V14" });
  return svg("svg", { "viewBox": "-16 -16 32 32", "aria-hidden": true }, path);
}

/**
 * The outline of a shape.
 * @param {Shape} shape
 * @param {Grid} grid
 * @returns {string} the `d` of a path
 */
export function pathOf({ points, closed, curve }, grid) {
  const spots = points.map((point) => place(point, grid));
  if (!curve) {
    return spots.length ? chain(spots) + (closed ? "Z" : "") : "";
  }
  const [start, end] = spots;
  const radius = distance(start, end);
  if (curve === "circle") {
    return circle(start, radius);
  }
  if (curve === "half circle") {
    return `${chain(spots)}A${radius / 2} ${radius / 2} 0 0 0 ${start.x} ${start.y}Z`;
  }
  const other = { x: start.x + start.y - end.y, y: start.y + end.x - start.x };
  return `${chain(spots)}A${radius} ${radius} 0 0 1 ${other.x} ${other.y}Z`;
}

/**
 * @param {Spot[]} spots
 * @returns {string} straight lines from one to the next; of one alone a dot
 */
function chain(spots) {
  const path = `M${spots.map(({ x, y }) => `${x} ${y}`).join("L")}`;
  return spots.length > 1 ? path : `${path}h0`;
}

/**
 * @param {Spot} spot
 * @returns {string} a line without length, which a round end makes a dot
 */
function spotPath({ x, y }) {
  return `M${x} ${y}h0`;
}

/**
 * @param {Spot} centre
 * @param {number} radius
 * @returns {string}
 */
function circle({ x, y }, radius) {
  const half = `a${radius} ${radius} 0 1 0`;
  return `M${x - radius} ${y}${half} ${2 * radius} 0${half} ${-2 * radius} 0`;
}
