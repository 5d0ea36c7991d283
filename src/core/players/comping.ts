import type { Level } from '../feels/level';
import { noteEvent } from '../score/note';
import type { NoteEvent } from '../score/score';
import { type StepBar, ticksOf } from '../score/steps';
import type { ChordVoice } from '../score/voices';
import type { Chord } from '../theory/chord';
import { createRandom, type Random, seedFrom } from '../theory/random';
import { dyad, neighbour, shifted } from './chord-figures';
import { overBass, SHORTEST_RUB } from './clear-of-bass';
import { rhythmOfBars } from './comping-rhythm';
import { type Passage, type Segment, segmentsOf } from './passage';
import { chordRegisters } from './second';
import { topLine } from './top-line';
import { type Colour, createVoicer, type Register, voicingsOf } from './voicing';
import { wandering } from './wander';

/** How loud a chord of this instrument is struck, so that the four balance against bass and drums. */
const VELOCITY: Readonly<Record<ChordVoice, number>> = {
  piano: 72,
  'electric-piano': 72,
  organ: 66,
  guitar: 72,
};
/** Share of the beat a short stab lasts. */
const STAB: Readonly<Record<ChordVoice, number>> = {
  piano: 0.34,
  'electric-piano': 0.42,
  organ: 0.3,
  guitar: 0.26,
};

/** How much louder the top note of a chord is struck, and how far the hand wanders. */
const TOP_VOICE = 4;
const SWAY = 4.5;

const MARK_GAIN: Readonly<Record<string, number>> = {
  s: 0.94,
  S: 1.14,
  h: 1,
  p: 1.06,
  n: 0.88,
  c: 0.84,
  '5': 0.9,
  '6': 0.9,
  '7': 0.94,
};

/** How richly a feel is voiced: jazz colours where they belong, plain sevenths where the riff is plain. */
const colourOf = (passage: Passage, level: Level): Colour => {
  const { colour, fullGuitar } = passage.feel.comping;
  if (passage.style.chords === 'guitar' && !fullGuitar) return level === 0 ? 'shell' : 'plain';
  return level > 0 ? colour : 'plain';
};

/** The plain seventh chord on the fifth step of a minor key, which leads home with notes of that key. */
const isMinorFive = ({ chart }: Passage, { root, quality }: Chord): boolean =>
  chart.mode === 'minor' && quality === '7' && (root - chart.key + 12) % 12 === 7;

interface Voiced {
  readonly segment: Segment;
  readonly pitches: readonly number[];
  /** What the second half of the segment has. */
  readonly turned: readonly number[];
}

/** How often the second half of a whole bar takes another voicing, so that the top notes go on within the bar, by level. */
const TURN_CHANCE = [0.25, 0.45, 0.55] as const;
/** How far the top note of the second half is drawn away from the first, in semitones. */
const TURN_STEP = 3;

/** Voices every chord, and moves within long chords now and then; last of all the chord that follows. */
const voiceSegments = (random: Random, passage: Passage, register: Register): readonly Voiced[] => {
  const voicer = createVoicer(random, register);
  const tops = topLine(random, passage, register);
  const voiced: Voiced[] = [];
  let before: readonly number[] | null = null;
  for (const segment of segmentsOf(passage)) {
    const level = passage.shapes[segment.bar]?.level ?? 1;
    const moves: boolean = segment.change || before === null || random() < 0.7 + level * 0.1;
    const dark = isMinorFive(passage, segment.chord);
    const wanted = { colour: colourOf(passage, level), top: tops(segment.bar), anew: !segment.change, dark };
    const pitches: readonly number[] = moves ? voicer(before, segment.chord, wanted) : (before ?? []);
    const whole = segment.length >= passage.grid.beatTicks * Math.max(3, passage.grid.beats);
    const [turns, up] = [random() < TURN_CHANCE[level], random() < 0.5];
    const step = up ? TURN_STEP : -TURN_STEP;
    const top = (pitches.at(-1) ?? wanted.top) + step;
    const turned: readonly number[] =
      turns && whole ? voicer(pitches, segment.chord, { ...wanted, top, anew: true }) : pitches;
    voiced.push({ segment, pitches, turned });
    before = turned;
  }
  const last = voiced.at(-1);
  if (passage.next === null || last === undefined) return voiced;
  const { length, bar } = last.segment;
  const coming = { ...last.segment, chord: passage.next, at: last.segment.at + length, bar: bar + 1 };
  const dark = isMinorFive(passage, passage.next);
  const wanted = { colour: colourOf(passage, 1), top: tops(bar), anew: false, dark };
  const pitches = voicer(last.turned, passage.next, wanted);
  return [...voiced, { segment: coming, pitches, turned: pitches }];
};

