import { soundId } from '../harp/tab';
import type { HeardChorus, Hit } from '../practice/heard-chorus';
import type { ChorusVerdict } from '../practice/tempo-ladder';
import { asPitchClass } from '../theory/units';
import { addBends, addHeard, type BendSum, type HeardFigures, NOTHING_HEARD } from './log-entry';

/**
 * A bend within so many cents of its target is hit: listeners call sung notes out of tune from about 25 cents (Music &
 * Science 1, 2018, doi 10.1177/2059204318784582).
 */
const BEND_HIT = 25;

/** A try at a bend, as a sum of one. @param cents from the target; null where nothing could be measured. */
export const bendSum = (sound: string, hit: boolean, cents: number | null): BendSum => ({
  sound,
  tries: 1,
  hits: hit ? 1 : 0,
  measured: cents === null ? 0 : 1,
  cents: cents ?? 0,
  squares: cents === null ? 0 : cents * cents,
});

const figuresOf = ({ note, kind, chord, timing }: Hit): HeardFigures => {
  const tone = chord.tones.find(({ pitchClass }) => pitchClass === asPitchClass(Math.round(note.pitch)));
  return {
    ...NOTHING_HEARD,
    notes: 1,
    chord: kind === 'chord' ? 1 : 0,
    blue: kind === 'blue' ? 1 : 0,
    scale: kind === 'scale' ? 1 : 0,
    functions: kind === 'chord' && tone !== undefined ? { [tone.degree]: 1 } : {},
    timed: timing === null ? 0 : 1,
  };
};

/** A heard chorus in counts. */
export const chorusFigures = ({ hits, bars }: HeardChorus): HeardFigures => ({
  ...hits.map(figuresOf).reduce(addHeard, NOTHING_HEARD),
  early: bars.reduce((sum, { early }) => sum + early, 0),
  late: bars.reduce((sum, { late }) => sum + late, 0),
});

/** The bends and overbends that stood in a chorus: only where they settled can they be measured. */
export const chorusBends = ({ hits }: HeardChorus): readonly BendSum[] =>
  hits
    .flatMap(({ note: { sound, offset } }): readonly (readonly BendSum[])[] =>
      sound === null || sound.technique === 'natural' || offset === null
        ? []
        : [[bendSum(soundId(sound), Math.abs(offset) <= BEND_HIT, offset)]],
    )
    .reduce(addBends, []);

/**
 * Few notes say nothing. A chorus is clean where at most one note in eight is neither of chord, blues nor scale and at
 * most one in four beside the beat; it is trouble from three in ten and one in two on (by design, no source: practice
 * is steered to 70–90 % success).
 */
const JUDGING = {
  few: 8,
  clean: { other: 1 / 8, beside: 1 / 4 },
  trouble: { other: 3 / 10, beside: 1 / 2 },
} as const;

/** What a heard chorus was worth; null where too little was heard to say. */
export const chorusVerdict = (figures: HeardFigures): ChorusVerdict | null => {
  const { notes, chord, blue, scale, timed, early, late } = figures;
  if (notes < JUDGING.few) return null;
  const other = (notes - chord - blue - scale) / notes;
  const beside = timed === 0 ? 0 : (early + late) / timed;
  if (other >= JUDGING.trouble.other || beside >= JUDGING.trouble.beside) return 'trouble';
  return other <= JUDGING.clean.other && beside <= JUDGING.clean.beside ? 'clean' : 'fair';
};
