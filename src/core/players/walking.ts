import type { BeatGrid } from '../score/grid';
import type { Random } from '../theory/random';
import { approachesTo, BASS_HIGH, BASS_LOW, homePitch } from './bass-register';
import { type ChordShape, chordShape } from './chord-scale';
import type { Segment } from './passage';

/**
 * A walking line, one note a beat. The first note of a chord is its root, strong beats are chord tones, the last
 * beat leads into the next target by a semitone, a scale step or the next chord's fifth ("How to create a walking
 * bass line", Bass Guitar For Dummies; "Walking Bass: Introducing Chromatics"). Between two targets all short paths
 * are tried and the smoothest, with a little chance, is kept.
 */

/** The middle of the register, which the line falls back to. */
const CENTRE = 38;
/** Targets stay below this, so that a line can still rise from them. */
const TARGET_HIGH = 47;

const pitchesOf = (root: number, steps: readonly number[]): readonly number[] => {
  const pitches: number[] = [];
  for (let pitch = BASS_LOW; pitch <= BASS_HIGH; pitch += 1) {
    if (steps.includes((((pitch - root) % 12) + 12) % 12)) pitches.push(pitch);
  }
  return pitches;
};

const LEAP_COST: readonly number[] = [3, 0, 0, 0.3, 0.4, 0.9, 1.6, 1.3, 2.4, 2.6, 3, 4, 1.8];

const leapCost = (from: number, to: number): number => LEAP_COST[Math.abs(to - from)] ?? 9;

const turnCost = (a: number, b: number, c: number): number => ((b - a) * (c - b) < 0 ? 0.5 : 0);

const placeCost = (pitch: number): number => Math.max(0, pitch - 48) * 0.25 + Math.max(0, 31 - pitch) * 0.1;

interface Option {
  readonly pitch: number;
  readonly cost: number;
}

const near = (pitches: readonly number[], from: number, reach: number, random: Random): readonly Option[] =>
  pitches
    .filter((pitch) => Math.abs(pitch - from) <= reach)
    .map((pitch) => ({ pitch, cost: placeCost(pitch) + random() * 1.6 }));

const cheapest = (random: Random, pitches: readonly number[], cost: (pitch: number) => number): number => {
  let best = pitches[0] ?? CENTRE;
  let least = Number.POSITIVE_INFINITY;
  for (const pitch of pitches) {
    const value = cost(pitch) + random() * 1.2;
    if (value < least) [best, least] = [pitch, value];
  }
  return best;
};

/** Where the line lands next: the root where the chord changes, else root, fifth or third. */
const targetAfter = (random: Random, from: number, segment: Segment, next: Segment | undefined): number => {
  const chord = next?.chord ?? segment.next ?? segment.chord;
  const changes = next === undefined ? segment.next !== null : next.change;
  if (next === undefined) return homePitch(chord.bass);
  const shape = chordShape(chord);
  const draw = random();
  const step = changes || draw < 0.55 ? null : draw < 0.82 ? shape.fifth : shape.third;
  const pitchClass = step === null ? chord.bass : chord.root + step;
  const places = [0, 12, 24].map((octave) => homePitch(pitchClass) + octave);
  const within = places.filter((pitch) => pitch <= TARGET_HIGH);
  return cheapest(
    random,
    within,
    (pitch) =>
      Math.abs(pitch - from) * 0.22 +
      Math.abs(pitch - CENTRE) * 0.12 +
      (pitch === from && !changes ? 1.5 : 0),
  );
};

interface Gap {
  readonly from: number;
  readonly to: number;
  readonly chord: ChordShape;
  readonly root: number;
  readonly next: ChordShape;
  /** `strong[i]`: beat i of the segment is a strong beat of the bar. */
  readonly strong: readonly boolean[];
}

const under = ({ root, chord }: Gap) => ({ root, shape: chord });

