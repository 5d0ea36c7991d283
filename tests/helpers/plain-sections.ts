/** Small sections and programs made by hand, for tests of the clockwork that do not need music. */

import type { Program, Section } from '../../src/core/arranger/program';
import type { Bar, Chart } from '../../src/core/chart/chart';
import type { NoteEvent, PartId } from '../../src/core/score/score';
import { asBpm, asMidi, asPitchClass, asTicks } from '../../src/core/theory/units';

const BEAT = 480;
const BAR = 4 * BEAT;

const chord = {
  roman: 'I',
  symbol: 'C',
  root: asPitchClass(0),
  rootName: 'C',
  quality: '',
  bass: asPitchClass(0),
  tones: [{ degree: 'R', pitchClass: asPitchClass(0), name: 'C' }],
};

const plainBar = (index: number): Bar => {
  const at = asTicks(index * BAR);
  const length = asTicks(BAR);
  return { at, length, chords: [{ chord, at, length }] };
};

/** So many bars of C in four-four. */
export const plainChart = (bars: number): Chart => ({
  title: 'Plain',
  key: asPitchClass(0),
  mode: 'major',
  tonic: 'C',
  meter: { name: '4/4', beats: 4, beatTicks: asTicks(BEAT) },
  bars: Array.from({ length: bars }, (_, index) => plainBar(index)),
  length: asTicks(bars * BAR),
});

/** A program of so many bars at a tempo; `seed` stands for anything that changes the notes. */
export const plainProgram = (
  bars: number,
  bpm: number,
  { choruses = null, countIn = 1, seed = 0, push = {} }: Partial<PlainChoices> = {},
): Program => ({
  chart: plainChart(bars),
  style: {
    feel: 'shuffle',
    bass: 'upright-bass',
    chords: 'piano',
    second: 'none',
    kit: 'sticks',
    swing: 'feel',
    push,
    time: 'usual',
    stopTime: 'off',
    leaveRoom: false,
    seed,
  },
  tempo: asBpm(bpm),
  plan: {
    countInBars: countIn,
    intro: 'none',
    choruses,
    arc: 'steady',
    dynamics: 'lively',
    turnarounds: 'as written',
    ending: 'stop',
    ritard: false,
    repeat: null,
    countBetween: false,
    keys: { kind: 'same' },
    tempo: { kind: 'fixed' },
    click: 'every beat',
    dropOut: null,
    sounding: 'band',
  },
});

interface PlainChoices {
  readonly choruses: number | null;
  readonly countIn: 0 | 1 | 2;
  readonly seed: number;
  readonly push: Partial<Record<PartId, number>>;
}

const note = (part: PartId, at: number, length: number, pitch: number): NoteEvent => ({
  part,
  at: asTicks(at),
  length: asTicks(length),
  pitch: asMidi(pitch),
  velocity: 80,
});

/** Each bar: four drum strokes, four bass notes a beat long, one chord note of a whole bar. */
const barEvents = (bar: number, seed: number): NoteEvent[] => {
  const start = bar * BAR;
  return [0, 1, 2, 3].flatMap((beat) => [
    ...(beat === 0 ? [note('chords', start, BAR, 60 + (seed % 12))] : []),
    note('bass', start + beat * BEAT, BEAT, 36 + ((bar + beat + seed) % 12)),
    note('drums', start + beat * BEAT, BEAT / 2, beat % 2 === 0 ? 36 : 38),
  ]);
};

const clicks = (bars: number): NoteEvent[] =>
  Array.from({ length: bars * 4 }, (_, beat) => note('click', beat * BEAT, 60, 76));

/** Sections of a plain program: a count-in of clicks if asked for, then choruses. */
export const plainSections = (program: Program, index: number, fromBar: number): Section | null => {
  const { countInBars, choruses } = program.plan;
  const counting = countInBars > 0;
  if (counting && index === 0) return plainSection(program, { index, chorus: 0, from: 0, counting: true });
  const chorus = index - (counting ? 1 : 0);
  if (choruses !== null && chorus >= choruses) return null;
  return plainSection(program, { index, chorus, from: chorus === 0 ? fromBar : 0, counting: false });
};

const plainSection = (
  { chart, plan, tempo, style }: Program,
  { index, chorus, from, counting }: { index: number; chorus: number; from: number; counting: boolean },
): Section => {
  const bars = counting ? plan.countInBars : chart.bars.length - from;
  const own = plainChart(bars);
  return {
    index,
    kind: counting ? 'count-in' : 'chorus',
    chorus,
    chart: own,
    barNumbers: own.bars.map((_, bar) => (counting ? null : bar + from)),
    score: {
      length: own.length,
      events: counting ? clicks(bars) : own.bars.flatMap((_, bar) => barEvents(bar, style.seed)),
    },
    tempo: [{ at: asTicks(0), bpm: tempo }],
    last: !counting && plan.choruses !== null && chorus === plan.choruses - 1,
  };
};
