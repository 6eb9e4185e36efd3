/**
 * How widgets are stored in a page: what all widgets of a kind have in common (code, style, usual
 * traits) once, and for each widget only what differs.
 *
 * @typedef {object} Kind
 * @property {string} name the Python class, for messages
 * @property {string} code an ES module
 * @property {string} [css] the style of the kind
 * @property {Record<string, any>} usual the traits of the first widget of the kind, the defaults of
 *   all
 *
 * @typedef {object} Entry
 * @property {string} kind which kind of widget
 * @property {Record<string, any>} [own] the traits that differ from the usual ones
 * @property {{ path: (string | number)[], data: string }[]} [bytes] binary values, which JSON
 *   cannot hold
 *
 * @typedef {{ kinds: Record<string, Kind>, models: Record<string, Entry> }} Saved
 */

/**
 * The traits of one widget, as a copy of its own.
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
 * The id of the widget that a trait refers to, in either of the two forms in use.
 * @param {unknown} reference
 * @returns {string}
 */
export function referenceTarget(reference) {
  const text = typeof reference === "string" ? reference : "";
  const found = /^(?:anywidget:|IPY_MODEL_)(.+)$/.exec(text);
  if (!found) {
    throw new Error(`${JSON.stringify(reference)} is no reference to a widget.`);
  }
  return found[1];
}
