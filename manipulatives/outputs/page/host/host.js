/**
 * A host for widgets in the anywidget format on a page that has no kernel. What a widget sets
 * stays in the page, because there is no kernel to send it to.
 *
 * @typedef {import("./model.js").Listener} Listener
 * @typedef {import("./saved.js").Saved} Saved
 * @typedef {(code: string) => Promise<any>} Load makes a module of its text
 * @typedef {{ el: HTMLElement, signal?: AbortSignal }} Place
 * @typedef {{ exports: any, render: (place: Place) => Promise<void> }} Widget
 * @typedef {{ definition: any, exports: any }} Ready an initialized widget
 */
import { Model } from "./model.js";
import { referenceTarget, traits } from "./saved.js";

// A widget that has not initialized after this time counts as failed.
const READY_TIMEOUT_MS = 10_000;

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
  /** @type {Map<string, Promise<Ready>>} */
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
    ready.set(id, initialize(id, kind));
  }
  // A failure is reported where the widget is shown. Without this, one that is never shown would be
  // an unhandled rejection.
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
   * Initialize a widget, which happens once, whether it is shown or not.
   * @param {string} id
   * @param {string} kind
   * @returns {Promise<Ready>}
   */
  async function initialize(id, kind) {
    const made = await definitions.get(kind);
    const { signal } = new AbortController();
    const result = await made.initialize?.({ model: modelFor(id, {}), signal, experimental });
    return { definition: made, exports: typeof result === "function" ? undefined : result };
  }

  /**
   * @param {string} id
   * @returns {Promise<Ready>}
   */
  function whenReady(id) {
    const { name } = saved.kinds[(find(id), saved.models[id].kind)];
    return withTimeout(/** @type {Promise<Ready>} */ (ready.get(id)), name);
  }

  /**
   * The model as a widget's code sees it, which removes only the listeners that this owner added.
   * @param {string} id
   * @param {object} owner
   * @returns {object}
   */
  function modelFor(id, owner) {
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
        get_model: async (other) => modelFor(other, owner),
      },
    };
  }

  /**
   * @param {string} id
   * @param {HTMLElement} el
   * @param {AbortSignal} signal
   */
  async function show(id, el, signal) {
    const { definition: made } = await whenReady(id);
    if (!made.render || signal.aborted) {
      return;
    }
    const owner = {};
    const model = modelFor(id, owner);
    const cleanUp = await made.render({ model, el, signal, host: host(signal), experimental });
    onAbort(signal, () => {
      find(id).off(null, null, owner);
      if (typeof cleanUp === "function") {
        cleanUp();
      }
    });
  }

  /**
   * The host as a widget sees it, until its view ends.
   * @param {AbortSignal} parent
   */
  function host(parent) {
    return {
      /** @param {unknown} reference */
      async getModel(reference) {
        const id = referenceTarget(reference);
        const owner = {};
        onAbort(parent, () => find(id).off(null, null, owner));
        return modelFor(id, owner);
      },
      /**
       * @param {unknown} reference
       * @returns {Promise<Widget>}
       */
      async getWidget(reference) {
        const id = referenceTarget(reference);
        const { exports } = await whenReady(id);
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
 * The widget that a module defines, in any of the forms that anywidget allows.
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
async function withTimeout(promise, name) {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let timer;
  const timeout = new Promise((_resolve, reject) => {
    timer = setTimeout(() => reject(new Error(`${name} was not ready in time.`)), READY_TIMEOUT_MS);
  });
  try {
    return await Promise.race([promise, /** @type {Promise<never>} */ (timeout)]);
  } finally {
    clearTimeout(timer);
  }
}

/**
 * @param {AbortSignal} signal
 * @param {() => void} cleanUp
 */
function onAbort(signal, cleanUp) {
  if (signal.aborted) {
    cleanUp();
  } else {
    signal.addEventListener("abort", cleanUp, { once: true });
  }
}
