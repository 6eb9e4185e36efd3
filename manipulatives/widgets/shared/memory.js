/**
 * What a browser keeps of a lesson. Where keeping is refused nothing is kept, and everything else
 * works.
 *
 * @typedef {Pick<Storage, "getItem" | "setItem"> & Partial<Storage>} Store
 * @typedef {object} Memory
 * @property {(name: string) => any} read null when there is nothing
 * @property {(name: string, data: any) => void} write
 * @property {() => void} forget everything of this lesson, what its rounds keep as well
 */

/**
 * @param {Store | null} storage
 * @param {string} key the lesson's
 * @returns {Memory}
 */
export function openMemory(storage, key) {
  return {
    read(name) {
      try {
        return JSON.parse(storage?.getItem(`${key}/${name}`) ?? "null");
      } catch {
        // Refused, or not what we wrote.
        return null;
      }
    },
    write(name, data) {
      try {
        storage?.setItem(`${key}/${name}`, JSON.stringify(data));
      } catch {
        // Refused or full. The lesson itself goes on.
      }
    },
    forget() {
      try {
        for (const name of Object.keys(storage ?? {})) {
          if (name.startsWith(`${key}/`)) {
            storage?.removeItem?.(name);
          }
        }
      } catch {
        // Refused.
      }
    },
  };
}

/**
 * What the browser keeps beyond the day, or null where it refuses even to be asked.
 * @returns {Store | null}
 */
export function longStore() {
  try {
    return localStorage;
  } catch {
    return null;
  }
}

/**
 * What the browser keeps as long as this tab is there, or null.
 * @returns {Store | null}
 */
export function tabStore() {
  try {
    return sessionStorage;
  } catch {
    return null;
  }
}
