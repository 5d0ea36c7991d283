import { createEar } from '../../../src/core/hearing/ear';
import type { HeardNote } from '../../../src/core/hearing/heard-note';
import type { PitchFrame } from '../../../src/core/hearing/pitch-frame';
import { asHz } from '../../../src/core/theory/units';
import type { ScoredNote } from './scores';
import type { Take } from './take';

export interface HeardTake {
  readonly frames: readonly PitchFrame[];
  /** In the order they were reported. */
  readonly notes: readonly HeardNote[];
  /** Those that have ended, as the scores take them. */
  readonly ended: readonly (HeardNote & ScoredNote)[];
}

/** What the ear hears in a take, knowing the harp, its reference and the band. */
export const hearTake = ({ samples, sampleRate, band, harp, reference }: Take): HeardTake => {
  const ear = createEar({ sampleRate, harp, reference: asHz(reference), band: band !== null });
  const heard = ear.push(samples, band ?? undefined);
  const notes = [...heard.notes, ...ear.end()];
  const ended = notes.flatMap((note) =>
    note.to === null ? [] : [{ ...note, from: note.from, to: note.to, hz: note.frequency }],
  );
  return { frames: heard.frames, notes, ended };
};
