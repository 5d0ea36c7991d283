import { type MidiEvent, parseMidi } from 'midi-file';

/** An event of a parsed file at its tick from the start. */
export type TimedEvent = MidiEvent & { readonly at: number };

export interface ReadTrack {
  readonly name: string;
  readonly events: readonly TimedEvent[];
}

/** A MIDI file as an independent library reads it, with times from the start instead of between events. */
export const readMidi = (
  bytes: Uint8Array,
): { ticksPerBeat: number; format: number; tracks: readonly ReadTrack[] } => {
  const { header, tracks } = parseMidi(bytes);
  return {
    ticksPerBeat: header.ticksPerBeat ?? 0,
    format: header.format,
    tracks: tracks.map((track) => {
      let at = 0;
      const events = track.map((event) => {
        at += event.deltaTime;
        return { ...event, at };
      });
      const named = events.find((event) => event.type === 'trackName');
      return { name: named?.type === 'trackName' ? named.text : '', events };
    }),
  };
};

/** The events of one type, in order. */
export const eventsOf = <T extends MidiEvent['type']>(
  track: ReadTrack | undefined,
  type: T,
): readonly (Extract<MidiEvent, { type: T }> & { readonly at: number })[] =>
  (track?.events ?? []).filter(
    (event): event is Extract<MidiEvent, { type: T }> & { readonly at: number } => event.type === type,
  );

export interface ReadNote {
  readonly from: number;
  readonly to: number;
  readonly key: number;
  readonly velocity: number;
}

/** Notes put together from their starts and ends. Throws where a key is struck while it sounds, or never ends. */
export const notesOf = (track: ReadTrack | undefined): readonly ReadNote[] => {
  const sounding = new Map<number, { from: number; velocity: number }>();
  const notes: ReadNote[] = [];
  for (const event of track?.events ?? []) {
    if (event.type === 'noteOn') {
      if (sounding.has(event.noteNumber))
        throw new Error(`Key ${event.noteNumber} struck twice at ${event.at}`);
      sounding.set(event.noteNumber, { from: event.at, velocity: event.velocity });
    }
    if (event.type === 'noteOff') {
      const start = sounding.get(event.noteNumber);
      if (start === undefined) throw new Error(`Key ${event.noteNumber} ends at ${event.at} without a start`);
      sounding.delete(event.noteNumber);
      notes.push({ ...start, to: event.at, key: event.noteNumber });
    }
  }
  if (sounding.size > 0) throw new Error(`Keys ${[...sounding.keys()].join()} never end`);
  return notes.toSorted((a, b) => a.from - b.from || a.key - b.key);
};
