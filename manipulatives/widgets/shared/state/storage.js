/**
 * What a browser saves of a lesson. Where it refuses to, nothing is saved, and everything else
 * works.
 *
 * @typedef {Pick<Storage, "getItem" | "setItem"> & Partial<Storage>} Store
 * @typedef {object} LessonStorage
 * @property {(name: string) => any} read null when there is nothing
 * @property {(name: string, data: any) => void} write
 * @property {() => void} forget everything of this lesson, what its rounds saved as well
 */

/**
 * The storage of one lesson.
 * @param {Store | null} storage
 * @param {string} key the lesson's
 * @returns {LessonStorage}
 */
export function lessonStorage(storage, key) {
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
 * The storage that lasts beyond the day, or null where it refuses even to be asked.
 * @returns {Store | null}
 */
export function permanentStore() {
  try {
    return localStorage;
  } catch {
    return null;
  }
}

/**
 * The storage that lasts as long as this tab, or null.
 * @returns {Store | null}
 */
export function tabStore() {
  try {
    return sessionStorage;
  } catch {
    return null;
  }
}
