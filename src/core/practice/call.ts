import type { Bar, Meter } from '../chart/chart';
import type { Harp, Sound } from '../harp/harp';
import { isInReach, type TechniqueChoice } from '../harp/reach';
import {
  COMFORTABLE_BEATS,
  type CostContext,
  LINE_WEIGHTS,
  type LineShape,
  type LineTaste,
} from '../lines/line-cost';
import { searchLine } from '../lines/line-search';
import type { LineSlot } from '../lines/line-slots';
import { type Phrase, type PhraseNote, phraseSound } from '../phrase/phrase';
import type { Chord, ChordTone } from '../theory/chord';
import { createRandom, pick, type Random, seedFrom } from '../theory/random';
import { asTicks } from '../theory/units';
import { EIGHTH_TICKS, RHYTHM_CELLS } from './rhythm-cells';

/** What a call is made from. */
export interface CallSpec {
  /** The bars it sounds over, in order. */
  readonly bars: readonly Bar[];
  readonly meter: Meter;
  readonly harp: Harp;
  readonly technique: TechniqueChoice;
  readonly taste: LineTaste;
  readonly seed: number;
}

/** A call may say a note twice now and then and turn as it likes. */
const CALL_SHAPE: LineShape = { again: 3.5, swerve: 0.9, skip: 0.3 };

/** Calls are to differ more than lines through the changes do: by a few holes, or a bend, a note. */
const CALL_VARIETY = 3;

/** A call stays within a tenth, about what a voice sings in one breath (common practice, no source). */
const CALL_RANGE = 16;

interface Moment {
  readonly at: number;
  readonly length: number;
}

/** Rhythm of the call: opening cells and one that stops early. */
const rhythmOf = ({ bars, meter }: CallSpec, random: Random): readonly Moment[] => {
  const { opening, closing } = RHYTHM_CELLS[meter.name];
  return bars.flatMap((bar, i) => {
    const moments: Moment[] = [];
    let at: number = bar.at;
    for (const eighths of pick(random, i === bars.length - 1 ? closing : opening)) {
      const length = Math.abs(eighths) * EIGHTH_TICKS;
      if (eighths > 0) moments.push({ at, length });
      at += length;
    }
    return moments;
  });
};

const chordsDuring = (bars: readonly Bar[], { at, length }: Moment): readonly Chord[] =>
  bars
    .flatMap(({ chords }) => chords)
    .filter((span) => span.at < at + length && span.at + span.length > at)
    .map(({ chord }) => chord);

/** Tones that fit as long as the note sounds; where chords share none, those of the first. */
const tonesDuring = (chords: readonly Chord[]): readonly ChordTone[] => {
  const [first, ...others] = chords;
  if (first === undefined) return [];
  const shared = first.tones.filter(({ pitchClass }) =>
    others.every(({ tones }) => tones.some((tone) => tone.pitchClass === pitchClass)),
  );
  return shared.length > 0 ? shared : first.tones;
};

const slotsOf = (spec: CallSpec, random: Random): readonly LineSlot[] =>
  rhythmOf(spec, random).flatMap((moment, i): readonly LineSlot[] => {
    const chords = chordsDuring(spec.bars, moment);
    const [chord] = chords;
    const place = { at: asTicks(moment.at), length: asTicks(moment.length) };
    return chord === undefined ? [] : [{ ...place, chord, tones: tonesDuring(chords), breathes: i === 0 }];
  });

/** The part of the reach this call moves in, by chance; all of it where a part would leave gaps. */
const rangeOf = (sounds: readonly Sound[], slots: readonly LineSlot[], random: Random): readonly Sound[] => {
  const pitches = sounds.map(({ pitch }) => pitch);
  const lowest = Math.min(...pitches);
  const room = Math.max(0, Math.max(...pitches) - CALL_RANGE - lowest);
  const low = lowest + Math.floor(random() * (room + 1) * 0.75);
  const within = sounds.filter(({ pitch }) => pitch >= low && pitch <= low + CALL_RANGE);
  const classes = new Set(within.map(({ pitch }) => ((Math.round(pitch) % 12) + 12) % 12));
  const full = slots.every(({ tones }) => tones.some(({ pitchClass }) => classes.has(pitchClass)));
  return full ? within : sounds;
};

/**
 * A short call over the given bars: a rhythm by chance, and the smoothest way to sing it on tones of the chords within
 * the player's reach. It starts with the first bar and leaves the end of the last one free. The same specification
 * always gives the same call; where nothing in reach fits a chord, that note is silent.
 */
export const makeCall = (spec: CallSpec): Phrase => {
  const { bars, meter, harp, technique, taste, seed } = spec;
  const random = createRandom(seedFrom(seed, 'call'));
  const slots = slotsOf(spec, random);
  const reachable = harp.sounds.filter((sound) => isInReach(sound, technique));
  const context: CostContext = {
    weights: LINE_WEIGHTS[taste],
    shape: CALL_SHAPE,
    beatTicks: meter.beatTicks,
    comfortableBeats: COMFORTABLE_BEATS,
  };
  const sounds = rangeOf(reachable, slots, random);
  const path = searchLine({
    slots,
    harp,
    sounds,
    context,
    seed: seedFrom(seed, 'line') || 1,
    variety: CALL_VARIETY,
  });
  const start = bars[0]?.at ?? 0;
  const last = bars.at(-1);
  const notes = slots.flatMap(({ at, length }, i): readonly PhraseNote[] => {
    const choice = path[i] ?? null;
    return choice === null
      ? []
      : [{ at: asTicks(at - start), length, sounds: [phraseSound(choice.priced.sound)] }];
  });
  return {
    meter: meter.name,
    length: asTicks(last === undefined ? 0 : last.at + last.length - start),
    notes,
  };
};
