import { noteEvent } from '../score/note';
import type { NoteEvent } from '../score/score';
import { fitSteps, hitSteps, readSteps, type StepBar, ticksOf } from '../score/steps';
import type { SecondVoice } from '../score/voices';
import { createRandom, type Random, seedFrom } from '../theory/random';
import { asTicks } from '../theory/units';
import { overBass, SHORTEST_RUB } from './clear-of-bass';
import { type Passage, type Segment, segmentsOf } from './passage';
import { COMPING_REGISTER, createVoicer, type Register, roomFor, voicingsOf } from './voicing';
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
/** A chop stays for so many bars. */
const PHRASE = 4;
/** How much chance speaks in the choice of a chop, against a share of its strokes that meet the first player's. */
const LIKED = 0.15;

interface Stroke {
  readonly at: number;
  readonly length: number;
  readonly segment: Segment;
}

/** Bars with more chords than this are left to the first player: a pad that changed with every beat would double it. */
const MOST_CHANGES = 2;

/** Chords held from where they begin, taken again every two bars. */
const padStrokes = ({ chart }: Passage, segments: readonly Segment[]): readonly Stroke[] => {
  const strokes: Stroke[] = [];
  for (const segment of segments) {
    if ((chart.bars[segment.bar]?.chords.length ?? 0) > MOST_CHANGES) continue;
    const last = strokes.at(-1);
    const goesOn = last !== undefined && !segment.change && segment.barsHeld % MOST_HELD !== 0;
    if (goesOn && last.at + last.length === segment.at) {
      strokes[strokes.length - 1] = { ...last, length: last.length + segment.length };
    } else strokes.push({ at: segment.at, length: segment.length, segment });
  }
  return strokes.map((stroke) => ({ ...stroke, length: stroke.length * 0.97 }));
};

/** Chops of any feel beside its own: the backbeats, and all off-beats (common practice, no source). */
const CHOPS = ['. s . s', '.s .s .s .s'];
/** A chop has this many strokes at most. */
const MOST_CHOPS = 4;
/** Strokes this far apart, in ticks, are heard as one. */
const TOGETHER = 24;

/** Strokes on 1 and 3 alone: where the bass walks, a chop there marches (common practice, no source). */
const marches = (chop: StepBar): boolean => chop.every(({ beat, step }) => beat % 2 === 0 && step === 0);

/** The feel's lightest guitar bars as chops: their strokes alone, none with the shuffle's figure. */
const chopsOf = ({ feel, grid }: Passage): readonly StepBar[] => {
  const { guitar } = feel.comping.bars;
  const light = [...guitar[0], ...guitar[1], ...CHOPS].filter((text) => !/[hncp567]/.test(text));
  return light
    .map((text) => fitSteps(readSteps(text)[0] ?? [], grid.beats, 'time').filter(({ mark }) => mark !== '.'))
    .filter((chop) => chop.length <= MOST_CHOPS && !marches(chop));
};

