/** What was hit in a chorus, bar by bar: notes heard over the chords that sounded with them. */
import type { Chart, ChordSpan } from '../chart/chart';
import type { Sound } from '../harp/harp';
import { type BeatGrid, stepTicks } from '../score/grid';
import type { Chord, ChordTone } from '../theory/chord';
import { blueNotes, chordScale, type Scale } from '../theory/scales';
import { median } from '../theory/statistics';
import { asPitchClass, type Cents, type Midi, type Seconds } from '../theory/units';

/** A note heard in a chorus. */
export interface ChorusNote {
  /** Index into the bars of the chorus. */
  readonly bar: number;
  /** Ticks from the start of that bar to the beginning of the note. */
  readonly ticks: number;
  readonly pitch: Midi;
  /** What was played on the harp; null where nothing of it is near. */
  readonly sound: Sound | null;
  /** From what the sound is expected at; null without a sound. */
  readonly offset: Cents | null;
  readonly length: Seconds;
  /** How long a tick lasted there. */
  readonly secondsPerTick: number;
  /** False where the note came by a glide, which has no beginning to be judged. */
  readonly attacked: boolean;
}

/** What a note is over the chord and the key. */
export const HIT_KINDS = ['chord', 'blue', 'scale', 'other'] as const;
export type HitKind = (typeof HIT_KINDS)[number];

/** A note that was heard, and what it was over its chord. */
export interface Hit {
  readonly note: ChorusNote;
  readonly kind: HitKind;
  /** The chord it was heard over, or runs ahead of. */
  readonly chord: Chord;
  /** Seconds from the nearest step of the beat, the player's own lean taken off: below 0 early. Null where not judged. */
  readonly timing: number | null;
}

/** How many notes of each kind were heard in a bar, and how many beside the beat. */
export interface BarHits {
  readonly counts: Readonly<Record<HitKind, number>>;
  readonly early: number;
  readonly late: number;
}

/** A chorus the player played, note by note and bar by bar. */
export interface HeardChorus {
  readonly hits: readonly Hit[];
  /** One for each bar of the chart. */
  readonly bars: readonly BarHits[];
  /** How far the player is ahead of the band (below 0) or behind it as a rule, in seconds; 0 with few notes. */
  readonly lean: number;
}

interface Judging {
  readonly chart: Chart;
  readonly grid: BeatGrid;
  /** The scale on the map, of the key; null takes the one that each chord suggests. */
  readonly scale: Scale | null;
}

/** Shorter notes are grazed, not played. Seconds (common practice, no source). */
const GRAZED = 0.06;
/** Notes that begin within this share of a beat before a chord may belong to it: a push (common practice, no source). */
const PUSH = 0.5;
/**
 * What is within so many seconds is in time: note-level scores of music transcription allow as much (onset tolerance
 * of `mir_eval.transcription`), and ensembles themselves differ by 30–40 ms (Acoustical Science and Technology 22(3),
 * 2001, p. 239).
 */
const IN_TIME = 0.05;
/** A lean is believed from so many notes, up to so many seconds. */
const LEAN = { notes: 6, most: 0.06 } as const;

const holdsPitch = (tones: readonly ChordTone[], pitch: Midi): boolean =>
  tones.some(({ pitchClass }) => pitchClass === asPitchClass(Math.round(pitch)));

const kindOver = (chord: Chord, pitch: Midi, { chart, scale }: Judging): HitKind => {
  if (holdsPitch(chord.tones, pitch)) return 'chord';
  if (holdsPitch(blueNotes(chart.tonic), pitch)) return 'blue';
  return holdsPitch((scale ?? chordScale(chord))?.tones ?? [], pitch) ? 'scale' : 'other';
};

/** The chord that sounds with a note, and the one it may run ahead of. */
const chordsAt = (note: ChorusNote, { chart, grid }: Judging): readonly ChordSpan[] => {
  const bar = chart.bars[note.bar];
  if (bar === undefined) return [];
  const at = bar.at + note.ticks;
  const spans = chart.bars.flatMap(({ chords }) => chords);
  const now = spans.findIndex((span) => span.at <= at && at < span.at + span.length);
  const span = spans[now];
  if (span === undefined) return [];
  const ahead = span.at + span.length - at <= PUSH * grid.beatTicks;
  const next = spans[(now + 1) % spans.length];
  return ahead && next !== undefined ? [span, next] : [span];
};

/** Ticks from the nearest step that a beat is commonly divided at; below 0 before it. */
const fromStep = (ticks: number, grid: BeatGrid): number => {
  const beat = Math.floor(ticks / grid.beatTicks);
  const within = ticks - beat * grid.beatTicks;
  const steps = [0, stepTicks(grid, 1, 2), stepTicks(grid, 1, 3), stepTicks(grid, 2, 3), grid.beatTicks];
  return steps.map((step) => within - step).reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
};

const barHits = (hits: readonly Hit[]): BarHits => {
  const count = (kind: HitKind): number => hits.filter((hit) => hit.kind === kind).length;
  return {
    counts: { chord: count('chord'), blue: count('blue'), scale: count('scale'), other: count('other') },
    early: hits.filter(({ timing }) => timing !== null && timing < -IN_TIME).length,
    late: hits.filter(({ timing }) => timing !== null && timing > IN_TIME).length,
  };
};

/** Judges the notes heard in a chorus. Grazed notes and those outside of the chart are left out. */
export const judgeChorus = (notes: readonly ChorusNote[], judging: Judging): HeardChorus => {
  const { chart, grid } = judging;
  const raw = notes
    .filter(({ length }) => length >= GRAZED)
    .flatMap((note) => {
      const spans = chordsAt(note, judging);
      const hit = spans.find(({ chord }) => holdsPitch(chord.tones, note.pitch)) ?? spans[0];
      if (hit === undefined) return [];
      const timing = note.attacked ? fromStep(note.ticks, grid) * note.secondsPerTick : null;
      return [{ note, kind: kindOver(hit.chord, note.pitch, judging), chord: hit.chord, timing }];
    });
  const timings = raw.flatMap(({ timing }) => timing ?? []);
  const lean = timings.length < LEAN.notes ? 0 : Math.max(-LEAN.most, Math.min(LEAN.most, median(timings)));
  const hits = raw.map((hit) => ({ ...hit, timing: hit.timing === null ? null : hit.timing - lean }));
  return {
    hits,
    bars: chart.bars.map((_, bar) => barHits(hits.filter(({ note }) => note.bar === bar))),
    lean,
  };
};
