/**
 * A host for widgets in the anywidget format on a page that has no kernel. What a widget sets
 * stays in the page: there is nobody to send it to.
 *
 * @typedef {import("./model.js").Listener} Listener
 * @typedef {import("./saved.js").Saved} Saved
 * @typedef {(code: string) => Promise<any>} Load makes a module of its text
 * @typedef {{ el: HTMLElement, signal?: AbortSignal }} Place
 * @typedef {{ exports: any, render: (place: Place) => Promise<void> }} Widget
 * @typedef {{ definition: any, exports: any }} Begun a widget that has set itself up
 */
import { Model } from "./model.js";
import { referred, traits } from "./saved.js";

// A widget that takes longer to set itself up will not come any more.
const PATIENCE_MS = 10_000;

const experimental = {
  invoke: () => Promise.reject(new Error("This page has no kernel that could answer.")),
};

/**
 * Open the widgets that a page carries.
 * @param {Saved} saved
 * @param {Load} load
 * @param {Document} page
 * @returns {{ show: (id: string, place: Place) => Promise<void>, model: (id: string) => Model }}
 */
export function openHost(saved, load, page) {
  /** @type {Map<string, Model>} */
  const models = new Map();
  /** @type {Map<string, Promise<any>>} */
  const definitions = new Map();
  /** @type {Map<string, Promise<Begun>>} */
  const ready = new Map();

  for (const id of Object.keys(saved.models)) {
    models.set(id, new Model(traits(saved, id)));
  }
  for (const [kind, { code, css }] of Object.entries(saved.kinds)) {
    if (css) {
      page.head.append(Object.assign(page.createElement("style"), { textContent: css }));
    }
    definitions.set(kind, load(code).then(definition));
  }
  for (const [id, { kind }] of Object.entries(saved.models)) {
    ready.set(id, begin(id, kind));
  }
  // What fails is said where it would be shown; what nobody shows harms nobody.
  for (const promise of [...definitions.values(), ...ready.values()]) {
    promise.catch(() => {});
  }

  /**
   * @param {string} id
   * @returns {Model}
   */
  function find(id) {
    const model = models.get(id);
    if (!model) {
      throw new Error(`The page carries no widget ${id}.`);
    }
    return model;
  }

  /**
   * A widget sets itself up once, whether it is shown or not.
   * @param {string} id
   * @param {string} kind
   * @returns {Promise<Begun>}
   */
  async function begin(id, kind) {
    const made = await definitions.get(kind);
    const { signal } = new AbortController();
    const result = await made.initialize?.({ model: face(id, {}), signal, experimental });
    return { definition: made, exports: typeof result === "function" ? undefined : result };
  }

  /**
   * @param {string} id
   * @returns {Promise<Begun>}
   */
  function begun(id) {
    const { name } = saved.kinds[(find(id), saved.models[id].kind)];
    return soon(/** @type {Promise<Begun>} */ (ready.get(id)), name);
  }

  /**
   * What a widget's code sees of a model: the listeners that it adds are its own.
   * @param {string} id
   * @param {object} owner
   * @returns {object}
   */
  function face(id, owner) {
    const model = find(id);
    return {
      get: model.get.bind(model),
      set: model.set.bind(model),
      /**
       * @param {string} names
       * @param {Listener} callback
       */
      on(names, callback) {
        model.on(names, callback, owner);
      },
      /**
       * @param {string | null} [names]
       * @param {Listener | null} [callback]
       */
      off(names, callback) {
        model.off(names, callback, owner);
      },
      save_changes() {},
      send() {},
      widget_manager: {
        /** @param {string} other */
        get_model: async (other) => face(other, owner),
      },
    };
  }

  /**
   * @param {string} id
   * @param {HTMLElement} el
   * @param {AbortSignal} signal
   */
  async function show(id, el, signal) {
    const { definition: made } = await begun(id);
    if (!made.render || signal.aborted) {
      return;
    }
    const owner = {};
    const model = face(id, owner);
    const tidy = await made.render({ model, el, signal, host: host(signal), experimental });
    atEnd(signal, () => {
      find(id).off(null, null, owner);
      if (typeof tidy === "function") {
        tidy();
      }
    });
  }

  /**
   * What a widget may ask of the page, for as long as its view lives.
   * @param {AbortSignal} parent
   */
  function host(parent) {
    return {
      /** @param {unknown} reference */
      async getModel(reference) {
        const id = referred(reference);
        const owner = {};
        atEnd(parent, () => find(id).off(null, null, owner));
        return face(id, owner);
      },
      /**
       * @param {unknown} reference
       * @returns {Promise<Widget>}
       */
      async getWidget(reference) {
        const id = referred(reference);
        const { exports } = await begun(id);
        return { exports, render: ({ el, signal }) => show(id, el, signal ?? parent) };
      },
    };
  }

  return {
    show: (id, { el, signal }) => show(id, el, signal ?? new AbortController().signal),
    model: find,
  };
}

/**
 * The widget that a module defines, in each of the forms that a module may have.
 * @param {any} module
 * @returns {Promise<any>}
 */
async function definition(module) {
  if (module.render) {
    return { render: module.render };
  }
  const made = typeof module.default === "function" ? await module.default() : module.default;
  if (!made) {
    throw new Error("The widget's code has no default export.");
  }
  return made;
}

/**
 * @template T
 * @param {Promise<T>} promise
 * @param {string} name
 * @returns {Promise<T>}
 */
async function soon(promise, name) {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let timer;
  const late = new Promise((_resolve, reject) => {
    timer = setTimeout(() => reject(new Error(`${name} was not ready in time.`)), PATIENCE_MS);
  });
  try {
    return await Promise.race([promise, /** @type {Promise<never>} */ (late)]);
  } finally {
    clearTimeout(timer);
  }
}

/**
 * @param {AbortSignal} signal
 * @param {() => void} tidy
 */
function atEnd(signal, tidy) {
  if (signal.aborted) {
    tidy();
  } else {
    signal.addEventListener("abort", tidy, { once: true });
  }
}
