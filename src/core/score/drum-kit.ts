/** Lanes of a drum pattern and the General MIDI percussion keys they strike (General MIDI percussion map). */
export const DRUM_KEYS = {
  kick: 36,
  stick: 37,
  snare: 38,
  slap: 39,
  swirl: 40,
  low: 43,
  hat: 42,
  foot: 44,
  mid: 47,
  open: 46,
  crash: 49,
  high: 50,
  ride: 51,
  bell: 53,
} as const;

/** A drum or cymbal, or a way to strike it. */
export type DrumLane = keyof typeof DRUM_KEYS;
