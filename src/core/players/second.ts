import { noteEvent } from '../score/note';
import type { NoteEvent } from '../score/score';
import { fitSteps, hitSteps, readSteps, type StepBar, ticksOf } from '../score/steps';
import type { SecondVoice } from '../score/voices';
import { createRandom, type Random, seedFrom } from '../theory/random';
import { type Passage, type Segment, segmentsOf } from './passage';
import { COMPING_REGISTER, createVoicer, type Register, roomFor } from './voicing';
import { wandering } from './wander';

/**
 * A second chord player beside the first: an organ that holds, or a guitar that chops. They share the register, the organ
 * below and the guitar above whoever plays with them, and the rhythm: one of them always holds or rests ("Creative guitar
 * comping", a guitar teacher's lesson; "Piano/guitar comping", a keyboard magazine's).
 */

/** So much of the register the first player has and the second, in semitones: four voices must fit, and two or three. */
const SHARES = { first: 14, second: 11 } as const;

/** Registers of the first and of the second chord player. */
export const chordRegisters = ({ style, harpHome }: Passage): readonly [Register, Register] => {
  const whole = style.leaveRoom ? roomFor(harpHome) : COMPING_REGISTER;
  const upper = (share: number): Register => ({
    low: Math.max(whole.low, whole.high - share),
    high: whole.high,
  });
  const lower = (share: number): Register => ({
    low: whole.low,
    high: Math.min(whole.high, whole.low + share),
  });
  if (style.second === 'none') return [whole, whole];
  return style.second === 'organ'
    ? [upper(SHARES.first), lower(SHARES.second)]
    : [lower(SHARES.first), upper(SHARES.second)];
};

/** Softer than the first player, who is listened to (common practice, no source). */
const VELOCITY: Readonly<Record<SecondVoice, number>> = { organ: 50, guitar: 60 };
const SWAY = 4;
/** A chop lasts this share of a beat. */
const CHOP = 0.24;
/** A chord that goes on is struck again after so many bars. */
const MOST_HELD = 2;

interface Stroke {
  readonly at: number;
  readonly length: number;
  readonly segment: Segment;
}

/** Chords held from where they begin, taken again every two bars. */
const padStrokes = (segments: readonly Segment[]): readonly Stroke[] => {
  const strokes: Stroke[] = [];
  for (const segment of segments) {
    const last = strokes.at(-1);
    const goesOn = last !== undefined && !segment.change && segment.barsHeld % MOST_HELD !== 0;
    if (goesOn && last.at + last.length === segment.at) {
      strokes[strokes.length - 1] = { ...last, length: last.length + segment.length };
    } else strokes.push({ at: segment.at, length: segment.length, segment });
  }
  return strokes.map((stroke) => ({ ...stroke, length: stroke.length * 0.97 }));
};

/** The chop of a phrase: one of the feel's lightest guitar bars with a stroke in it. */
const chopOf = (random: Random, { feel, grid }: Passage): StepBar => {
  const light = feel.comping.bars.guitar[0].filter((text) => /[sS]/.test(text) && !/[h567]/.test(text));
  const text = light[Math.floor(random() * light.length)] ?? '. s . s';
  return fitSteps(readSteps(text)[0] ?? [], grid.beats, 'time').filter(({ mark }) => 'sS'.includes(mark));
};

const chopStrokes = (random: Random, passage: Passage, segments: readonly Segment[]): readonly Stroke[] => {
  const chops = passage.shapes.filter((_, bar) => bar % 4 === 0).map(() => chopOf(random, passage));
  const length = passage.grid.beatTicks * CHOP;
  return passage.chart.bars.flatMap((bar, index) => {
    const chop = chops[Math.floor(index / 4)] ?? [];
    return chop.flatMap((step) => {
      const at = bar.at + ticksOf(passage.grid, step);
      const segment = segments.findLast((each) => each.at <= at + 1);
      return segment === undefined ? [] : [{ at, length, segment }];
    });
  });
};

const hitStrokes = (passage: Passage, segments: readonly Segment[]): readonly Stroke[] =>
  passage.chart.bars.flatMap((bar, index) => {
    const shape = passage.shapes[index];
    if (shape?.chords !== 'hits') return [];
    return hitSteps(shape.hits, passage.grid.beats).flatMap((step) => {
      const at = bar.at + ticksOf(passage.grids.drums, step);
      const segment = segments.findLast((each) => each.at <= at + 1);
      const length = step.mark === 'h' ? bar.at + bar.length - at : passage.grid.beatTicks * 0.3;
      return segment === undefined ? [] : [{ at, length, segment }];
    });
  });

/** What the second chord player plays of a passage: nothing in its sparsest bars, and nothing where chords lay out. */
export const playSecond = (passage: Passage): readonly NoteEvent[] => {
  const { second } = passage.style;
  if (second === 'none') return [];
  const random = createRandom(seedFrom(passage.seed, 'second'));
  const segments = segmentsOf(passage);
  const voicer = createVoicer(random, chordRegisters(passage)[1]);
  const voiced = new Map<string, readonly number[]>();
  let before: readonly number[] | null = null;
  for (const { chord, change, barsHeld } of segments) {
    const wanted = { colour: 'shell', top: null, anew: false } as const;
    if (change || barsHeld % (2 * MOST_HELD) === 0) before = voicer(before, chord, wanted);
    voiced.set(chord.symbol, before ?? []);
  }
  const plays = ({ segment }: Stroke): boolean => {
    const shape = passage.shapes[segment.bar];
    return shape !== undefined && shape.chords === 'play' && shape.level > 0;
  };
  const inTime = second === 'organ' ? padStrokes(segments) : chopStrokes(random, passage, segments);
  const sway = wandering(passage.seed, 'second');
  return [...inTime.filter(plays), ...hitStrokes(passage, segments)].flatMap(({ at, length, segment }) => {
    const gain = passage.shapes[segment.bar]?.gain ?? 1;
    const velocity = VELOCITY[second] * gain + sway(at / passage.grid.beatTicks) * SWAY;
    return (voiced.get(segment.chord.symbol) ?? []).map((pitch) =>
      noteEvent('second', { at, length, pitch, velocity }),
    );
  });
};

/** Leaves out notes that would lie a semitone beside what the first chord player sounds at the same time. */
export const besideFirst = (
  second: readonly NoteEvent[],
  first: readonly NoteEvent[],
): readonly NoteEvent[] =>
  second.filter((note) =>
    first.every(
      ({ at, length, pitch }) =>
        Math.abs(pitch - note.pitch) !== 1 || at >= note.at + note.length || note.at >= at + length,
    ),
  );
