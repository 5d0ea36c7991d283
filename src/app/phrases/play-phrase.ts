import type { Band } from '../../audio/band/band';
import type { NoteEvent } from '../../core/score/score';
import { asSeconds } from '../../core/theory/units';

/** Anything that can be played alone. */
export type LoneNote = Pick<NoteEvent, 'pitch' | 'glideFrom'> & {
  readonly at: number;
  readonly length: number;
};

interface Needs {
  readonly band: Pick<Band, 'audition'>;
  readonly later: (seconds: number, run: () => void) => () => void;
}

/**
 * Plays notes with the harp voice alone, one by one as they are due. Returns what stops it.
 * @param onEnd called when the last note is over; not when it is stopped.
 */
export const playAlone = (
  { band, later }: Needs,
  notes: readonly LoneNote[],
  secondsPerTick: number,
  onEnd: () => void,
): (() => void) => {
  const end = notes.reduce((most, { at, length }) => Math.max(most, at + length), 0);
  const stops = notes.map(({ at, length, pitch, glideFrom = 0 }) =>
    later(at * secondsPerTick, () => {
      void band.audition('lead', pitch, asSeconds(length * secondsPerTick), glideFrom);
    }),
  );
  stops.push(later(end * secondsPerTick, onEnd));
  return () => {
    for (const stop of stops) stop();
  };
};