interface Attack {
  readonly at: number;
  readonly mark: string;
  readonly bar: number;
}

const writtenAttacks = (passage: Passage, rhythm: readonly StepBar[]): readonly Attack[] =>
  passage.chart.bars.flatMap((bar, index) =>
    (rhythm[index] ?? [])
      .filter((step) => step.mark !== '.')
      .map((step) => ({
        at:
          bar.at +
          ticksOf(passage.shapes[index]?.chords === 'hits' ? passage.grids.drums : passage.grid, step),
        mark: step.mark === 'x' ? 'S' : step.mark,
        bar: index,
      })),
  );

/** A chord that is held may come an off-beat after its place where a beat is shorter than this, in seconds. */
const LONGEST_BREATH = 0.6;

/**
 * Attacks in time order; a change of chord gets one of its own where nothing marks it, or where a held chord lasts and no
 * stroke comes within the beat; where beats are long, a chord that would be held from later in that beat comes forward to it.
 */
const attacksOf = (
  passage: Passage,
  rhythm: readonly StepBar[],
  voiced: readonly Voiced[],
): readonly Attack[] => {
  const written = writtenAttacks(passage, rhythm);
  const added: Attack[] = [];
  let holding = false;
  for (const { segment } of voiced) {
    const { at, length, bar, change } = segment;
    if (passage.shapes[bar]?.chords !== 'play') {
      holding = false;
      continue;
    }
    const own = written.filter((attack) => attack.at > at - 1 && attack.at < at + length - 1);
    const met = own[0] !== undefined && own[0].at < at + 1;
    const soon =
      own[0] !== undefined &&
      own[0].at < at + passage.grid.beatTicks - 1 &&
      (own[0].mark !== 'h' || 60 / passage.tempo < LONGEST_BREATH);
    const lost = change && !met && !soon && (holding || own.length === 0);
    if (lost) added.push({ at, mark: holding ? 'h' : 's', bar });
    holding = own.length === 0 ? holding : own.at(-1)?.mark === 'h';
  }
  const forward = (attack: Attack): boolean =>
    attack.mark === 'h' &&
    added.some(({ at }) => at < attack.at && attack.at - at < passage.grid.beatTicks - 1);
  return [...written.filter((attack) => !forward(attack)), ...added].sort((a, b) => a.at - b.at);
};

/** What an attack sounds, and the chord that it is a voicing of, or that stands in for a figure which the bass leaves no room. */
interface Sound {
  readonly pitches: readonly number[];
  readonly chord: Chord | null;
}

/** What each attack sounds; of a slide the chord it slides into. */
const soundAttacks = (
  passage: Passage,
  voiced: readonly Voiced[],
  attacks: readonly Attack[],
  register: Register,
): readonly Sound[] => {
  const placeOf = (at: number) => voiced.findLastIndex(({ segment }) => segment.at <= at + 1);
  return attacks.map((attack): Sound => {
    const place = placeOf(attack.at);
    const here = voiced[place];
    if (here === undefined) return { pitches: [], chord: null };
    const { segment } = here;
    const late = attack.at - segment.at >= segment.length / 2 - 1;
    const pitches = late ? here.turned : here.pitches;
    const next = voiced[place + 1];
    const close = next !== undefined && next.segment.at - attack.at < passage.grid.beatTicks;
    if (attack.mark === 'p' && close) return { pitches: next.pitches, chord: next.segment.chord };
    const dark = isMinorFive(passage, segment.chord);
    if (attack.mark === 'n' && !dark)
      return { pitches: neighbour(segment.chord, pitches, register), chord: segment.chord };
    const step = dark && attack.mark === '6' ? '7' : attack.mark;
    const figure = FIGURE.includes(step) ? dyad(segment.chord, step, register) : pitches;
    return { pitches: figure, chord: segment.chord };
  });
};

/** Marks of the two-note figure. */
const FIGURE = '567';

interface Stroke extends Attack, Sound {
  /** A tied chord sounds to the end of this bar. */
  readonly lastBar: number;
}

const samePitches = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((pitch, i) => pitch === b[i]);

