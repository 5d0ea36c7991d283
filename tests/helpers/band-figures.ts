import { chorusShapes } from '../../src/core/arranger/arc';
import type { Program, Section } from '../../src/core/arranger/program';
import type { FormId } from '../../src/core/chart/forms';
import { type FeelId, feelOf } from '../../src/core/feels/feels';
import { DRUM_KEYS } from '../../src/core/score/drum-kit';
import type { NoteEvent, PartId } from '../../src/core/score/score';
import { inBar, partOf, sectionOf } from './score-events';
import { testChart, testProgram } from './test-charts';

/** What tires the ear over many choruses, counted. Shares are 0–1. */
export interface BandFigures {
  readonly feel: FeelId;
  /** Chord notes that lie a minor ninth over the bass for a triplet eighth or longer. */
  readonly minorNinths: number;
  /** Choruses that equal an earlier one in every note of bass and chords. */
  readonly sameChoruses: number;
  /** Mean share of bars that equal the same bar of another chorus: bass, chords, drums. */
  readonly similar: Readonly<Record<'bass' | 'chords' | 'drums', number>>;
  /** Share of the strokes on the home chord that take one of its two commonest voicings. */
  readonly topTwo: number;
  /** Bars in a row whose bass has the same rhythm, at most. */
  readonly bassRun: number;
  /** Share of phrases inside the chorus (bars 4, 8) and of choruses that end in a fill. */
  readonly fills: readonly [number, number];
  /** Share of fills with a crash on the next first beat, and of bars whose end the hands fill with hat foot and kick. */
  readonly crash: number;
  readonly foot: number;
  readonly kick: number;
  readonly chordTop: number;
  /**
   * Share of chord strokes struck together with the bass, and with kick or backbeat. A chord held for a beat or longer
   * lies under what others play, and is not counted.
   */
  readonly withBass: number;
  readonly withDrums: number;
}

/** What is counted: a form in a key, and how many choruses of it. */
interface BandSong {
  readonly form?: FormId;
  readonly key?: number;
  readonly choruses?: number;
}

const onsets = (events: readonly NoteEvent[]): readonly number[] => [...new Set(events.map(({ at }) => at))];

/** Chord notes that rub with the bass: a minor ninth above it (or more octaves) for a triplet eighth or longer. */
export const minorNinthsOf = (section: Section): readonly string[] => {
  const bass = partOf(section, 'bass');
  const least = section.chart.meter.beatTicks / 3;
  return partOf(section, 'chords').flatMap((note) =>
    bass
      .filter(({ pitch }) => note.pitch > pitch && (note.pitch - pitch) % 12 === 1)
      .filter(
        ({ at, length }) => Math.min(note.at + note.length, at + length) - Math.max(note.at, at) >= least - 1,
      )
      .map(({ at, pitch }) => `chord ${note.pitch} at ${note.at} over bass ${pitch} at ${at}`),
  );
};

const rhythmOf = (section: Section, bar: number, part: PartId): string =>
  onsets(inBar(section, bar, part)).join();

const barPrint = (section: Section, bar: number, part: PartId): string =>
  inBar(section, bar, part)
    .map(({ at, pitch }) => `${at}:${pitch}`)
    .join();

const longestRun = (labels: readonly string[]): number => {
  let longest = 0;
  let run = 0;
  for (const [i, label] of labels.entries()) {
    run = label === labels[i - 1] ? run + 1 : 1;
    longest = Math.max(longest, run);
  }
  return longest;
};

/** The longest run of bars whose bass has the same rhythm. */
export const bassRunOf = (sections: readonly Section[]): number =>
  longestRun(sections.flatMap((s) => s.chart.bars.map((_, bar) => rhythmOf(s, bar, 'bass'))));

const similarityOf = (sections: readonly Section[], part: PartId): number => {
  const prints = sections.map((s) => s.chart.bars.map((_, bar) => barPrint(s, bar, part)));
  let same = 0;
  let all = 0;
  for (const [i, a] of prints.entries()) {
    for (const b of prints.slice(i + 1)) {
      same += a.filter((print, bar) => print !== '' && print === b[bar]).length;
      all += a.length;
    }
  }
  return all === 0 ? 0 : same / all;
};

const strokesOf = (events: readonly NoteEvent[]): ReadonlyMap<number, readonly number[]> => {
  const strokes = new Map<number, number[]>();
  for (const { at, pitch } of events) strokes.set(at, [...(strokes.get(at) ?? []), pitch]);
  return strokes;
};

/** Share of the strokes on the home chord that the two commonest voicings take. */
export const topTwoOf = (sections: readonly Section[]): number => {
  const counts = new Map<string, number>();
  for (const section of sections) {
    const spans = section.chart.bars.flatMap(({ chords }) => chords);
    for (const [at, pitches] of strokesOf(partOf(section, 'chords'))) {
      const chord = spans.findLast((span) => span.at <= at)?.chord;
      if (chord?.root !== section.chart.key || pitches.length < 2) continue;
      const name = pitches.toSorted((a, b) => a - b).join();
      counts.set(name, (counts.get(name) ?? 0) + 1);
    }
  }
  const sorted = [...counts.values()].sort((a, b) => b - a);
  const all = sorted.reduce((sum, count) => sum + count, 0);
  return all === 0 ? 0 : ((sorted[0] ?? 0) + (sorted[1] ?? 0)) / all;
};

