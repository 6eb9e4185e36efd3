/** The root of a round, and the manipulative in it. */
import { html } from "../../shared/svg.js";

const MISSING = "What belongs here cannot be shown. The rest works.";

/**
 * The root element of a round.
 * @param {{ title?: string, key?: string }} setup of the round
 * @param {import("../../shared/svg.js").Attributes} attributes besides
 * @returns {HTMLElement}
 */
export function makeRoot({ title, key = "" }, attributes) {
  return html("div", {
    "class": "kit kit-round",
    "role": "group",
    "aria-label": title || "Round",
    "data-kit-round": key,
    ...attributes,
  });
}

/**
 * Put the parts of a round in their order: it is laid out by the style sheet.
 * @param {HTMLElement} root
 * @param {...Node} parts
 * @returns {void}
 */
export function fill(root, ...parts) {
  root.append(html("div", { class: "round-fit" },
    html("div", { class: "round-table" }, ...parts)));
}

/**
 * Show the manipulative of a round, if it has one.
 * @param {{ model: WidgetModel, host: WidgetHost, el: HTMLElement }} given the model of the round,
 *   and where the manipulative is shown
 * @param {(manipulative: WidgetModel) => void} joined is given its model
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {Promise<void>}
 */
export async function showManipulative({ model, host, el }, joined, { signal }) {
  const reference = model.get("manipulative");
  if (!reference) {
    return;
  }
  try {
    await (await host.getWidget(reference)).render({ el, signal });
    const manipulative = await host.getModel(reference);
    if (!signal.aborted) {
      joined(manipulative);
    }
  } catch (error) {
    reportError(error);
    el.replaceChildren(html("p", { class: "round-sorry" }, MISSING));
  }
}

/**
 * What is true of the manipulative just now.
 * @param {HTMLElement} el where it is shown
 * @returns {Facts}
 */
export function factsIn(el) {
  const manipulative = /** @type {HTMLElement | null} */ (el.querySelector(".kit-manipulative"));
  return manipulative?.facts?.() ?? {};
}
