import type { Bar, Meter } from '../chart/chart';
import type { Harp, Sound } from '../harp/harp';
import type { TechniqueChoice } from '../harp/reach';
import { COMFORTABLE_BEATS, type CostContext, LINE_WEIGHTS, type LineShape } from '../lines/line-cost';
import { searchLine } from '../lines/line-search';
import type { LineSlot } from '../lines/line-slots';
import type { LineTaste } from '../lines/line-tastes';
import { type Phrase, type PhraseNote, phraseSound } from '../phrase/phrase';
import { createRandom, type Random, seedFrom } from '../theory/random';
import { asPitchClass, asTicks } from '../theory/units';
import { CALL_LEVELS, type CallLevel, LEVEL_SHAPES, soundsFor } from './call-levels';
import { type CallRole, cellsFor, momentsOf } from './call-rhythm';
import { callSlots } from './call-slots';
import type { RhythmCell } from './rhythm-cells';

/** What a call is made from. */
export interface CallSpec {
  /** The bars it sounds over, in order. */
  readonly bars: readonly Bar[];
  readonly meter: Meter;
  readonly harp: Harp;
  readonly technique: TechniqueChoice;
  readonly taste: LineTaste;
  readonly seed: number;
  readonly level: CallLevel;
  readonly role: CallRole;
  /** The idea it takes up, if there is one. */
  readonly motif: MadeCall | null;
}

/** A call with what others can be made of. */
export interface MadeCall {
  readonly phrase: Phrase;
  readonly cells: readonly RhythmCell[];
  /** Keys of its notes, in order. */
  readonly pitches: readonly number[];
}

/** A call may say a note twice now and then and turn as it likes. */
const CALL_SHAPE: LineShape = { again: 3.5, swerve: 0.9, skip: 0.3 };

/** Calls are to differ more than lines through the changes do: by a few holes, or a bend, a note. */
const CALL_VARIETY = 3;

const classOf = (pitch: number): number => asPitchClass(Math.round(pitch));

/** Whether every slot can be filled with these sounds. */
const fills = (sounds: readonly Sound[], slots: readonly LineSlot[]): boolean => {
  const classes = new Set(sounds.map(({ pitch }) => classOf(pitch)));
  return slots.every(({ tones }) => tones.some(({ pitchClass }) => classes.has(pitchClass)));
};

/** The part of the reach this call moves in, by chance; all of it where a part would leave gaps. */
const rangeOf = (
  sounds: readonly Sound[],
  slots: readonly LineSlot[],
  range: number,
  random: Random,
): readonly Sound[] => {
  const pitches = sounds.map(({ pitch }) => pitch);
  const lowest = Math.min(...pitches);
  const room = Math.max(0, Math.max(...pitches) - range - lowest);
  const low = lowest + Math.floor(random() * (room + 1) * 0.75);
  const within = sounds.filter(({ pitch }) => pitch >= low && pitch <= low + range);
  return fills(within, slots) ? within : sounds;
};

/** So many keys of those in range, next to each other by chance; all where a few would leave gaps. */
const fewKeys = (
  sounds: readonly Sound[],
  slots: readonly LineSlot[],
  most: number | null,
  random: Random,
): readonly Sound[] => {
  if (most === null) return sounds;
  const wanted = new Set(slots.flatMap(({ tones }) => tones.map(({ pitchClass }) => Number(pitchClass))));
  const keys = [
    ...new Set(sounds.map(({ pitch }) => pitch).filter((pitch) => wanted.has(classOf(pitch)))),
  ].sort((a, b) => a - b);
  const from = Math.floor(random() * Math.max(1, keys.length - most + 1));
  const few = sounds.filter(({ pitch }) => keys.slice(from, from + most).includes(pitch));
  return fills(few, slots) ? few : sounds;
};

/**
 * The sounds a call is made of: those of its level; where none of them is in the chords (a far key, natural notes alone),
 * those of the next level that has some, but never beyond the player's reach.
 */
const soundsOver = ({ bars, harp, technique, level }: CallSpec): readonly Sound[] => {
  const tones = new Set<number>(
    bars.flatMap(({ chords }) => chords).flatMap(({ chord }) => chord.tones.map((each) => each.pitchClass)),
  );
  const levels = CALL_LEVELS.filter((each) => each >= level);
  const choices = levels.map((each) => soundsFor(harp, technique, each));
  const hits = (sounds: readonly Sound[]): boolean => sounds.some(({ pitch }) => tones.has(classOf(pitch)));
  return choices.find(hits) ?? soundsFor(harp, technique, level);
};

const contextOf = ({ taste, meter }: CallSpec): CostContext => ({
  weights: LINE_WEIGHTS[taste],
  shape: CALL_SHAPE,
  beatTicks: meter.beatTicks,
  comfortableBeats: COMFORTABLE_BEATS,
});

/** Over its bars: a rhythm, and the smoothest way to sing it on the tones that may stand there. */
export const makeCall = (spec: CallSpec): MadeCall => {
  const { bars, meter, harp, seed, level, role, motif } = spec;
  const random = createRandom(seedFrom(seed, 'call'));
  const { mostNotes, mostKeys, range, passing } = LEVEL_SHAPES[level];
  const cells = cellsFor(spec, { role, motif: motif?.cells ?? null, mostNotes }, random);
  const all = soundsOver(spec);
  const slots = callSlots(momentsOf(bars, cells), {
    ...{ bars, role, passing, sounds: all, landing: level === 3, beatTicks: meter.beatTicks },
    motif: motif?.pitches ?? null,
  });
  const ranged = rangeOf(all, slots, range, random);
  const path = searchLine({
    ...{ slots, harp, context: contextOf(spec), variety: CALL_VARIETY },
    sounds: fewKeys(ranged, slots, mostKeys, random),
    seed: seedFrom(seed, 'line') || 1,
  });
  const start = bars[0]?.at ?? 0;
  const last = bars.at(-1);
  const chosen = slots.flatMap(({ at, length, chord }, i) => {
    const sound = path[i]?.priced.sound;
    const inChord = chord.tones.some(({ pitchClass }) => pitchClass === path[i]?.tone.pitchClass);
    // What leads on has to have something it leads to.
    const stands = inChord || (path[i + 1] ?? null) !== null;
    return sound === undefined || !stands ? [] : [{ at: asTicks(at - start), length, sound }];
  });
  const notes = chosen.map(({ sound, ...place }): PhraseNote => ({ ...place, sounds: [phraseSound(sound)] }));
  const length = asTicks(last === undefined ? 0 : last.at + last.length - start);
  return {
    phrase: { meter: meter.name, length, notes },
    cells,
    pitches: chosen.map(({ sound }) => sound.pitch),
  };
};
