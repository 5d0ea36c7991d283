import { harpKind } from '../bends/bend-results';
import { bendTargets } from '../bends/bend-targets';
import type { BookSong } from '../book/book-song';
import type { Chart } from '../chart/chart';
import { harpName } from '../fit/advice-words';
import type { Harp } from '../harp/harp';
import { isInReach, type TechniqueChoice } from '../harp/reach';
import { soundId, spokenHole } from '../harp/tab';
import type { KeptPhrase } from '../phrasebook/kept-phrase';
import { degreeText, ENGLISH } from '../theory/note-names';
import { type Exercise, itemId, type PracticeItem } from './practice-item';

/** What there is to practise on. */
export interface Practisable {
  readonly harp: Harp;
  readonly technique: TechniqueChoice;
  readonly chart: Chart;
  readonly position: number;
  readonly songs: readonly BookSong[];
  readonly phrases: readonly KeptPhrase[];
}

/** Scales that are practised by position, easiest first, and their names. */
const SCALES = [
  { scale: 'minor-pentatonic', name: 'Minor pentatonic' },
  { scale: 'major-pentatonic', name: 'Major pentatonic' },
  { scale: 'minor-blues', name: 'Minor blues scale' },
] as const;

/** The tones that tell chords apart: the third first, then the seventh. */
const isGuide = (degree: string): boolean => /^b?[37]$/.test(degree);

const tonesOf = (chart: Chart): readonly { readonly name: string; readonly exercise: Exercise }[] => {
  const chords = chart.bars.flatMap((bar) => bar.chords.map(({ chord }) => chord));
  const byRoman = new Map(chords.map((chord) => [chord.roman, chord]));
  return [...byRoman.values()].flatMap(({ roman, tones }) =>
    tones
      .filter(({ degree }) => isGuide(degree))
      .map(({ degree }) => ({
        name: `The ${degreeText(degree)} over ${degreeText(roman)}`,
        exercise: { kind: 'tone', degree, roman } as const,
      })),
  );
};

const bendsOf = ({ harp, technique }: Practisable) =>
  bendTargets(harp)
    .filter((sound) => isInReach(sound, technique))
    .map((sound) => ({
      name: `${spokenHole(sound)} on the ${ENGLISH.key(harpName(harp))}`,
      exercise: { kind: 'bend', sound: soundId(sound), harpKind: harpKind(harp) } as const,
    }));

/** One of each kind in turn, so that what is new is not always of one kind. */
const inTurn = <Each>(lists: readonly (readonly Each[])[]): readonly Each[] => {
  const longest = Math.max(0, ...lists.map(({ length }) => length));
  return Array.from({ length: longest }, (_, i) => lists.flatMap((list) => list.slice(i, i + 1))).flat();
};

/**
 * Everything that can be practised with what is on the stand and in the book, in the order in which it is taken up:
 * what is known keeps what is known of it. Bends out of reach and scales of another position that are known come last;
 * what cannot be put on the stand now, as the bends of another harp, is not among them.
 */
export const itemList = (stand: Practisable, known: readonly PracticeItem[]): readonly PracticeItem[] => {
  const lists = [
    tonesOf(stand.chart),
    bendsOf(stand),
    stand.songs.map(({ id, name, choices }) => ({
      name: `${name} at ${Math.round(choices.tempo)}`,
      exercise: { kind: 'song', song: id, tempo: Math.round(choices.tempo) } as const,
    })),
    stand.phrases.map(({ id, name }) => ({ name, exercise: { kind: 'phrase', phrase: id } as const })),
    SCALES.map(({ scale, name }) => ({
      name: `${name}, position ${stand.position}`,
      exercise: { kind: 'scale', scale, position: stand.position } as const,
    })),
  ];
  const memories = new Map(known.map((item) => [item.id, item]));
  const items = inTurn<{ readonly name: string; readonly exercise: Exercise }>(lists).map(
    ({ name, exercise }) => {
      const id = itemId(exercise);
      return { id, name, exercise, memory: memories.get(id)?.memory ?? null };
    },
  );
  const listed = new Set(items.map(({ id }) => id));
  const songs = new Set(stand.songs.map(({ id }) => id));
  const phrases = new Set(stand.phrases.map(({ id }) => id));
  const kind = harpKind(stand.harp);
  /** What cannot be put on the stand now waits, and is not lost. */
  const possible = ({ exercise }: PracticeItem): boolean => {
    if (exercise.kind === 'song') return songs.has(exercise.song);
    if (exercise.kind === 'phrase') return phrases.has(exercise.phrase);
    if (exercise.kind === 'bend') return exercise.harpKind === kind;
    return exercise.kind === 'scale';
  };
  return [...items, ...known.filter((item) => !listed.has(item.id) && possible(item))];
};
