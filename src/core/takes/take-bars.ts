import type { Section } from '../arranger/program';
import type { Harp, Sound } from '../harp/harp';
import { isInReach } from '../harp/reach';
import type { Settings } from '../settings/settings';
import type { Chord } from '../theory/chord';
import type { Midi } from '../theory/units';
import { type ChorusReport, chorusNote, reportOnChorus } from './chorus-report';
import type { EndedNote } from './take-note';
import type { TakePass } from './take-passes';

/** A note as it is written under a bar. */
export interface WrittenNote {
  readonly id: number;
  /** Null for what never settled, or is nothing the harp has. */
  readonly sound: Sound | null;
  /** Of other holes that sounded with it. */
  readonly together: readonly Sound[];
  /** Sounds of the same pitch, within the player's reach, that may as well have been played. */
  readonly alternatives: readonly Sound[];
  readonly steady: boolean;
  readonly pitch: Midi;
  /** Place in the bar, 0 at its beginning to 1 at its end; 0 where there is no bar. */
  readonly share: number;
  /** Seconds of the take. */
  readonly from: number;
}

/** A bar of a take as it is written down. */
export interface WrittenBar {
  /** From 1, in the whole chorus; null in count-ins, intros and endings. */
  readonly number: number | null;
  readonly chords: readonly Chord[];
  readonly notes: readonly WrittenNote[];
}

/** One way through a section as it is written down; without the band, phrases in place of bars. */
export type WrittenPass =
  | {
      readonly kind: Section['kind'];
      /** From 0. */
      readonly chorus: number;
      readonly bars: readonly WrittenBar[];
      /** What was hit, of a chorus. */
      readonly report: ChorusReport | null;
    }
  | { readonly kind: 'free'; readonly phrases: readonly (readonly WrittenNote[])[] };

/** Silence between phrases played without a band, in seconds. */
const BREATHER = 0.8;
/** More notes than this have no room in a line. */
const LONGEST_PHRASE = 16;

const written = (
  { id, sound, together, alternatives, steady, pitch, from }: EndedNote,
  share: number,
): WrittenNote => ({
  ...{ id, sound, together, alternatives, steady, pitch, from },
  share: Math.max(0, Math.min(1, share)),
});

/** Leaves out what the player does not use: of two places of a pitch one is then no question. */
const withinReach =
  ({ technique }: Settings) =>
  (note: WrittenNote): WrittenNote => ({
    ...note,
    alternatives: note.alternatives.filter((sound) => isInReach(sound, technique)),
  });

const barsOf = ({ notes }: TakePass, { chart, barNumbers }: Section): readonly WrittenBar[] =>
  chart.bars.map((bar, i) => {
    const number = barNumbers[i] ?? null;
    return {
      number: number === null ? null : number + 1,
      chords: bar.chords.map(({ chord }) => chord),
      notes: notes.flatMap(({ note, playhead }) =>
        playhead?.bar === i ? [written(note, (playhead.ticks - bar.at) / bar.length)] : [],
      ),
    };
  });

const phrasesOf = (notes: readonly EndedNote[]): readonly (readonly WrittenNote[])[] => {
  const phrases: WrittenNote[][] = [];
  let over = Number.NEGATIVE_INFINITY;
  for (const note of notes) {
    const last = phrases.at(-1);
    if (last === undefined || note.from - over > BREATHER || last.length >= LONGEST_PHRASE)
      phrases.push([written(note, 0)]);
    else last.push(written(note, 0));
    over = note.to;
  }
  return phrases;
};

/** Writes passes down: every note under its bar, and of each chorus what was hit. */
export const writtenPasses = (
  passes: readonly TakePass[],
  choices: { readonly settings: Settings; readonly harp: Harp },
): readonly WrittenPass[] =>
  passes.map((pass) => {
    const { section, notes } = pass;
    const reached = withinReach(choices.settings);
    if (section === null) {
      const phrases = phrasesOf(notes.map(({ note }) => note));
      return { kind: 'free', phrases: phrases.map((phrase) => phrase.map(reached)) };
    }
    const { kind, chorus } = section;
    const judged = kind === 'chorus' ? notes.flatMap((each) => chorusNote(each) ?? []) : [];
    const report = kind === 'chorus' ? reportOnChorus(section, judged, choices) : null;
    const bars = barsOf(pass, section).map((bar) => ({ ...bar, notes: bar.notes.map(reached) }));
    return { kind, chorus, bars, report };
  });
