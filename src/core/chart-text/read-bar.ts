import { barTicks, splitBar } from '../chart/build-chart';
import type { ChordSpan, Meter } from '../chart/chart';
import type { Chord, NoteName } from '../theory/chord';
import { plainSigns } from '../theory/symbol-parts';
import { asTicks, type Ticks } from '../theory/units';
import {
  barCrowded,
  barTooFull,
  beatsUneven,
  chordTrimmed,
  noChord,
  nothingBefore,
  type Problem,
  signNotAlone,
  smallLetter,
} from './chart-problems';
import type { Word } from './chart-signs';
import { chordInKey, likelyChord, type ReadChord, withBass } from './read-chord';
import type { WrittenBar } from './scan-chart';
import { type WordKind, wordKind } from './word-kind';

/** What a bar is read against. */
export interface BarContext {
  readonly tonic: NoteName;
  /** `readChord` in the key. */
  readonly read: (text: string) => ReadChord | null;
  readonly meter: Meter;
  /** The chord that sounds where nothing else can. */
  readonly home: Chord;
  /** What sounded last: the spans of the bar before, or null at the beginning. */
  readonly before: readonly ChordSpan[] | null;
  readonly at: Ticks;
}

/** A bar as it sounds, with what was wrong with it. */
export interface BarReading {
  readonly spans: readonly ChordSpan[];
  readonly problems: readonly Problem[];
}

/** A stretch of a bar in equal shares; a null chord goes on with the one before. */
interface Share {
  readonly chord: Chord | null;
  readonly shares: number;
  readonly band: Played;
}

/** What the band does with a share: as the feel has it, what its span says, or as with the share before. */
type Played = 'plays' | NonNullable<ChordSpan['band']> | 'goes on';

interface WordReading extends Share {
  readonly problem: Problem | null;
}

/** No chord is shorter than a sixteenth, the shortest step any feel divides a beat into. */
const SHORTEST_SHARE = 120;

const overBass = (chord: Chord, bass: string, tonic: NoteName): Chord =>
  chordInKey(withBass(chord, plainSigns(bass)), tonic);

const countOf = (shares: readonly Share[]): number => shares.reduce((sum, each) => sum + each.shares, 0);

const readChordWord = (
  text: string,
  word: Word,
  { read: readIn }: BarContext,
): Pick<WordReading, 'chord' | 'problem'> => {
  const read = readIn(text);
  if (read === null) return { chord: null, problem: noChord(word, likelyChord(text)) };
  const { chord, rest, large } = read;
  if (large !== null) return { chord, problem: smallLetter(word, chord.symbol, large) };
  return { chord, problem: rest === '' ? null : chordTrimmed(word, chord.symbol, rest) };
};

const sharesOf = (is: WordKind): number => {
  if (is.kind === 'beats') return is.beats;
  return is.kind === 'same bar' ? 1 : 1 + is.beats;
};

const readWord = (word: Word, last: Chord, context: BarContext): WordReading => {
  const is = wordKind(word.text);
  const shares = sharesOf(is);
  switch (is.kind) {
    case 'beats':
      return { chord: null, shares, problem: null, band: 'goes on' };
    case 'same bar':
      return { chord: null, shares, problem: signNotAlone(word), band: 'goes on' };
    case 'no chord':
      return { chord: null, shares, problem: null, band: 'rest' };
    case 'bass':
      return { chord: overBass(last, is.bass, context.tonic), shares, problem: null, band: 'plays' };
    case 'chord':
      return { ...readChordWord(is.chord, word, context), shares, band: is.stop ? 'stop' : 'plays' };
  }
};

/** What goes on from the bar before: a rest does, a stroke has been. */
const bandBefore = ({ before }: BarContext): ChordSpan['band'] =>
  before?.at(-1)?.band === 'rest' ? 'rest' : undefined;

const withBand = (span: ChordSpan, band: ChordSpan['band']): ChordSpan =>
  band === undefined ? span : { ...span, band };

