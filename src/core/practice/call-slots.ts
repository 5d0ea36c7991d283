import type { Bar } from '../chart/chart';
import type { Sound } from '../harp/harp';
import type { LineSlot } from '../lines/line-slots';
import type { Chord, ChordTone } from '../theory/chord';
import { guideTones } from '../theory/chords';
import { chordScale } from '../theory/scales';
import { asPitchClass, asTicks } from '../theory/units';
import type { CallRole, Moment } from './call-rhythm';
import { EIGHTH_TICKS } from './rhythm-cells';

/** What the tones of a call are chosen by. */
export interface SlotChoice {
  readonly bars: readonly Bar[];
  /** In reach. */
  readonly sounds: readonly Sound[];
  readonly role: CallRole;
  /** Whether the end is to lie on a third or seventh, as at the third level. */
  readonly landing: boolean;
  readonly passing: boolean;
  /** The idea's pitches in order, which a variation follows; null where there is none. */
  readonly motif: readonly number[] | null;
  readonly beatTicks: number;
}

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

const classOf = (pitch: number): number => asPitchClass(Math.round(pitch));

/** Those of some tones that can be played; all tones where none of them can. */
const playable = (
  some: readonly ChordTone[],
  all: readonly ChordTone[],
  sounds: readonly Sound[],
): readonly ChordTone[] => {
  const found = some.filter(({ pitchClass }) => sounds.some(({ pitch }) => classOf(pitch) === pitchClass));
  return found.length > 0 ? found : all;
};

/** Semitones between pitch classes, the shorter way round. */
const classDistance = (a: number, b: number): number => {
  const up = (((a - b) % 12) + 12) % 12;
  return Math.min(up, 12 - up);
};

const nearest = (tones: readonly ChordTone[], pitch: number): readonly ChordTone[] =>
  tones
    .toSorted((a, b) => classDistance(a.pitchClass, pitch) - classDistance(b.pitchClass, pitch))
    .slice(0, 1);

/** Where a call ends: an answer comes home to the root, a question stays open on a third or seventh. */
const ending = (
  chord: Chord,
  tones: readonly ChordTone[],
  { role, landing }: SlotChoice,
): readonly ChordTone[] => {
  if (role === 'conclusion') return tones.filter(({ pitchClass }) => pitchClass === chord.root);
  const guides = guideTones(chord).map(({ pitchClass }) => pitchClass);
  return landing ? tones.filter(({ pitchClass }) => guides.includes(pitchClass)) : tones;
};

/** A short note off the beat that runs straight into the next one may be a neighbour of the chord. */
const leadsOn = (moments: readonly Moment[], i: number, beatTicks: number): boolean => {
  const [here, next] = [moments[i], moments[i + 1]];
  if (here === undefined || next === undefined || here.length > EIGHTH_TICKS) return false;
  return here.at + here.length === next.at && here.at % beatTicks !== 0;
};

/** What may stand at each moment of a call. Every tone is one of the chord, or leads on to one within a beat. */
export const callSlots = (moments: readonly Moment[], choice: SlotChoice): readonly LineSlot[] => {
  const { bars, sounds, role, motif, passing, beatTicks } = choice;
  let led = false;
  return moments.flatMap((moment, i): readonly LineSlot[] => {
    const chords = chordsDuring(bars, moment);
    const [chord] = chords;
    if (chord === undefined) return [];
    const within = tonesDuring(chords);
    const pitch = role === 'variation' || role === 'conclusion' ? motif?.[i] : undefined;
    const last = i === moments.length - 1;
    led = passing && !led && !last && leadsOn(moments, i, beatTicks);
    const neighbours = led ? (chordScale(chord)?.tones ?? []) : [];
    const all = led
      ? [
          ...within,
          ...neighbours.filter((tone) => !within.some(({ pitchClass }) => pitchClass === tone.pitchClass)),
        ]
      : within;
    const wanted = last ? ending(chord, within, choice) : pitch === undefined ? all : nearest(all, pitch);
    const tones = playable(wanted, all, sounds);
    return [{ at: asTicks(moment.at), length: asTicks(moment.length), chord, tones, breathes: i === 0 }];
  });
};
