import type { NoteDraft } from '../score/note';
import { fitSteps, readSteps, ticksOf } from '../score/steps';
import type { Random } from '../theory/random';
import { BASS_HIGH, BASS_LOW, bassRoot, homePitch, pickApproach } from './bass-register';
import { chordShape } from './chord-scale';
import { isHalfTime, type Passage, type Segment } from './passage';

/** Velocities on the beats, and of repeated notes between them. */
const STRONG = 92;
const WEAK = 88;
const AGAIN = 72;
/** A turnaround's line stays below this, so that it can come home. */
const LINE_HIGH = 50;

const nearest = (pitchClass: number, from: number): number => {
  const places = [0, 12, 24].map((octave) => homePitch(pitchClass) + octave);
  const within = places.filter((pitch) => pitch >= BASS_LOW && pitch <= Math.min(BASS_HIGH, LINE_HIGH));
  return within.reduce((a, b) => (Math.abs(b - from) < Math.abs(a - from) ? b : a), homePitch(pitchClass));
};

/** The pitches of a turnaround's line, a beat each, bar by bar; the last leads into whatever key follows. */
export const turnaroundPitches = (random: Random, passage: Passage): readonly (readonly number[])[] => {
  const { turnaround, chart, next } = passage;
  if (turnaround === null) return [];
  let last = homePitch(chart.key);
  const home = next === null ? last : bassRoot(next);
  const bars = turnaround.beats.map((beats, i) => {
    const bar = chart.bars[turnaround.bar + i];
    return beats.map((step, beat) => {
      const at = (bar?.at ?? 0) + beat * chart.meter.beatTicks;
      const begins = bar?.chords.find((span) => span.at === at)?.chord;
      const near = nearest(begins === undefined ? chart.key + step : begins.bass, last);
      // The way home is no longer than an octave.
      const far = i === 1 && near - home > 12 && near - 12 >= BASS_LOW;
      last = far ? near - 12 : near;
      return last;
    });
  });
  const lastBeat = chart.length - chart.meter.beatTicks;
  const begins = chart.bars.at(-1)?.chords.some(({ at }) => at === lastBeat);
  if (next === null || next.root === chart.key || begins) return bars;
  const [first = [], second = []] = bars;
  const closing = chart.bars.at(-1)?.chords.at(-1)?.chord ?? next;
  const target = { pitch: bassRoot(next), shape: chordShape(next) };
  const under = { root: closing.root, shape: chordShape(closing) };
  const way = pickApproach(random, second.at(-2) ?? last, target, under);
  return [first, [...second.slice(0, -1), way]];
};

/** A bar of a turnaround in the rhythm of the feel: every chord begins with its bass. */
export const playTurnaroundBar = (
  passage: Passage,
  pitches: readonly number[],
  segments: readonly Segment[],
): readonly NoteDraft[] => {
  const first = segments[0];
  if (first === undefined) return [];
  const { grid, feel, shapes } = passage;
  const end = segments.reduce((sum, segment) => sum + segment.length, first.at);
  // At half the speed a note a beat is as full as it gets.
  const level = isHalfTime(passage) ? 0 : (shapes[first.bar]?.level ?? 1);
  const text = feel.bassLine.turnaround[level];
  const steps = fitSteps(readSteps(text)[0] ?? [], grid.beats, 'line');
  const written = steps
    .filter(({ mark }) => mark !== '-')
    .map((step) => ({ ...step, at: first.at + ticksOf(grid, step) }));
  const missing = segments
    .filter((segment) => !written.some(({ at, mark }) => mark !== '.' && Math.abs(at - segment.at) < 1))
    .map(({ at }) => ({ at, beat: Math.round((at - first.at) / grid.beatTicks), step: 0, of: 1, mark: 'L' }));
  const marks = [...written, ...missing].sort((a, b) => a.at - b.at);
  return marks.flatMap(({ at, beat, step, mark }, i) => {
    const pitch = pitches[beat];
    if (mark === '.' || pitch === undefined) return [];
    const room = (marks[i + 1]?.at ?? end) - at;
    const again = mark === 'r' && step > 0 && room < grid.beatTicks * 0.6;
    const velocity = again ? AGAIN : beat % 2 === 0 && step === 0 ? STRONG : WEAK;
    return [{ at, length: room * (again ? 0.75 : 0.92), pitch, velocity }];
  });
};