const fillThree = (random: Random, gap: Gap): readonly number[] => {
  const tones = pitchesOf(gap.root, gap.chord.tones);
  const steps = near(gap.strong[1] ? tones : pitchesOf(gap.root, gap.chord.scale), gap.from, 9, random);
  const ways = gap.strong[2]
    ? near(tones, gap.to, 9, random)
    : near(approachesTo(gap.to, gap.next, under(gap)), gap.to, 7, random);
  let best: readonly number[] = [gap.from, gap.from];
  let least = Number.POSITIVE_INFINITY;
  for (const step of steps) {
    for (const way of ways) {
      const value =
        step.cost +
        way.cost +
        leapCost(gap.from, step.pitch) +
        leapCost(step.pitch, way.pitch) +
        leapCost(way.pitch, gap.to) +
        turnCost(gap.from, step.pitch, way.pitch);
      if (value < least) [best, least] = [[step.pitch, way.pitch], value];
    }
  }
  return best;
};

const fillFour = (random: Random, gap: Gap): readonly number[] => {
  const strong = near(pitchesOf(gap.root, gap.chord.tones), gap.from, 12, random);
  const weak = near(pitchesOf(gap.root, gap.chord.scale), gap.from, 9, random);
  const ways = near(approachesTo(gap.to, gap.next, under(gap)), gap.to, 7, random);
  let best: readonly number[] = [gap.from, gap.from, gap.to];
  let least = Number.POSITIVE_INFINITY;
  for (const b of strong) {
    for (const a of weak) {
      const first =
        a.cost +
        b.cost +
        leapCost(gap.from, a.pitch) +
        leapCost(a.pitch, b.pitch) +
        turnCost(gap.from, a.pitch, b.pitch) +
        (b.pitch === gap.from ? 1.2 : 0);
      if (first >= least) continue;
      for (const way of ways) {
        const value =
          first +
          way.cost +
          leapCost(b.pitch, way.pitch) +
          leapCost(way.pitch, gap.to) +
          turnCost(a.pitch, b.pitch, way.pitch) +
          turnCost(b.pitch, way.pitch, gap.to) +
          (way.pitch === a.pitch ? 0.8 : 0);
        if (value < least) [best, least] = [[a.pitch, b.pitch, way.pitch], value];
      }
    }
  }
  return best;
};

const fill = (random: Random, gap: Gap, beats: number): readonly number[] => {
  if (beats <= 1) return [];
  if (beats === 2) {
    const ways = gap.strong[1]
      ? pitchesOf(gap.root, gap.chord.tones)
      : approachesTo(gap.to, gap.next, under(gap));
    return [cheapest(random, ways, (pitch) => leapCost(gap.from, pitch) + leapCost(pitch, gap.to))];
  }
  return beats === 3 ? fillThree(random, gap) : fillFour(random, gap);
};

/** Which beats of a segment are strong: every other one from the bar's first, in threes only the first. */
const strongBeats = (grid: BeatGrid, offset: number, count: number): readonly boolean[] => {
  const every = grid.beats % 2 === 0 ? 2 : grid.beats;
  return Array.from({ length: count }, (_, beat) => (offset + beat) % every === 0);
};

/**
 * Walks through segments of whole beats (at most four each): the pitches of each, one a beat. Every segment's line
 * aims at the first note of the next; the last aims at the home place of what follows.
 */
export const walk = (
  random: Random,
  segments: readonly Segment[],
  grid: BeatGrid,
): readonly (readonly number[])[] => {
  const first = segments[0];
  if (first === undefined) return [];
  let from = homePitch(first.chord.bass);
  return segments.map((segment, i) => {
    const to = targetAfter(random, from, segment, segments[i + 1]);
    const barAt = segments.find((each) => each.bar === segment.bar)?.at ?? segment.at;
    const beats = Math.max(1, Math.floor(segment.length / grid.beatTicks));
    const gap: Gap = {
      from,
      to,
      chord: chordShape(segment.chord),
      root: segment.chord.root,
      next: chordShape(segments[i + 1]?.chord ?? segment.next ?? segment.chord),
      strong: strongBeats(grid, (segment.at - barAt) / grid.beatTicks, beats),
    };
    const pitches = [from, ...fill(random, gap, beats)];
    from = to;
    return pitches;
  });
};
