/** A soft tone from the device itself: nothing is loaded and nothing is kept. */

// A fifth, low in the treble: it is heard in a working class and startles nobody.
const NOTES_HZ = Object.freeze([523, 392]);
const APART_S = 0.35;
const LASTS_S = 0.9;
const LOUD = 0.12;
const SOON_S = 0.04;

/**
 * Sound it, where the browser has sound and lets a page make it.
 * @returns {void}
 */
export function softTone() {
  const { AudioContext } = globalThis;
  if (!AudioContext) {
    return;
  }
  const sound = new AudioContext();
  const begin = sound.currentTime + SOON_S;
  for (const [index, pitch] of NOTES_HZ.entries()) {
    const at = begin + index * APART_S;
    const note = new OscillatorNode(sound, { type: "sine", frequency: pitch });
    const swell = new GainNode(sound, { gain: 0 });
    swell.gain.setValueAtTime(0, at);
    swell.gain.linearRampToValueAtTime(LOUD, at + SOON_S);
    swell.gain.exponentialRampToValueAtTime(LOUD / 1000, at + LASTS_S);
    note.connect(swell).connect(sound.destination);
    note.start(at);
    note.stop(at + LASTS_S);
  }
  const all = SOON_S + APART_S * NOTES_HZ.length + LASTS_S;
  setTimeout(() => sound.close(), 1000 * all);
}
