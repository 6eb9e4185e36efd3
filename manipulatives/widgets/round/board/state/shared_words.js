/** What questions that are asked side by side have in common. */

/** @param {string} token */
const isWord = (token) => /\p{L}/u.test(token) && !/\d/.test(token);

/**
 * What questions that are asked together have in common, to be shown once, and what is each one's
 * own: "Which number is ...?" with "20 + 9" and "30 + 2". Common are words at the beginning, up
 * to a colon, and words at the end; never numbers.
 * @param {string[]} prompts
 * @returns {{ common: string, own: string[] }} common is "" where they share nothing
 */
export function sharedWords(prompts) {
  const all = prompts.map((prompt) => prompt.split(" "));
  const [first = []] = all;
  const least = Math.min(...all.map(({ length }) => length)) - 1;
  /** @type {(from: (tokens: string[]) => string | undefined) => boolean} */
  const same = (from) => isWord(from(first) ?? "") &&
    all.every((tokens) => from(tokens) === from(first));
  let front = 0;
  while (front < least && !first[front - 1]?.endsWith(":") && same((tokens) => tokens[front])) {
    front += 1;
  }
  const colon = Boolean(first[front - 1]?.endsWith(":"));
  const most = colon ? 0 : least - front;
  let back = 0;
  while (back < most && same((tokens) => tokens.at(-1 - back))) {
    back += 1;
  }
  if (all.length < 2 || front + back === 0) {
    return { common: "", own: prompts };
  }
  const own = all.map((tokens) => tokens.slice(front, tokens.length - back).join(" "));
  const [end] = /[.?]?$/.exec(own[0]) ?? [""];
  const open = own.every((text) => end && text.endsWith(end)) ? end : "";
  const middle = colon ? [] : [`\u2026${open}`];
  return {
    common: [...first.slice(0, front), ...middle, ...first.slice(first.length - back)].join(" "),
    own: own.map((text) => text.slice(0, text.length - open.length)),
  };
}
