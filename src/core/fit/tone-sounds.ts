import type { Register } from '../harp/reach';
import type { ChordTone } from '../theory/chord';
import type { FitChord, FitSound } from './fit';

/** A bend or overbend that only gives a pitch an easier sound has anyway is no help at a glance. */
export const withoutDetours = (sounds: readonly FitSound[]): readonly FitSound[] =>
  sounds.filter(
    ({ pitch, effort }) => !sounds.some((other) => other.pitch === pitch && other.effort < effort),
  );

/** The sounds in reach that give a chord tone in one octave, lowest first, detours left out. */
export const toneSounds = (fit: FitChord, tone: ChordTone, register: Register): readonly FitSound[] =>
  withoutDetours(fit.sounds.filter((sound) => sound.degree === tone.degree && sound.register === register));