/** Lays shares out over the bar; equal neighbours become one chord that goes on. */
const laySpans = (shares: readonly Share[], context: BarContext, last: Chord): readonly ChordSpan[] => {
  const lengths = splitBar(context.meter, countOf(shares));
  const spans: ChordSpan[] = [];
  let at: number = context.at;
  let used = 0;
  let sounding = last;
  let doing = bandBefore(context);
  for (const { chord, shares: count, band } of shares) {
    const length = lengths.slice(used, used + count).reduce<number>((sum, each) => sum + each, 0);
    used += count;
    sounding = chord ?? sounding;
    if (band !== 'goes on') doing = band === 'plays' ? undefined : band;
    const previous = spans.at(-1);
    const isSame =
      previous !== undefined && previous.chord.roman === sounding.roman && previous.band === doing;
    const goesOn = isSame && !(doing === 'stop' && band === 'stop');
    if (goesOn) spans.pop();
    const start = goesOn ? previous.at : at;
    const span = { chord: sounding, at: asTicks(start), length: asTicks(at + length - start) };
    spans.push(withBand(span, doing));
    at += length;
  }
  return spans;
};

/** The bar before, moved here; a bar of the home chord where there is none. */
const repeatBar = ({ before, at, home, meter }: BarContext): readonly ChordSpan[] => {
  const first = before?.[0];
  if (before === null || first === undefined) return [{ chord: home, at, length: barTicks(meter) }];
  return before.map((span) => ({ ...span, at: asTicks(span.at - first.at + at) }));
};

const holdBar = (chord: Chord, context: BarContext): readonly ChordSpan[] => [
  withBand({ chord, at: context.at, length: barTicks(context.meter) }, bandBefore(context)),
];

/** Remarks on how the words share the bar: `C7 / F7` in four beats, or six chords to a bar. */
const shareProblem = (bar: WrittenBar, words: readonly WordReading[], { beats }: Meter): Problem | null => {
  const count = countOf(words);
  const slashed = words.some(
    ({ chord, shares, problem, band }) =>
      shares > 1 || (chord === null && problem === null && band === 'goes on'),
  );
  if (count > beats) return slashed && count % beats === 0 ? null : barCrowded(bar, count, beats);
  return slashed && beats % count !== 0 ? beatsUneven(bar, count, beats) : null;
};

const readWords = (words: readonly Word[], last: Chord, context: BarContext): readonly WordReading[] => {
  let sounding = last;
  return words.map((word) => {
    const reading = readWord(word, sounding, context);
    sounding = reading.chord ?? sounding;
    return reading;
  });
};

const present = (problems: readonly (Problem | null)[]): readonly Problem[] =>
  problems.filter((each): each is Problem => each !== null);

/** How many equal shares words cut their bar into. */
export const beatsOf = (words: readonly Word[]): number =>
  words.reduce((sum, word) => sum + sharesOf(wordKind(word.text)), 0);

/**
 * Reads one bar. A word that is not understood sounds as the chord before it, a bar that cannot be shared out
 * sounds as that chord throughout. Never throws.
 */
export const readBar = (bar: WrittenBar, context: BarContext): BarReading => {
  const { meter, home } = context;
  const last = context.before?.at(-1)?.chord ?? home;
  const [first] = bar.words;
  if (first === undefined) return { spans: holdBar(last, context), problems: [] };
  const missing = context.before === null ? [nothingBefore(first, home.symbol)] : [];
  const opening = wordKind(first.text).kind;
  if (bar.words.length === 1 && opening === 'same bar') {
    return { spans: repeatBar(context), problems: missing };
  }
  const count = beatsOf(bar.words);
  const most = barTicks(meter) / SHORTEST_SHARE;
  if (count > most) return { spans: holdBar(last, context), problems: [barTooFull(bar, count, most)] };
  const words = readWords(bar.words, last, context);
  return {
    spans: laySpans(words, context, last),
    problems: [
      ...(opening === 'beats' || opening === 'bass' ? missing : []),
      ...present([...words.map(({ problem }) => problem), shareProblem(bar, words, meter)]),
    ],
  };
};
