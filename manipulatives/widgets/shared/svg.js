/** Elements in one line each, and where a pointer is on a drawing. */

const SVG = "http://www.w3.org/2000/svg";

/** @typedef {Record<string, unknown>} Attributes  null takes one away */

/**
 * Give an element attributes and children.
 * @template {Element} Made
 * @param {Made} element
 * @param {Attributes} [attributes]
 * @param {...(Node | string)} children added at its end; text is never read as HTML
 * @returns {Made} the element
 */
export function put(element, attributes = {}, ...children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null) {
      element.removeAttribute(name);
    } else {
      element.setAttribute(name, String(value));
    }
  }
  element.append(...children);
  return element;
}

/**
 * An element of a drawing.
 * @template {keyof SVGElementTagNameMap} Name
 * @param {Name} name such as "path"
 * @param {Attributes} [attributes]
 * @param {...(Node | string)} children
 * @returns {SVGElementTagNameMap[Name]} the element
 */
export function svg(name, attributes, ...children) {
  return put(document.createElementNS(SVG, name), attributes, ...children);
}

/**
 * An element of a page.
 * @template {keyof HTMLElementTagNameMap} Name
 * @param {Name} name such as "button"
 * @param {Attributes} [attributes]
 * @param {...(Node | string)} children
 * @returns {HTMLElementTagNameMap[Name]} the element
 */
export function html(name, attributes, ...children) {
  return put(document.createElement(name), attributes, ...children);
}

/**
 * An icon in lines of the text's colour. Icons are drawn, because the kit's font has no arrows
 * or check marks.
 * @param {string} lines the `d` of a path in a field of 24 by 24 units
 * @returns {SVGSVGElement} the icon, silent for those who listen
 */
export function icon(lines) {
  const frame = { class: "kit-icon", viewBox: "0 0 24 24", "aria-hidden": "true" };
  return svg("svg", frame, svg("path", { d: lines }));
}

/**
 * The kit's sign for what can be moved: three dots in a ring around the origin, in the colour
 * that the CSS of its place gives to `color`.
 * @param {number} radius in units of the drawing
 * @returns {SVGGElement} the grip; it lets the pointer through to what it sits on
 */
export function grip(radius) {
  const dots = [-0.45, 0, 0.45].map((right) =>
    svg("circle", { cx: right * radius, r: 0.17 * radius }));
  const ring = svg("circle", { class: "kit-grip-ring", r: radius, "stroke-width": 0.3 * radius });
  return svg("g", { class: "kit-grip" }, ring, ...dots);
}

/**
 * Where a pointer is, in the units of a drawing's viewBox.
 * @param {SVGGraphicsElement} drawing
 * @param {{ clientX: number, clientY: number }} event
 * @returns {{ x: number, y: number }} the point
 */
export function pointIn(drawing, { clientX, clientY }) {
  return new DOMPoint(clientX, clientY).matrixTransform(drawing.getScreenCTM()?.inverse());
}
