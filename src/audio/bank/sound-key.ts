/** Which computed sound a note of a part is played with: the bank holds a few recordings of each key. */

import type { PartId } from '../../core/score/score';
import type { BandSound, FileSound } from '../../core/song/band-sound';
import { elementAt } from '../../core/theory/element-at';
import { hzOf } from '../../core/theory/temperament';
import { asMidi, type Hz, type Midi } from '../../core/theory/units';
import type { VoiceId } from '../synthesis/voice';

/** One sound of the bank. */
export interface SoundKey {
  readonly voice: VoiceId;
  readonly midi: Midi;
  readonly hz: Hz;
  /** Index into `LAYERS`. */
  readonly layer: number;
  /** Which stroke of the round robin, from 0. */
  readonly stroke: number;
  /** The opened file that it is rendered from; the computed voice when absent. */
  readonly source?: number;
}

/**
 * Velocities at which sounds are computed; what lies between is the nearest of them, louder or softer. They lie so close
 * that two strokes on either side of a border sound alike: an eighth of what velocity does to the tone at most.
 */
export const LAYERS: readonly number[] = [45, 57, 68, 80, 95, 110];

const STRUCK: ReadonlySet<VoiceId> = new Set(['sticks', 'brushes', 'click']);
/** So many strokes keep a key from sounding like one recording. */
const STROKES = 4;

/** True for kits and the click, whose sounds have no pitch to tune. */
export const isStruck = (voice: VoiceId): boolean => STRUCK.has(voice);

/** A number that sounds share which are made of the same whole ones: layers, and strokes of what has a pitch. */
export const modelOf = ({ voice, midi, stroke }: SoundKey): number =>
  isStruck(voice) ? midi + stroke : midi;

/** How many recordings take turns for one key of a voice. */
export const strokesOf = (voice: VoiceId): number => (voice === 'click' ? 1 : STROKES);

/** The layer whose velocity is nearest in level. Velocity 1–127. */
export const layerOf = (velocity: number): number => {
  let best = 0;
  LAYERS.forEach((layer, index) => {
    if (Math.abs(Math.log(velocity / layer)) < Math.abs(Math.log(velocity / elementAt(LAYERS, best))))
      best = index;
  });
  return best;
};

/** Level follows velocity squared (General MIDI practice), but for voices whose layers lie farther apart than that. */
const LEVEL_POWERS: Readonly<Partial<Record<VoiceId, number>>> = { guitar: 2.7, organ: 2.3 };

/** Gain that brings a layer of a voice to a velocity, as loud as the layer beside it where one gives way to the other. */
export const gainInLayer = (velocity: number, layer: number, voice: VoiceId): number =>
  (velocity / elementAt(LAYERS, layer)) ** (LEVEL_POWERS[voice] ?? 2);

/** The voice that plays a part: the chosen kit, bass or chord instrument; the lead is always a harmonica. */
export const voiceOf = (
  part: PartId,
  sound: Pick<BandSound, 'bass' | 'chords' | 'kit' | 'second'>,
): VoiceId => {
  switch (part) {
    case 'drums':
      return sound.kit;
    case 'bass':
      return sound.bass;
    case 'chords':
      return sound.chords;
    case 'second':
      return sound.second ?? 'organ';
    case 'lead':
      return 'harmonica';
    case 'click':
      return 'click';
  }
};

/**
 * The file that a part plays from: the player's own goes before the recorded instruments. The second chord player goes
 * with the first.
 */
const fileOf = (part: PartId, { own, recorded }: BandSound): FileSound | null =>
  [own, recorded].find((file) => file?.parts.includes(part === 'second' ? 'chords' : part)) ?? null;

/** The sound for a note of a part. `stroke` counts the note's turns and may be any whole number. */
export const soundKeyFor = (
  note: { readonly part: PartId; readonly pitch: number; readonly velocity: number; readonly stroke: number },
  sound: BandSound,
): SoundKey => {
  const voice = voiceOf(note.part, sound);
  const midi = asMidi(note.pitch);
  const { reference, offsets } = sound.temperament;
  const file = voice === 'click' ? null : fileOf(note.part, sound);
  return {
    voice,
    midi,
    hz: isStruck(voice) ? hzOf(midi) : hzOf(midi, { reference, cents: offsets }),
    layer: layerOf(note.velocity),
    // A file of the player's own has one recording of each key, and is played as it is.
    stroke: file !== null && file === sound.own ? 0 : note.stroke % strokesOf(voice),
    ...(file && { source: file.source }),
  };
};

/** A sound's name in the bank. Hertz are told apart to a hundredth, far below what can be heard. */
export const nameOfKey = ({ voice, midi, hz, layer, stroke, source }: SoundKey): string =>
  `${voice}/${midi}/${hz.toFixed(2)}/${layer}/${stroke}${source === undefined ? '' : `/file ${source}`}`;
