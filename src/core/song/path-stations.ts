/**
 * Twelve stations for a beginner, each a set-up of the stand. The order is the one that beginners' pages and courses
 * share: breath and chords first, single notes, a tune in the middle, the draw notes 1–3, then the first bend (common
 * practice, no source).
 */
import { NATURAL_NOTES } from '../harp/reach';
import { DEFAULT_SETTINGS } from '../settings/defaults';
import type { Settings } from '../settings/settings';
import { asBpm } from '../theory/units';

/** A station: what to do, why, and what is put on the stand for it. */
export interface Station {
  readonly title: string;
  readonly task: string;
  /** One sentence. */
  readonly why: string;
  readonly choices: Partial<Settings>;
}

const { plan, style, line, trade, partner } = DEFAULT_SETTINGS;

/** What every station begins with: a plain twelve-bar, slow, natural notes, nothing else asked. */
const PLAIN: Partial<Settings> = {
  formId: 'standard',
  style: { ...style, feel: 'shuffle' },
  plan: { ...plan, countInBars: 1, choruses: null },
  technique: NATURAL_NOTES,
  line: { ...line, kind: 'none' },
  trade: { ...trade, on: false },
  fromMemory: false,
};

const station = (
  [title, task, why]: readonly [title: string, task: string, why: string],
  tempo: number,
  choices: Partial<Settings>,
): Station => ({ title, task, why, choices: { ...PLAIN, tempo: asBpm(tempo), ...choices } });

/** The draw bend of hole 4 alone, of all bends. */
const FOUR_DRAW = {
  drawBends: true,
  blowBends: false,
  overbends: false,
  off: ["1D'", "2D'", "2D''", "3D'", "3D''", "3D'''", "6D'"],
};

/** The stations in their order; nothing is locked. */
export const STATIONS: readonly Station[] = [
  station(
    [
      'Breathe in and out',
      'Put your lips over holes 1 to 3. In for two beats, out for two beats, softly, with the band.',
      'The harp sounds by breath, and a calm breath is its rhythm.',
    ],
    80,
    {},
  ),
  station(
    [
      'One clean note',
      'Blow hole 4 for a bar, rest for a bar. Only the click plays, so that you hear yourself.',
      'A single hole that rings by itself is what everything else is made of.',
    ],
    60,
    { position: 1, plan: { ...plan, countInBars: 1, choruses: null, sounding: 'click' } },
  ),
  station(
    [
      'Neighbours: 4, 5, 6',
      'Blow 4, 5, 6 and back, a note a beat. The head stays, the harp moves.',
      'Moving by one hole without looking is half of every tune.',
    ],
    66,
    { position: 1 },
  ),
  station(
    [
      'In and out on one hole',
      'Hole 4: blow, draw, blow, draw, a note a beat. Then the same on 5.',
      'The change of breath must be as even as a step.',
    ],
    66,
    { position: 1 },
  ),
  station(
    [
      'Draw 1 and 3',
      'Draw 1, draw 3, long and soft. Let your jaw hang.',
      'The low draw notes carry the blues, and they want little air.',
    ],
    66,
    {},
  ),
  station(
    [
      'Draw 2, the home note',
      'Draw 2 for a bar, rest for a bar. If it chokes, breathe from lower down and less. Blow 3 is the same note.',
      'In second position this is where every phrase comes home.',
    ],
    66,
    {},
  ),
  station(
    [
      'Home over the first chord',
      'Draw 2 whenever the first chord sounds; rest on the others.',
      'Hearing where the chord is comes before playing over it.',
    ],
    72,
    {},
  ),
  station(
    [
      'Give it back',
      'The harp voice calls with a few notes. Give them back the same.',
      'The ear learns phrases faster than the eye.',
    ],
    76,
    {
      trade: { ...trade, on: true, calls: '' },
      partner: { ...partner, mode: 'echo', level: 1, plan: '2+2' },
    },
  ),
  station(
    [
      'A root for each chord',
      'One note at each change: the root that What fits shows.',
      'Three notes at the right moment already sound like music.',
    ],
    76,
    {},
  ),
  station(
    [
      'The line through the changes',
      'Follow the line under the bars, one note a bar. Hear it first.',
      'The shortest way from chord to chord is the one that sounds meant.',
    ],
    80,
    { line: { ...line, kind: 'chord tones', pace: 1, heard: true } },
  ),
  station(
    [
      'The first bend',
      'Draw 4, and say “ee – you” with the tongue until the note sinks. Softly. If it does not come in five minutes, leave it for today.',
      'It is the nearest bend for most mouths, and the one the blues needs first.',
    ],
    66,
    { technique: FOUR_DRAW },
  ),
  station(
    [
      'A twelve-bar of your own',
      'Three choruses with three chord tones and the bend on draw 4. Leave more room than you fill.',
      'This is what all the others were for.',
    ],
    88,
    { technique: FOUR_DRAW, plan: { ...plan, countInBars: 1, choruses: 3 } },
  ),
];
