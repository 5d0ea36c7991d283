import type { DrumLane } from '../score/drum-kit';

/**
 * Fills and solo bars: one letter a step, capitals are accents: s snare, g ghosted snare, h high tom, m middle tom,
 * f floor tom, k kick, c cymbal with kick, . rest. All figures here are of this project (no source).
 */
export const FILL_MARKS: Readonly<Record<string, readonly (readonly [DrumLane, string])[]>> = {
  g: [['snare', 'g']],
  s: [['snare', 'x']],
  S: [['snare', 'X']],
  h: [['high', 'x']],
  H: [['high', 'X']],
  m: [['mid', 'x']],
  M: [['mid', 'X']],
  f: [['low', 'x']],
  F: [['low', 'X']],
  k: [['kick', 'x']],
  K: [['kick', 'X']],
  c: [
    ['crash', 'x'],
    ['kick', 'x'],
  ],
};

/** Fills to choose from, and beats for solos. */
export interface Fills {
  /** The last beat. */
  readonly short: readonly string[];
  /** The last two beats. */
  readonly middle: readonly string[];
  /** A whole bar. */
  readonly long: readonly string[];
  /** Beats to build solo bars from. */
  readonly cells: readonly string[];
}

/** For shuffles, boogie and compound meters. */
export const TRIPLET_FILLS: Fills = {
  short: ['S.s', 'gsS', 's.S', 'sss', 'g.S', 'hmf'],
  middle: ['S.s hmf', 's.s S.S', 'gsg sSs', 'S.s s.f', 's.h h.f', 'sss Sff'],
  long: ['S.. s.s hhm Ff.', 's.s S.s s.s SSS', 'k.S k.S hhm mff', 'S.s .s. Sss f.F', 'g.s g.S sss hmF'],
  cells: ['S.s', 'sgs', 'h.h', 'm.f', 'k.S', '.sS', 'S..', 'hmf', 'gsg', '.k.', 'F.k', 'SgS'],
};

/** For the swing ride. */
export const SWING_FILLS: Fills = {
  short: ['.S', 's.s', 'gS', 's.S', '.ss'],
  middle: ['s. .S', 's.s S.', '.s .S', 'g.s h.f', 'sss S.'],
  long: ['s. .s .s S.', 's.s S. h.h F.', '.s .S .s .S', 'S. k.s .h mf.', 'sss S.. sss S..'],
  cells: ['S.', '.s', 'sss', 's.s', 'h.m', '.S', 'g.s', 'k.', '.k', 'f.F', 'm.', 'gs'],
};

/** For straight eighths. */
export const EIGHTH_FILLS: Fills = {
  short: ['ss', 's.ss', '.sSs', 'S.', 'hf', 'sS'],
  middle: ['ss ss', 's.ss hf', 'S. ff', 's.ss S.ss', '.s SS', 'hh ff'],
  long: ['ss ss hh ff', 's.ss s.ss hhmm ff', 'S. .S .S S.', 'kS .s kS ss', 'S.ss h.hh m.mm F.'],
  cells: ['S.', 'ss', 's.ss', '.S', 'hh', 'mf', 'k.S.', 'ssss', '.k', 'h.m.', 'ff', 'g.S.'],
};

/** For slow feels that move in sixteenths. */
export const SIXTEENTH_FILLS: Fills = {
  short: ['..ss', 's.ss', '.sSs', 'hhff', '..hf'],
  middle: ['s... ..ss', 's.ss hhff', '..ss S.ff', 'S..s ..hf'],
  long: ['s... ..ss hh.. ff..', 'S..s ..S. s.ss hhff', '..ss S... ..hh F...'],
  cells: ['S...', '..ss', 's.ss', '.s.s', 'h.h.', 'm..f', 'k..S', 'ggSg', '..k.', 'hhff', 'F...', '..S.'],
};

/** For the snare as the parade plays it. */
export const MARCH_FILLS: Fills = {
  short: ['ssSs', 'S.ss', 'ssss', '.sSS', 'sssS'],
  middle: ['ssss S.S.', 'S.ss S.ss', 'gggs sSSS', 'S..S ..S.', 'ssSs hhff'],
  long: ['ssss ssss Ssss S.S.', 'S..S ..S. ..S. S...', 'gggg ssss ssSs SSSS', 'S.ss S.ss hhff K.S.'],
  cells: ['Sggg', 'ggSg', 'S..S', '..S.', 'ssss', 'gSgS', 'S.ss', 'hhff', 'k.S.', '.k.S', 'SssS', 'F..k'],
};