const share = (flags: readonly boolean[]): number =>
  flags.length === 0 ? 0 : flags.filter(Boolean).length / flags.length;

const has = (section: Section, bar: number, key: number): boolean =>
  inBar(section, bar, 'drums').some(({ pitch }) => pitch === key);

const crashAt = (section: Section | undefined, bar: number): boolean =>
  section !== undefined &&
  inBar(section, bar, 'drums').some(({ at, pitch }) => at === 0 && pitch === DRUM_KEYS.crash);

/** Filled bars of time, with what goes on under them. */
export const fillsOf = (program: Program, sections: readonly Section[]) =>
  sections.flatMap((section, chorus) => {
    const bars = section.chart.bars.length;
    const shapes = chorusShapes(program, chorus, section.chart.bars, false);
    return shapes.flatMap((shape, bar) => {
      if (shape.drums !== 'time') return [];
      const next = bar + 1 < bars ? crashAt(section, bar + 1) : crashAt(sections[chorus + 1], 0);
      const plain = shape.fill === 'none';
      return [
        {
          bar,
          bars,
          filled: !plain,
          byHand: !plain && shape.fill !== 'cue' && shape.fill !== 'pick-up',
          crash: next,
          foot: has(section, bar, DRUM_KEYS.foot),
          kick: has(section, bar, DRUM_KEYS.kick),
        },
      ];
    });
  });

const together = (sections: readonly Section[], wanted: (event: NoteEvent) => boolean): number =>
  share(
    sections.flatMap((section) => {
      const others = onsets(section.score.events.filter(wanted));
      const { beatTicks } = section.chart.meter;
      const held = new Set<number>(
        partOf(section, 'chords').flatMap(({ at, length }) => (length >= beatTicks * 0.9 ? [at] : [])),
      );
      const short = onsets(partOf(section, 'chords')).filter((at) => !held.has(at));
      return short.map((at) => others.some((other) => Math.abs(other - at) < 12));
    }),
  );

const LOUD: readonly number[] = [DRUM_KEYS.kick, DRUM_KEYS.snare, DRUM_KEYS.stick, DRUM_KEYS.slap];

/** Counts choruses 0 to `choruses` − 1 of a feel at its usual tempo under the breathing arc. */
export const bandFigures = (
  feel: FeelId,
  seed: number,
  { form = 'standard-turnaround', key = 7, choruses = 24 }: BandSong = {},
): BandFigures => {
  const chart = testChart(form, key, feelOf(feel).meter ?? '4/4');
  const program = testProgram(feel, {
    chart,
    style: { seed },
    plan: { arc: 'breathe', turnarounds: 'varied' },
  });
  const sections = Array.from({ length: choruses }, (_, index) => sectionOf(program, index));
  const prints = sections.map((s) =>
    JSON.stringify(s.chart.bars.map((_, bar) => [barPrint(s, bar, 'bass'), barPrint(s, bar, 'chords')])),
  );
  const fills = fillsOf(program, sections);
  const filled = fills.filter((each) => each.filled);
  const byHand = fills.filter((each) => each.byHand);
  const ends = (wanted: (each: (typeof fills)[number]) => boolean) =>
    share(fills.filter(wanted).map((each) => each.filled));
  const tops = sections.flatMap((s) => partOf(s, 'chords').map(({ pitch }) => pitch));
  return {
    feel,
    minorNinths: sections.reduce((sum, section) => sum + minorNinthsOf(section).length, 0),
    sameChoruses: prints.filter((print, i) => prints.indexOf(print) < i).length,
    similar: {
      bass: similarityOf(sections, 'bass'),
      chords: similarityOf(sections, 'chords'),
      drums: similarityOf(sections, 'drums'),
    },
    topTwo: topTwoOf(sections),
    bassRun: bassRunOf(sections),
    fills: [
      ends(({ bar, bars }) => bar % 4 === 3 && bar < bars - 1),
      ends(({ bar, bars }) => bar === bars - 1),
    ],
    crash: share(filled.map((each) => each.crash)),
    foot: share(byHand.map((each) => each.foot)),
    kick: share(byHand.map((each) => each.kick)),
    chordTop: Math.max(...tops),
    withBass: together(sections, ({ part }) => part === 'bass'),
    withDrums: together(
      sections,
      ({ part, pitch, velocity }) => part === 'drums' && velocity >= 50 && LOUD.includes(pitch),
    ),
  };
};

const percent = (value: number): string => (value * 100).toFixed(0);

/** The figures as one line of a table. */
export const bandFiguresLine = (f: BandFigures): string =>
  [
    f.feel.padEnd(14),
    String(f.minorNinths).padStart(4),
    String(f.sameChoruses).padStart(5),
    [f.similar.bass, f.similar.chords, f.similar.drums].map(percent).join('/').padStart(11),
    percent(f.topTwo).padStart(5),
    String(f.bassRun).padStart(5),
    f.fills.map(percent).join('/').padStart(12),
    percent(f.crash).padStart(6),
    percent(f.foot).padStart(5),
    percent(f.kick).padStart(5),
    String(f.chordTop).padStart(4),
    percent(f.withBass).padStart(6),
    percent(f.withDrums).padStart(6),
  ].join(' ');

export const BAND_FIGURES_HEAD =
  'feel            m9  same sim b/c/d%  top2% brun fills 4,8/12 crash% foot% kick%  top w.bass w.drums';
