/** The compressed data of a page: deflate, in base64. Browsers can read it since about 2023. */

/**
 * The text that was packed.
 * @param {string} text as `saved.py` packs it
 * @returns {Promise<string>}
 */
export async function unpacked(text) {
  const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("deflate"));
  return new Response(stream).text();
}
