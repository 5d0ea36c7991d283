import { type MarkedSound, markSounds } from '../../../core/fit/mark-sounds';
import { buildHarp } from '../../../core/harp/build-harp';
import { EVERY_TECHNIQUE, NATURAL_NOTES, type TechniqueChoice } from '../../../core/harp/reach';
import { soundId } from '../../../core/harp/tab';
import { RICHTER } from '../../../core/harp/tunings';
import { chordOf } from '../../../core/theory/chords';
import { scaleOf } from '../../../core/theory/scales';
import { asPitchClass } from '../../../core/theory/units';

const marksWith = (technique: TechniqueChoice): ReadonlyMap<string, MarkedSound> => {
  const marks = markSounds({
    harp: buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 }),
    chord: chordOf({ root: 'G', quality: '7' }),
    tonic: 'G',
    scale: scaleOf('minor-blues', 'G'),
    technique,
  });
  return new Map(marks.map((mark) => [soundId(mark.sound), mark]));
};

const ALL = marksWith(EVERY_TECHNIQUE);
const NATURAL = marksWith(NATURAL_NOTES);

const known = (marks: ReadonlyMap<string, MarkedSound>, id: string): MarkedSound => {
  const mark = marks.get(id);
  if (mark === undefined) throw new RangeError(`No sound ${id} on the example harp`);
  return mark;
};

/** The harp the signs are explained on: a standard C harp over G7, the minor blues scale in G beneath. */
export const example = (id: string): MarkedSound => known(ALL, id);

/** The same with natural notes alone in reach. */
export const outOfReach = (id: string): MarkedSound => known(NATURAL, id);
