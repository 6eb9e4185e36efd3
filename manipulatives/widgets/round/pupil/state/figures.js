/** The figures of a question, for pupils who cannot read its words yet. */
import { signed } from "../../../shared/signs.js";

/**
 * What of a question is understood without words: its numbers, and the signs between them.
 * @param {string} prompt such as "The bun costs 4\u00a2. Pay it."
 * @returns {string} such as "4\u00a2"
 */
export function figuresOf(prompt) {
  const words = prompt.split(" ").filter((word) => /\d|^[_?+\-=<>]+[.,]?$/.test(word));
  return signed(words.map((word) => word.replace(/[.?]$/, "")).join(" ")).replace(/,$/, "");
}
