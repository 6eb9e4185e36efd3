/** Digits from a keyboard go to the answer wherever the focus is, but for the manipulative. */

/**
 * @param {HTMLElement} root of the round
 * @param {HTMLElement} manipulative where keys are its own
 * @param {{ el: HTMLElement, take: (letter: string) => void }} reply takes what is typed
 * @param {boolean} everywhere whether keys count that are pressed with the focus on nothing, as on
 *   a page that shows rounds; a notebook has other uses for them
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {void}
 */
export function typeFromAnywhere(root, manipulative, reply, everywhere, { signal }) {
  document.addEventListener("keydown", (event) => {
    const { target, key, defaultPrevented, ctrlKey, altKey, metaKey } = event;
    const meant = target instanceof Node && root.contains(target)
      ? !manipulative.contains(target) && !(target instanceof HTMLInputElement)
      : target === document.body && everywhere;
    const plain = key.length === 1 && !(defaultPrevented || ctrlKey || altKey || metaKey);
    if (meant && plain && reply.el.checkVisibility()) {
      reply.take(key);
    }
  }, { signal });
}
