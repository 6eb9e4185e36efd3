/**
 * What every manipulative has around its drawing: a root, traits, a way to say things, and an end
 * at which nothing is left behind.
 */
import { announce } from "./announce.js";
import { makeUndoable } from "./state/undoable.js";
import { html } from "./svg.js";

/**
 * @typedef {import("./controls.js").Lifetime} Lifetime
 *
 * @typedef {object} Frame
 * @property {HTMLElement} root
 * @property {Lifetime} lifetime it ends when the host takes the widget away
 * @property {(trait: string) => any} get
 * @property {() => any} traits all that the frame listens to, by name
 * @property {(changes: Record<string, unknown>, save?: boolean) => void} set several traits at
 *   once, and send them off, unless more is to go along
 * @property {(sentence: string) => void} say something politely to those who listen
 * @property {<State>(trait: string, paint: (fromOutside: boolean) => void) =>
 *   import("./state/undoable.js").Undoable<State>} undoable the state that a trait holds
 * @property {(view: View) => void} start show the widget, and paint it again when it changes
 *
 * @typedef {object} View
 * @property {HTMLElement} body all of the widget
 * @property {() => void} applyTraits show what the traits say is to be shown
 * @property {(trait: string) => void} [changed] a trait has another value; where nothing is said,
 *   the traits are applied again
 * @property {Element[]} sized what has to be fitted into the room that there is
 * @property {() => void} fit these have another size
 */

/**
 * Make the frame of a manipulative.
 * @param {RenderProps} props what the host hands over
 * @param {string} name the last part of the root's class, and the first of its room's
 * @param {string} label what it is called for those who listen
 * @param {string[]} traits what it looks like and obeys, beside its state
 * @returns {Frame}
 */
export function makeFrame(props, name, label, traits) {
  const { model, el, signal = new AbortController().signal } = props;
  const root = html("div", {
    "class": `kit kit-${name} kit-manipulative`,
    "role": "group",
    "aria-label": label,
    "data-lm-suppress-shortcuts": "true",
  });
  return {
    root,
    lifetime: { signal },
    get: (trait) => model.get(trait),
    traits: () => Object.fromEntries(traits.map((trait) => [trait, model.get(trait)])),
    set(changes, save = true) {
      for (const [trait, value] of Object.entries(changes)) {
        model.set(trait, value);
      }
      if (save) {
        model.save_changes();
      }
    },
    say: (sentence) => announce(root, sentence),
    undoable: (trait, paint) => makeUndoable(model, trait, root, paint, { signal }),
    start({ body, applyTraits, changed = applyTraits, sized, fit }) {
      applyTraits();
      root.append(html("div", { class: `${name}-room` }, body));
      el.replaceChildren(root);
      for (const trait of traits) {
        const listener = () => changed(trait);
        model.on(`change:${trait}`, listener);
        signal.addEventListener("abort", () => model.off(`change:${trait}`, listener));
      }
      const observer = new ResizeObserver(fit);
      sized.forEach((element) => observer.observe(element));
      signal.addEventListener("abort", () => observer.disconnect());
    },
  };
}
