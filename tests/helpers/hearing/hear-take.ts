import { createEar } from '../../../src/core/hearing/ear';
import { hearRecording } from '../../../src/core/hearing/hear-recording';
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

const endedOf = (notes: readonly HeardNote[]): HeardTake['ended'] =>
  notes.flatMap((note) =>
    note.to === null ? [] : [{ ...note, from: note.from, to: note.to, hz: note.frequency }],
  );

/** What the ear hears in a take, knowing the harp, its reference and the band. */
export const hearTake = ({ samples, sampleRate, band, harp, reference }: Take): HeardTake => {
  const ear = createEar({ sampleRate, harp, reference: asHz(reference), band: band !== null });
  const heard = ear.push(samples, band ?? undefined);
  const notes = [...heard.notes, ...ear.end()];
  return { frames: heard.frames, notes, ended: endedOf(notes) };
};

/** The notes of a take that the ear hears when it knows the whole of it. */
export const hearWholeTake = ({ samples, sampleRate, band, harp, reference }: Take): HeardTake['ended'] => {
  const notes: HeardNote[] = [];
  const recording = { samples, ...(band === null ? {} : { sent: band }) };
  hearRecording(recording, { sampleRate, harp, reference: asHz(reference) }, (_, more) =>
    notes.push(...more),
  );
  return endedOf(notes);
};
