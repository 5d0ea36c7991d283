import { barTicks, METERS } from '../chart/build-chart';
import type { Meter } from '../chart/chart';
import type { Phrase, PhraseNote, PhraseSound } from './phrase';

/** A note’s written length, without dots and triplets. */
export type NoteValue = 'whole' | 'half' | 'quarter' | 'eighth' | 'sixteenth';

/** One written note or rest. */
export interface RhythmSign {
  /** Ticks from the phrase's start. */
  readonly at: number;
  readonly length: number;
  readonly value: NoteValue;
  readonly dotted: boolean;
  /** One of three in the time of two. */
  readonly triplet: boolean;
  /** Goes on in the sign after it. */
  readonly tied: boolean;
  /** What to play; empty for a rest and where a tied note goes on. */
  readonly sounds: readonly PhraseSound[];
  /** The whole note where it begins; null for a rest and where a tied note goes on. */
  readonly note: PhraseNote | null;
  readonly rest: boolean;
  /** Neighbours with the same number hang on one beam; null stands alone. */
  readonly beam: number | null;
}

interface Written {
  readonly value: NoteValue;
  readonly dotted: boolean;
  readonly triplet: boolean;
  readonly ticks: number;
}

/** Note values in ticks, 480 to the quarter (Open Music Theory, "Rhythmic and Rest Values"; dots and triplets there too). */
const PLAIN: readonly (readonly [NoteValue, number])[] = [
  ['whole', 1920],
  ['half', 960],
  ['quarter', 480],
  ['eighth', 240],
  ['sixteenth', 120],
];

const WRITTEN: readonly Written[] = PLAIN.flatMap(([value, ticks]) => [
  { value, dotted: true, triplet: false, ticks: ticks * 1.5 },
  { value, dotted: false, triplet: false, ticks },
]).sort((a, b) => b.ticks - a.ticks);

const TRIPLETS: readonly Written[] = PLAIN.map(([value, ticks]) => ({
  value,
  dotted: false,
  triplet: true,
  ticks: (ticks * 2) / 3,
}));

const SHORTEST: Written = { value: 'sixteenth', dotted: false, triplet: false, ticks: 120 };

/** In compound meters beats are dotted, so what is longer than a beat is written as dotted values. */
const fits = ({ value, dotted }: Written, compound: boolean): boolean =>
  !compound || dotted || value === 'quarter' || value === 'eighth' || value === 'sixteenth';

/** A length as written values: one where there is one, else several tied, the longest first. */
const writtenFor = (length: number, compound: boolean): readonly Written[] => {
  const single = [...WRITTEN.filter((each) => fits(each, compound)), ...TRIPLETS].find(
    ({ ticks }) => ticks === length,
  );
  if (single !== undefined) return [single];
  const longest = WRITTEN.find((each) => each.ticks < length && fits(each, compound));
  if (longest === undefined) return [{ ...SHORTEST, ticks: length }];
  return [longest, ...writtenFor(length - longest.ticks, compound)];
};

interface Stretch {
  readonly at: number;
  readonly length: number;
  readonly note: PhraseNote | null;
}

/** Notes and the silences between them. */
const stretchesOf = ({ notes, length }: Phrase): readonly Stretch[] => {
  const stretches: Stretch[] = [];
  let at = 0;
  const rest = (until: number): void => {
    if (until > at) stretches.push({ at, length: until - at, note: null });
  };
  for (const note of notes) {
    rest(note.at);
    stretches.push({ at: note.at, length: note.length, note });
    at = note.at + note.length;
  }
  rest(length);
  return stretches;
};

type Unbeamed = Omit<RhythmSign, 'beam'>;

/** What of a stretch lies in a bar. A silent bar gets the whole-bar rest, whatever its meter. */
const signsIn = (stretch: Stretch, from: number, meter: Meter): readonly Unbeamed[] => {
  const bar = barTicks(meter);
  const end = stretch.at + stretch.length;
  const at = Math.max(stretch.at, from);
  const until = Math.min(end, from + bar);
  if (until <= at) return [];
  const rest = stretch.note === null;
  const silent = rest && until - at === bar;
  const written: readonly Written[] = silent
    ? [{ value: 'whole', dotted: false, triplet: false, ticks: bar }]
    : writtenFor(until - at, meter.beatTicks === 720);
  let place = at;
  return written.map(({ ticks, ...sign }): Unbeamed => {
    const here = place;
    place += ticks;
    const begun = here === stretch.at ? stretch.note : null;
    return {
      ...sign,
      at: here,
      length: ticks,
      rest,
      note: begun,
      sounds: begun?.sounds ?? [],
      tied: !rest && place < end,
    };
  });
};

const hasFlag = ({ value, rest }: Unbeamed): boolean =>
  !rest && (value === 'eighth' || value === 'sixteenth');

/** Beams join the short notes of one beat (Open Music Theory, "Simple Meter and Time Signatures", on beaming). */
const beamed = (signs: readonly Unbeamed[], beat: number): readonly RhythmSign[] => {
  const beatOf = ({ at }: Unbeamed): number => Math.floor(at / beat);
  const joins = (a: Unbeamed | undefined, b: Unbeamed | undefined): boolean =>
    a !== undefined && b !== undefined && hasFlag(a) && hasFlag(b) && beatOf(a) === beatOf(b);
  return signs.map((sign, i) => ({
    ...sign,
    beam: joins(signs[i - 1], sign) || joins(sign, signs[i + 1]) ? beatOf(sign) : null,
  }));
};

/** A phrase as it is written down: for each bar its notes and rests, ties over what one sign cannot say. */
export const rhythmBars = (phrase: Phrase): readonly (readonly RhythmSign[])[] => {
  const meter = METERS[phrase.meter];
  const bar = barTicks(meter);
  const stretches = stretchesOf(phrase);
  return Array.from({ length: Math.ceil(phrase.length / bar) }, (_, i) =>
    beamed(
      stretches.flatMap((stretch) => signsIn(stretch, i * bar, meter)),
      meter.beatTicks,
    ),
  );
};
