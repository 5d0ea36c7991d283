/** The gate of the ear from what it hears while nobody plays. */

/** Levels of frames in dB re full scale, as the ear reports them. */
export interface QuietFrames {
  /** While neither the player nor the band sounds. */
  readonly room: readonly number[];
  /** While the band plays and the player does not, as they are once the band was taken out; empty with headphones. */
  readonly leak: readonly number[];
}

/** A gate in dB re full scale, and what set it. */
export interface Gate {
  readonly gate: number;
  readonly setBy: 'room' | 'leak' | 'guess';
  /** True where softly played notes may not be heard: go nearer to the microphone, or away from the noise. */
  readonly loud: boolean;
}

/** Without a measurement: quieter than a harp at arm’s length from any microphone (common practice, no source). dB. */
const GUESS = -65;
/** Fewer frames than this tell nothing: a third of a second. */
const FEWEST = 60;
/** The gate stands so far above this share of the levels, as noise has peaks that were not heard yet. */
const SHARE = 0.95;
const ABOVE = 4;
/** Lower would let the microphone’s own noise in, higher the harp out. dB. */
const LOWEST = -75;
const HIGHEST = -34;
/** From here on a softly played harp lies below the gate (softest takes of the generated corpus: −34 dB less 14). dB. */
const LOUD = -48;

/** Whether softly played notes may lie below a gate, dB. */
export const hidesSoftNotes = (gate: number): boolean => gate > LOUD;

const usualPeak = (levels: readonly number[]): number | null => {
  const sorted = levels.filter(Number.isFinite).sort((a, b) => a - b);
  return sorted.length < FEWEST ? null : (sorted[Math.floor(SHARE * sorted.length)] ?? null);
};

/**
 * Sets the gate just above the louder of room and leak. What was measured too shortly is left out; with nothing left
 * the gate is a guess. A click or a cough in a twentieth of the frames does not move it.
 *
 * @example
 * calibrateGate({ room: Array(200).fill(-70), leak: Array(200).fill(-58) }) // { gate: -54, setBy: 'leak', loud: false }
 */
export const calibrateGate = ({ room, leak }: QuietFrames): Gate => {
  const [quiet, left] = [usualPeak(room), usualPeak(leak)];
  if (quiet === null && left === null) return { gate: GUESS, setBy: 'guess', loud: false };
  const setBy = (left ?? Number.NEGATIVE_INFINITY) > (quiet ?? Number.NEGATIVE_INFINITY) ? 'leak' : 'room';
  const peak = Math.max(quiet ?? Number.NEGATIVE_INFINITY, left ?? Number.NEGATIVE_INFINITY);
  const gate = Math.max(LOWEST, Math.min(HIGHEST, peak + ABOVE));
  return { gate, setBy, loud: hidesSoftNotes(gate) };
};
