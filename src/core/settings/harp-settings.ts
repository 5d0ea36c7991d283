import * as v from 'valibot';
import { HOLES } from '../harp/build-harp';
import { REED_RANGE } from '../harp/custom-tuning';
import type { Tuning } from '../harp/harp';
import { type OwnedHarp, REED_CENTS, STRETCH } from '../harp/harp-case';
import { INTONATION_IDS } from '../harp/intonation';
import type { TechniqueChoice } from '../harp/reach';
import { TUNINGS } from '../harp/tunings';
import { REFERENCE_PITCHES } from '../theory/temperament';
import { asHz, asPitchClass } from '../theory/units';
import { between, pitchClass, setting, shortText, whole } from './setting';

const row = v.pipe(
  v.array(whole(REED_RANGE.low, REED_RANGE.high)),
  v.minLength(HOLES.fewest),
  v.maxLength(HOLES.most),
);
const tuning = v.pipe(
  v.object({ id: shortText, name: shortText, blow: row, draw: row }),
  v.check(({ blow, draw }) => blow.length === draw.length),
);
const cents = v.array(between(-REED_CENTS, REED_CENTS));

const RICHTER_TUNING: Tuning = {
  id: TUNINGS[0].id,
  name: TUNINGS[0].name,
  blow: TUNINGS[0].blow,
  draw: TUNINGS[0].draw,
};

/** The harp in hand and how it is played: a C harp in second position, draw bends on. */
export const HARP_SETTINGS = {
  harpKey: setting('harp key', asPitchClass(0), pitchClass),
  harpOctave: setting('harp range', 0, whole(-2, 1)),
  /** The reeds themselves, so that a retuned harp needs no list to be found in. */
  tuning: setting<Tuning>('tuning', RICHTER_TUNING, tuning),
  /** A published intonation, or cents of the player's own per reed. */
  intonation: setting<OwnedHarp['intonation']>(
    'intonation',
    'equal',
    v.union([v.picklist(INTONATION_IDS), v.object({ cents: v.object({ blow: cents, draw: cents }) })]),
  ),
  /** Octave stretch of the harp in hand, in cents an octave. */
  stretch: setting('octave stretch', 0, between(STRETCH.least, STRETCH.most)),
  /** Half-valved holes: the lower reed bends by itself there. */
  valved: setting<readonly number[]>(
    'valves',
    [],
    v.pipe(v.array(whole(1, HOLES.most)), v.maxLength(HOLES.most)),
  ),
  /** What A4 is, in Hz. */
  reference: setting(
    'reference pitch',
    asHz(440),
    v.pipe(between(REFERENCE_PITCHES.low, REFERENCE_PITCHES.high), v.transform(asHz)),
  ),
  position: setting('position', 2, whole(1, 12)),
  technique: setting<TechniqueChoice>(
    'techniques',
    { drawBends: true, blowBends: false, overbends: false, off: [] },
    v.object({
      drawBends: v.boolean(),
      blowBends: v.boolean(),
      overbends: v.boolean(),
      off: v.pipe(v.array(shortText), v.maxLength(200)),
    }),
  ),
} as const;
