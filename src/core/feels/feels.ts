import type { Feel, FeelId } from './feel';

/**
 * The twelve feels. Tempo ranges, voices and kits are working defaults (common practice, no source). Swing ratios:
 * the shuffle is the triplet with its middle note left out, 2:1 ("Learn & Master Drums", session 6), and keeps that
 * ratio at any tempo (de Haas & Honing, SMPC 2007: a shuffle groove scales proportionally); the swing ride falls
 * with tempo (doi 10.1525/mp.2002.19.3.333). Boogie and second line lie between straight and triplets (common
 * practice, no source); the second line swings its sixteenths (`SWUNG_SIXTEENTHS`), the others their eighths.
 */
export const FEELS: Readonly<Record<FeelId, Feel>> = {
  shuffle: {
    id: 'shuffle',
    name: 'Shuffle',
    meter: null,
    swing: 2,
    tempo: { low: 80, usual: 108, high: 140 },
    bass: 'upright-bass',
    chords: 'piano',
    kit: 'sticks',
  },
  'slow-12-8': {
    id: 'slow-12-8',
    name: 'Slow 12/8',
    meter: '12/8',
    swing: 2,
    tempo: { low: 44, usual: 58, high: 76 },
    bass: 'fingered-bass',
    chords: 'organ',
    kit: 'sticks',
  },
  swing: {
    id: 'swing',
    name: 'Swing',
    meter: null,
    swing: 'by tempo',
    tempo: { low: 100, usual: 150, high: 240 },
    bass: 'upright-bass',
    chords: 'piano',
    kit: 'sticks',
  },
  straight: {
    id: 'straight',
    name: 'Straight eighths',
    meter: null,
    swing: 1,
    tempo: { low: 80, usual: 112, high: 150 },
    bass: 'fingered-bass',
    chords: 'electric-piano',
    kit: 'sticks',
  },
  'double-shuffle': {
    id: 'double-shuffle',
    name: 'Double shuffle',
    meter: null,
    swing: 2,
    tempo: { low: 90, usual: 118, high: 150 },
    bass: 'fingered-bass',
    chords: 'guitar',
    kit: 'sticks',
  },
  jump: {
    id: 'jump',
    name: 'Jump (two-beat)',
    meter: null,
    swing: 'by tempo',
    tempo: { low: 130, usual: 168, high: 230 },
    bass: 'upright-bass',
    chords: 'guitar',
    kit: 'sticks',
  },
  boogie: {
    id: 'boogie',
    name: 'Boogie',
    meter: null,
    swing: 1.7,
    tempo: { low: 120, usual: 152, high: 190 },
    bass: 'upright-bass',
    chords: 'piano',
    kit: 'sticks',
  },
  rhumba: {
    id: 'rhumba',
    name: 'Rhumba blues',
    meter: null,
    swing: 1,
    tempo: { low: 96, usual: 118, high: 144 },
    bass: 'fingered-bass',
    chords: 'piano',
    kit: 'sticks',
  },
  'second-line': {
    id: 'second-line',
    name: 'Second line',
    meter: null,
    swing: 1.4,
    tempo: { low: 78, usual: 96, high: 112 },
    bass: 'fingered-bass',
    chords: 'piano',
    kit: 'sticks',
  },
  train: {
    id: 'train',
    name: 'Train',
    meter: null,
    swing: 1,
    tempo: { low: 84, usual: 108, high: 132 },
    bass: 'upright-bass',
    chords: 'guitar',
    kit: 'brushes',
  },
  rock: {
    id: 'rock',
    name: 'Straight rock',
    meter: null,
    swing: 1,
    tempo: { low: 100, usual: 128, high: 168 },
    bass: 'fingered-bass',
    chords: 'guitar',
    kit: 'sticks',
  },
  'minor-slow': {
    id: 'minor-slow',
    name: 'Slow minor, sixteenths',
    meter: null,
    swing: 1,
    tempo: { low: 48, usual: 62, high: 80 },
    bass: 'fingered-bass',
    chords: 'electric-piano',
    kit: 'sticks',
  },
};

/** Feels whose swing lies between the sixteenths instead of the eighths. */
export const SWUNG_SIXTEENTHS: ReadonlySet<FeelId> = new Set(['second-line']);
