/**
 * Waiting until the browser has committed the navigation to a page, before its storage is used.
 *
 * Chromium 156 runs a page from file:// that is loaded again in its renderer process; sometimes the
 * first access to localStorage or sessionStorage reaches the browser process before that has
 * committed the navigation. Then the storage is empty for as long as the page is open, and what is
 * written to it is lost.
 *
 * Smallest case: a bare page from file:// that writes a number to localStorage and loads itself
 * again at once. Its storage was empty after 10 of 1,100 reloads, and after none of 1,700 when the
 * page waited for any answer of the browser process first. Over http: after none of 700, without
 * waiting.
 */

// A browser that does not answer must not prevent the lesson from being shown.
const ANSWER_TIMEOUT_MS = 1000;

/**
 * Wait for one answer of the browser process, which it gives to a committed page only.
 * @param {Pick<Navigator, "permissions">} [browser]
 * @returns {Promise<void>}
 */
export async function whenCommitted(browser = navigator) {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let timer;
  const timeout = new Promise((resolve) => {
    timer = setTimeout(resolve, ANSWER_TIMEOUT_MS);
  });
  try {
    // This only reads a permission; it does not prompt the user.
    await Promise.race([browser.permissions?.query({ name: "persistent-storage" }), timeout]);
  } catch {
    // The browser does not know this permission.
  } finally {
    clearTimeout(timer);
  }
}
