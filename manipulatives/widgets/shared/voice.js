/**
 * Reading aloud for those who cannot read yet, by a voice on the device. A voice that sends
 * the text elsewhere is never used: then there is no button.
 */
import { html, icon } from "./svg.js";

const SPEAKER = "M4 9.5 H8 L13 5 V19 L8 14.5 H4 Z M16 9 C17.6 10.6 17.6 13.4 16 15 M18.5 6.5 " +
  "C21.6 9.6 21.6 14.4 18.5 17.5";
/** @type {Readonly<Record<string, string>>} */
const LANGUAGES = Object.freeze({ us: "en-US", uk: "en-GB" });

/**
 * The voice to read with, of those that speak on the device itself.
 * @param {{ lang: string, localService: boolean }[]} voices
 * @param {string} vocabulary "us" or "uk"
 * @returns {{ lang: string, localService: boolean } | undefined}
 */
export function localVoice(voices, vocabulary) {
  // Some systems write en_US.
  const near = voices.filter(({ lang, localService }) => localService && /^en\b/.test(flat(lang)));
  return near.find(({ lang }) => flat(lang) === LANGUAGES[vocabulary]) ?? near[0];
}

/**
 * A button that reads aloud, unseen as long as no voice on the device offers itself.
 * @param {{ vocabulary: string, words: () => string }} given
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {HTMLButtonElement}
 */
export function listenButton({ vocabulary, words }, { signal }) {
  const listen = html("button", {
    "type": "button", "class": "kit-button round-listen", "hidden": "", "aria-label": "Listen",
  }, icon(SPEAKER), html("span", {}, "Listen"));
  const speech = globalThis.speechSynthesis;
  if (!speech) {
    return listen;
  }
  const look = () => {
    listen.hidden = !localVoice(speech.getVoices(), vocabulary);
  };
  look();
  // Browsers may find their voices some time after the page began.
  speech.addEventListener?.("voiceschanged", look, { signal });
  signal.addEventListener("abort", () => speech.cancel(), { once: true });
  listen.addEventListener("click", () => {
    const spoken = new SpeechSynthesisUtterance(words());
    const voice = localVoice(speech.getVoices(), vocabulary);
    if (voice) {
      spoken.voice = /** @type {SpeechSynthesisVoice} */ (voice);
      spoken.lang = voice.lang;
      speech.cancel();
      speech.speak(spoken);
    }
  }, { signal });
  return listen;
}

/** @param {string} lang */
function flat(lang) {
  return lang.replace("_", "-");
}
