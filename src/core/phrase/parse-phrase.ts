import { METERS } from '../chart/build-chart';
import type { MeterName } from '../chart/chart';
import { HOLES } from '../harp/build-harp';
import { soundId } from '../harp/tab';
import { type Fields, isRecord } from '../theory/is-record';
import { asTicks, type Ticks } from '../theory/units';
import { isDynamic, USUAL_DYNAMIC } from './dynamics';
import { mostTicks } from './edit-phrase';
import type { Phrase, PhraseManner, PhraseNote, PhraseSound } from './phrase';
import { MOST_POINTS } from './read-note';
import { MOST_PHRASE_BARS } from './read-phrase';
import { DEEPEST_BEND, readTab } from './read-tab';

/** A phrase read from outside with what had to be mended, in sentences; null when nothing of it can be used. */
export interface ParsedPhrase {
  readonly phrase: Phrase | null;
  readonly mended: readonly string[];
}

const isMeter = (value: unknown): value is MeterName =>
  typeof value === 'string' && Object.hasOwn(METERS, value);

const isCount = (value: unknown, least: number): value is number =>
  typeof value === 'number' && Number.isSafeInteger(value) && value >= least;

/** A sound is read through its id, so that exactly what tab can write is let in. */
const parseSound = (value: unknown): PhraseSound | null => {
  if (!isRecord(value)) return null;
  const { hole, breath, technique, bend } = value;
  if (!isCount(hole, 1) || !isCount(bend, 0) || bend > 11) return null;
  if (breath !== 'blow' && breath !== 'draw') return null;
  if (technique !== 'natural' && technique !== 'bend' && technique !== 'overbend') return null;
  const sound = readTab(soundId({ hole, breath, technique, bend }));
  return sound?.technique === technique ? sound : null;
};

/** Minus zero, which JSON does not keep, becomes zero. */
const plainTicks = (count: number): Ticks => asTicks(count + 0);

const isHoleBeside = (value: unknown, { hole }: PhraseSound): value is number =>
  isCount(value, 1) && value <= HOLES.most && value !== hole;

const isCurve = (value: unknown, { technique, bend }: PhraseSound): value is readonly number[] => {
  if (!Array.isArray(value) || technique === 'overbend' || value.length > MOST_POINTS) return false;
  const points: readonly unknown[] = value;
  const within = points.every((each) => isCount(each, 0) && each < 100 * (DEEPEST_BEND + 1));
  const [first] = points;
  const begins = typeof first === 'number' && Math.floor(first / 100) === bend;
  return within && begins && (points.length > 1 || first > 100 * bend);
};

/** How a note is played, as far as it can be read. */
const parseManner = (value: Fields, sounds: readonly PhraseSound[]): PhraseManner => {
  const [only] = sounds;
  const single = sounds.length === 1 ? only : undefined;
  const { dynamic, accent, curve, slide, shake } = value;
  const curved = single !== undefined && isCurve(curve, single);
  return {
    ...(isDynamic(dynamic) && dynamic !== USUAL_DYNAMIC && { dynamic }),
    ...(accent === true && { accent }),
    ...(curved && { curve: curve.map((cents) => cents + 0) }),
    ...(single && isHoleBeside(slide, single) && { slide }),
    ...(single && !curved && isHoleBeside(shake, single) && { shake }),
  };
};

const MANNERS = ['dynamic', 'accent', 'curve', 'slide', 'shake'] as const;

const parseNote = (value: unknown): PhraseNote | null => {
  if (!isRecord(value) || !isCount(value.at, 0) || !isCount(value.length, 1)) return null;
  if (!isCount(value.at + value.length, 1)) return null;
  const given = Array.isArray(value.sounds) ? value.sounds : [];
  const sounds = given.flatMap((each) => parseSound(each) ?? []);
  const sameBreath = sounds.every(({ breath }) => breath === sounds[0]?.breath);
  if (sounds.length === 0 || sounds.length < given.length || !sameBreath) return null;
  return { at: plainTicks(value.at), length: asTicks(value.length), sounds, ...parseManner(value, sounds) };
};

/** Notes of which something that was given about their playing is not there. */
const plainer = (given: readonly unknown[], read: readonly (PhraseNote | null)[]): number =>
  given.filter((value, i) => {
    const note = read[i];
    return isRecord(value) && !!note && MANNERS.some((name) => value[name] !== undefined && !(name in note));
  }).length;

/** Puts notes in order; a note that begins under the one before it goes. */
const inOrder = (notes: readonly PhraseNote[]): readonly PhraseNote[] => {
  const kept: PhraseNote[] = [];
  for (const note of notes.toSorted((a, b) => a.at - b.at)) {
    const last = kept.at(-1);
    if (last === undefined || note.at >= last.at + last.length) kept.push(note);
  }
  return kept;
};

/** Reads a phrase from storage, a link or a file, as long as a phrase may be. Never throws. */
export const parsePhrase = (value: unknown): ParsedPhrase => {
  if (!isRecord(value) || !isMeter(value.meter) || !Array.isArray(value.notes)) {
    return { phrase: null, mended: ['This is not a phrase; write it again as tab.'] };
  }
  const given: readonly unknown[] = value.notes;
  const read = given.map(parseNote);
  const meter = value.meter;
  const most = mostTicks({ meter });
  const ordered = inOrder(read.filter((each) => each !== null));
  const notes = ordered.filter(({ at, length }) => at + length <= most);
  const held = plainer(given, read);
  const last = notes.at(-1);
  const end = last === undefined ? 0 : last.at + last.length;
  const length = isCount(value.length, end) && value.length <= most ? value.length : end;
  const lost = given.length - ordered.length;
  const late = ordered.length - notes.length;
  const mended = [
    ...(lost > 0 ? [`${lost} of ${given.length} notes could not be read and were left out.`] : []),
    ...(late > 0
      ? [
          `A phrase holds ${MOST_PHRASE_BARS} bars: ${late} of ${given.length} notes after them were left out.`,
        ]
      : []),
    ...(held > 0 ? [`How ${held === 1 ? 'a note is' : `${held} notes are`} played could not be read.`] : []),
    ...(length !== value.length ? ['The length of the phrase did not fit its notes and was set anew.'] : []),
  ];
  return { phrase: { meter, length: plainTicks(length), notes }, mended };
};
