/** The sheet over a board with what is written on it: each stroke as lines with a rim of paper. */
import { html, put, svg } from "../../../widgets/shared/svg.js";
import { lines } from "./strokes.js";

/** @typedef {import("./strokes.js").Stroke} Stroke */

// Pixels.
const RIM = 3;

/**
 * @returns {{
 *   sheet: HTMLElement, paper: SVGElement, size: { width: number, height: number },
 *   paint: (strokes: Stroke[]) => void, draw: (index: number, stroke: Stroke) => void,
 *   fit: (width: number, height: number) => boolean,
 * }} the sheet and the paper on it, which takes the pointers; paint() draws all strokes anew, and
 *   draw() one of them, of which it may have a part already; fit() says whether the size is another
 */
export function makeInk() {
  const size = { width: 1, height: 1 };
  // The rim sets what is written apart from whatever it crosses.
  const layers = [svg("g", { class: "ink-rims" }), svg("g", { class: "ink-lines" })];
  const paper = svg("svg", { "class": "session-ink", "aria-hidden": "true" }, ...layers);
  const sheet = html("div", { class: "kit kit-session session-sheet" }, paper);

  /**
   * @param {number} index
   * @param {Stroke} stroke
   */
  function draw(index, stroke) {
    for (const layer of layers) {
      const place = layer.children[index] ?? layer.appendChild(svg("g"));
      const rim = layer === layers[0] ? RIM : 0;
      for (const [number, { d, width }] of lines(stroke, size).entries()) {
        const path = place.children[number] ?? place.appendChild(svg("path"));
        if (path.getAttribute("d") !== d) {
          put(path, { d, "stroke-width": width + rim });
        }
      }
    }
  }

  return {
    sheet,
    paper,
    size,
    draw,
    paint(strokes) {
      for (const layer of layers) {
        layer.replaceChildren();
      }
      strokes.forEach((stroke, index) => draw(index, stroke));
    },
    fit(width, height) {
      const changed = width !== size.width || height !== size.height;
      if (changed) {
        Object.assign(size, { width, height });
        put(paper, { width, height });
      }
      return changed;
    },
  };
}
