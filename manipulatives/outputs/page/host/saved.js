/**
 * How a page keeps its widgets: what all widgets of a kind have in common (their code, their
 * style, their usual traits) once, and for each widget only what is different.
 *
 * @typedef {object} Kind
 * @property {string} name the Python class, for messages
 * @property {string} code an ES module
 * @property {string} [css] the style of the kind
 * @property {Record<string, any>} usual the traits of the first widget of the kind
 *
 * @typedef {object} Entry
 * @property {string} kind which kind of widget
 * @property {Record<string, any>} [own] the traits that differ from the usual ones
 * @property {{ path: (string | number)[], data: string }[]} [bytes] what JSON cannot hold
 *
 * @typedef {{ kinds: Record<string, Kind>, models: Record<string, Entry> }} Saved
 */

/**
 * The traits of one widget, shared with no other.
 * @param {Saved} saved
 * @param {string} id
 * @returns {Record<string, any>}
 */
export function traits(saved, id) {
  const { kind, own, bytes = [] } = saved.models[id];
  /** @type {any} */
  const state = structuredClone({ ...saved.kinds[kind].usual, ...own });
  for (const { path, data } of bytes) {
    const within = path.slice(0, -1).reduce((part, key) => part[key], state);
    const raw = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
    within[path[path.length - 1]] = new DataView(raw.buffer);
  }
  return state;
}

/**
 * The widget that a trait refers to, in either of the two forms in use.
 * @param {unknown} reference
 * @returns {string}
 */
export function referred(reference) {
  const text = typeof reference === "string" ? reference : "";
  const found = /^(?:anywidget:|IPY_MODEL_)(.+)$/.exec(text);
  if (!found) {
    throw new Error(`${JSON.stringify(reference)} is no reference to a widget.`);
  }
  return found[1];
}
