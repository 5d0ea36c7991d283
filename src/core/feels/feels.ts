import type { Feel } from './feel';

/**
 * The feels, in the order they are offered. How each is played, and where its figures come from, is in a file of its own
 * (`played-feels.ts`), fetched with the band; tempo ranges, usual players and whatever else names no source are common
 * practice, no source.
 */
export const FEELS = [
  {
    id: 'shuffle',
    name: 'Shuffle',
    meter: null,
    swing: 2,
    swungUnit: 'eighth',
    tempo: { low: 80, usual: 108, high: 140 },
    bass: 'upright-bass',
    chords: 'piano',
    kit: 'sticks',
    turnarounds: ['plain', 'falling line', 'parallel sixths', 'rising bass', 'contrary', 'halves', 'cycle'],
  },
  {
    id: 'slow-12-8',
    name: 'Slow 12/8',
    meter: '12/8',
    swing: 2,
    swungUnit: 'eighth',
    tempo: { low: 44, usual: 58, high: 76 },
    bass: 'fingered-bass',
    chords: 'organ',
    kit: 'sticks',
    turnarounds: ['falling line', 'parallel sixths', 'contrary', 'passing', 'halves'],
  },
  {
    id: 'swing',
    name: 'Swing',
    meter: null,
    swing: 'by tempo',
    swungUnit: 'eighth',
    tempo: { low: 120, usual: 150, high: 240 },
    bass: 'upright-bass',
    chords: 'piano',
    kit: 'sticks',
    turnarounds: [
      'cycle with two',
      'passing',
      'cycle',
      'falling six',
      'tritones',
      'half swap',
      'six and flat six',
      'from the three',
    ],
  },
  {
    id: 'straight',
    name: 'Straight eighths',
    meter: null,
    swing: 1,
    swungUnit: 'eighth',
    tempo: { low: 80, usual: 112, high: 150 },
    bass: 'fingered-bass',
    chords: 'electric-piano',
    kit: 'sticks',
    turnarounds: ['plain', 'halves', 'flat six', 'cycle with two'],
  },
  {
    id: 'double-shuffle',
    name: 'Double shuffle',
    meter: null,
    swing: 2,
    swungUnit: 'eighth',
    tempo: { low: 90, usual: 118, high: 150 },
    bass: 'fingered-bass',
    chords: 'guitar',
    kit: 'sticks',
    turnarounds: ['plain', 'falling line', 'parallel sixths', 'rising bass', 'halves', 'cycle'],
  },
  {
    id: 'jump',
    name: 'Jump (two-beat)',
    meter: null,
    swing: 'by tempo',
    swungUnit: 'eighth',
    tempo: { low: 130, usual: 168, high: 230 },
    bass: 'upright-bass',
    chords: 'guitar',
    kit: 'sticks',
    turnarounds: ['cycle with two', 'passing', 'cycle', 'six and flat six', 'halves'],
  },
  {
    id: 'boogie',
    name: 'Boogie',
    meter: null,
    swing: 1.7,
    swungUnit: 'eighth',
    tempo: { low: 120, usual: 152, high: 190 },
    bass: 'upright-bass',
    chords: 'piano',
    kit: 'sticks',
    turnarounds: ['plain', 'rising bass', 'halves'],
  },
  {
    id: 'rhumba',
    name: 'Rhumba blues',
    meter: null,
    swing: 1,
    swungUnit: 'eighth',
    tempo: { low: 96, usual: 118, high: 144 },
    bass: 'fingered-bass',
    chords: 'piano',
    kit: 'sticks',
    turnarounds: ['plain', 'halves', 'flat six'],
  },
  {
    id: 'second-line',
    name: 'Second line',
    meter: null,
    swing: 1.4,
    swungUnit: '16th',
    tempo: { low: 78, usual: 96, high: 112 },
    bass: 'fingered-bass',
    chords: 'piano',
    kit: 'sticks',
    turnarounds: ['halves', 'plain', 'cycle'],
  },
  {
    id: 'train',
    name: 'Train',
    meter: null,
    swing: 1,
    swungUnit: 'eighth',
    tempo: { low: 84, usual: 108, high: 132 },
    bass: 'upright-bass',
    chords: 'guitar',
    kit: 'brushes',
    turnarounds: ['plain', 'halves'],
  },
  {
    id: 'rock',
    name: 'Straight rock',
    meter: null,
    swing: 1,
    swungUnit: 'eighth',
    tempo: { low: 100, usual: 128, high: 168 },
    bass: 'fingered-bass',
    chords: 'guitar',
    kit: 'sticks',
    turnarounds: ['plain', 'flat six', 'halves'],
  },
  {
    id: 'minor-slow',
    name: 'Slow minor, sixteenths',
    meter: null,
    swing: 1,
    swungUnit: 'eighth',
    tempo: { low: 48, usual: 62, high: 80 },
    bass: 'fingered-bass',
    chords: 'electric-piano',
    kit: 'sticks',
    turnarounds: ['falling line', 'passing', 'halves', 'flat six'],
  },
] as const satisfies readonly Feel[];

export type FeelId = (typeof FEELS)[number]['id'];

/** Ids of all feels, in the order they are offered. */
export const FEEL_IDS: readonly FeelId[] = FEELS.map(({ id }) => id);

const BY_ID: ReadonlyMap<FeelId, Feel> = new Map(FEELS.map((feel) => [feel.id, feel]));

/** What everybody needs of a feel: `feelOf('shuffle').tempo`. */
export const feelOf = (id: FeelId): Feel => {
  const feel = BY_ID.get(id);
  if (feel === undefined) throw new RangeError(`No feel is called ${id}`);
  return feel;
};
