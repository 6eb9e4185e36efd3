/** A soft tone from the device itself: nothing is loaded. */

// A fifth, low in the treble: audible in a working class, and not startling.
const NOTES_HZ = Object.freeze([523, 392]);
const NOTE_DELAY_S = 0.35;
const NOTE_S = 0.9;
const VOLUME = 0.12;
const START_DELAY_S = 0.04;

/**
 * Sound it, where the browser has sound and lets a page make it.
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {void}
 */
export function softTone({ signal }) {
  const { AudioContext } = globalThis;
  if (!AudioContext) {
    return;
  }
  const sound = new AudioContext();
  const begin = sound.currentTime + START_DELAY_S;
  for (const [index, pitch] of NOTES_HZ.entries()) {
    const at = begin + index * NOTE_DELAY_S;
    const note = new OscillatorNode(sound, { type: "sine", frequency: pitch });
    const swell = new GainNode(sound, { gain: 0 });
    swell.gain.setValueAtTime(0, at);
    swell.gain.linearRampToValueAtTime(VOLUME, at + START_DELAY_S);
    swell.gain.exponentialRampToValueAtTime(VOLUME / 1000, at + NOTE_S);
    note.connect(swell).connect(sound.destination);
    note.start(at);
    note.stop(at + NOTE_S);
  }
  const all = START_DELAY_S + NOTE_DELAY_S * NOTES_HZ.length + NOTE_S;
  const waiting = setTimeout(close, 1000 * all);

  function close() {
    clearTimeout(waiting);
    signal.removeEventListener("abort", close);
    sound.close();
  }
  signal.addEventListener("abort", close, { once: true });
}
