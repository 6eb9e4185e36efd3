/** The layer over a board that shows strokes: each as lines with a light rim. */
import { html, put, svg } from "../../../widgets/shared/svg.js";
import { linesOf } from "./strokes.js";

/** @typedef {import("./strokes.js").Stroke} Stroke */

const RIM_PX = 3;

/**
 * @returns {{
 *   sheet: HTMLElement, paper: SVGElement, size: { width: number, height: number },
 *   paint: (strokes: Stroke[]) => void, draw: (index: number, stroke: Stroke) => void,
 *   fit: (width: number, height: number) => boolean,
 * }} the layer and the SVG in it, which receives the pointer events; paint() draws all strokes
 *   again; draw() draws one, adding to what is drawn of it already; fit() returns whether the size
 *   changed
 */
export function makeInk() {
  const size = { width: 1, height: 1 };
  // The rim separates a stroke from what it crosses.
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
      const rim = layer === layers[0] ? RIM_PX : 0;
      for (const [number, { d, width }] of linesOf(stroke, size).entries()) {
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