/** For each phrase of four bars the chop that falls most between the strokes of the first player; what still meets them is left out. */
const chopStrokes = (
  random: Random,
  passage: Passage,
  segments: readonly Segment[],
  first: readonly NoteEvent[],
): readonly Stroke[] => {
  const struck = [...new Set(first.map(({ at }) => at))];
  const meets = (at: number): boolean => struck.some((other) => Math.abs(other - at) < TOGETHER);
  const chops = chopsOf(passage);
  const { bars } = passage.chart;
  const placesOf = (chop: StepBar, index: number): readonly number[] =>
    chop.map((step) => (bars[index]?.at ?? 0) + ticksOf(passage.grid, step));
  const length = passage.grid.beatTicks * CHOP;
  return bars.flatMap((_, from) => {
    if (from % PHRASE !== 0) return [];
    const phrase = bars.slice(from, from + PHRASE).map((_bar, i) => from + i);
    const costs = chops.map((chop) => {
      const places = phrase.flatMap((index) => placesOf(chop, index));
      return places.filter(meets).length / places.length + random() * LIKED;
    });
    const chop = chops[costs.indexOf(Math.min(...costs))] ?? [];
    return phrase.flatMap((index) => {
      const places = placesOf(chop, index).filter((at) => !meets(at));
      return places.flatMap((at) => {
        const segment = segments.findLast((each) => each.at <= at + 1);
        return segment === undefined ? [] : [{ at, length, segment }];
      });
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

const isTogether = (one: Pick<Stroke, 'at' | 'length'>, other: Pick<Stroke, 'at' | 'length'>): boolean =>
  one.at < other.at + other.length && other.at < one.at + one.length;

/**
 * What the second chord player plays of a passage: nothing in its sparsest bars nor in the harp's turn, and nothing where
 * chords lay out.
 * @param first what the first chord player strikes, which a guitar keeps out of the way of.
 * @param bass what its chords leave room below, and no semitone beside the first player.
 */
export const playSecond = (
  passage: Passage,
  first: readonly NoteEvent[],
  bass: readonly NoteEvent[],
): readonly NoteEvent[] => {
  const { second } = passage.style;
  if (second === 'none') return [];
  const random = createRandom(seedFrom(passage.seed, 'second'));
  const segments = segmentsOf(passage);
  const [, register] = chordRegisters(passage);
  const voicer = createVoicer(random, register);
  const voiced = new Map<string, readonly number[]>();
  let before: readonly number[] | null = null;
  for (const { chord, change, barsHeld } of segments) {
    const wanted = { colour: 'shell', top: null, anew: false } as const;
    if (change || barsHeld % (2 * MOST_HELD) === 0) before = voicer(before, chord, wanted);
    voiced.set(chord.symbol, before ?? []);
  }
  const plays = ({ segment }: Stroke): boolean => {
    const shape = passage.shapes[segment.bar];
    return shape !== undefined && shape.chords === 'play' && shape.level > 0 && !shape.harpsTurn;
  };
  const inTime =
    second === 'organ' ? padStrokes(passage, segments) : chopStrokes(random, passage, segments, first);
  const besides = (stroke: Pick<Stroke, 'at' | 'length'>): readonly number[] =>
    first.filter((note) => isTogether(note, stroke)).map(({ pitch }) => pitch);
  const sway = wandering(passage.seed, 'second');
  const revoiced = overBass(bass, passage.grid.beatTicks * SHORTEST_RUB);
  return [...inTime.filter(plays), ...hitStrokes(passage, segments)].flatMap(({ at, length, segment }) => {
    const gain = passage.shapes[segment.bar]?.gain ?? 1;
    const velocity = VELOCITY[second] * gain + sway(at / passage.grid.beatTicks) * SWAY;
    const stroke = { at, length, pitches: voiced.get(segment.chord.symbol) ?? [] };
    const sounding = besides(stroke);
    const choices = () => voicingsOf(segment.chord, 'shell', register);
    const pitches = revoiced(
      stroke,
      choices,
      (pitch) => !sounding.some((other) => Math.abs(other - pitch) === 1),
    );
    return pitches.map((pitch) => noteEvent('second', { at, length, pitch, velocity }));
  });
};

/** A note of the second player that would be cut shorter than this, in ticks, is left out. */
const SHORTEST = 120;

/** Lets go of notes where the first chord player comes to sound a semitone beside them; left out where they would begin so. */
export const besideFirst = (
  second: readonly NoteEvent[],
  first: readonly NoteEvent[],
): readonly NoteEvent[] =>
  second.flatMap((note) => {
    const rub = first.find((other) => Math.abs(other.pitch - note.pitch) === 1 && isTogether(note, other));
    if (rub === undefined) return [note];
    return rub.at - note.at < SHORTEST ? [] : [{ ...note, length: asTicks(rub.at - note.at) }];
  });

/** Without strokes of which a single note is left: one note is no chord. */
export const withoutLoneNotes = (chords: readonly NoteEvent[]): readonly NoteEvent[] => {
  const counts = new Map<number, number>();
  for (const { at } of chords) counts.set(at, (counts.get(at) ?? 0) + 1);
  return chords.filter(({ at }) => (counts.get(at) ?? 0) > 1);
};