/** Ties a chord held over from bar to bar, two bars at most: an organ does not strike again what still sounds. */
const tied = (strokes: readonly Stroke[]): readonly Stroke[] => {
  const kept: Stroke[] = [];
  for (const stroke of strokes) {
    const before = kept.at(-1);
    const holds = before?.mark === 'h' && stroke.mark === 'h' && before.lastBar === before.bar;
    if (
      before !== undefined &&
      holds &&
      stroke.bar === before.bar + 1 &&
      samePitches(before.pitches, stroke.pitches)
    ) {
      kept[kept.length - 1] = { ...before, lastBar: stroke.bar };
    } else kept.push(stroke);
  }
  return kept;
};

/** Where the chord that a held stroke strikes gives way to another, in ticks; a stroke just before that is the other’s. */
const goneAt = ({ chart, grid }: Passage, { at, mark, bar }: Stroke): number => {
  const spans = chart.bars[bar]?.chords ?? [];
  const place = spans.findLastIndex((span) => span.at <= at + 1);
  const next = spans.slice(place + 1).find(({ chord }) => chord.symbol !== spans[place]?.chord.symbol);
  return mark !== 'h' || next === undefined || next.at - at < grid.beatTicks * 0.6
    ? Number.POSITIVE_INFINITY
    : next.at;
};

const lengthOf = (passage: Passage, stroke: Stroke, next: Stroke | undefined): number => {
  const bar = passage.chart.bars[stroke.lastBar];
  const barEnd = bar === undefined ? passage.chart.length : bar.at + bar.length;
  const room = Math.min(next?.at ?? barEnd, barEnd, goneAt(passage, stroke)) - stroke.at;
  return stroke.mark === 'h'
    ? room * 0.96
    : Math.min(room, passage.grid.beatTicks * STAB[passage.style.chords]);
};

/** Strokes voiced so that they leave the bass room, and slides a half step below the strokes that follow them. */
const overOthers = (
  passage: Passage,
  strokes: readonly (Stroke & { readonly length: number })[],
  bass: readonly NoteEvent[],
  register: Register,
): readonly (readonly number[])[] => {
  const revoiced = overBass(bass, passage.grid.beatTicks * SHORTEST_RUB);
  const voicings = strokes.map((stroke) => {
    const { chord, bar, mark } = stroke;
    const colour = FIGURE.includes(mark) ? 'shell' : colourOf(passage, passage.shapes[bar]?.level ?? 1);
    const choices = () =>
      chord === null ? [] : voicingsOf(chord, colour, register, isMinorFive(passage, chord));
    return revoiced(stroke, choices);
  });
  return voicings.map((pitches, i) => {
    const following = voicings[i + 1];
    return strokes[i]?.mark === 'c' && following !== undefined ? shifted(following, -1, register) : pitches;
  });
};

/**
 * The chord part of a passage: voiced in C3–C5 (lower when asked to leave room), each instrument in its own way.
 * @param heard what bass and drums play, which the chords answer.
 */
export const playChords = (passage: Passage, heard: readonly NoteEvent[]): readonly NoteEvent[] => {
  const random = createRandom(seedFrom(passage.seed, 'chords'));
  const [register] = chordRegisters(passage);
  const voiced = voiceSegments(random, passage, register);
  const attacks = attacksOf(passage, rhythmOfBars(random, passage, heard), voiced);
  const sounds = soundAttacks(passage, voiced, attacks, register);
  const { chords } = passage.style;
  const sway = wandering(passage.seed, 'chords');
  const silence: Sound = { pitches: [], chord: null };
  const struck = attacks.map((attack, i) => ({ ...attack, ...(sounds[i] ?? silence), lastBar: attack.bar }));
  const strokes = (chords === 'organ' ? tied(struck) : struck).map((stroke, i, all) => ({
    ...stroke,
    length: lengthOf(passage, stroke, all[i + 1]),
  }));
  const bass = heard.filter(({ part }) => part === 'bass');
  const voicings = overOthers(passage, strokes, bass, register);
  return strokes.flatMap(({ at, mark, bar, length }, i) => {
    const gain = (passage.shapes[bar]?.gain ?? 1) * (MARK_GAIN[mark] ?? 1);
    const strength = VELOCITY[chords] * gain + sway(at / passage.grid.beatTicks) * SWAY;
    return (voicings[i] ?? []).map((pitch, voice, all) => {
      const velocity = strength + (voice === all.length - 1 ? TOP_VOICE : 0);
      return noteEvent('chords', { at, length, pitch, velocity });
    });
  });
};
