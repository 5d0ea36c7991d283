import { ENGLISH } from '../../core/theory/note-names';
/** What is done with takes: fetched when the first is asked for, or before that when the page rests. */

import type { Program } from '../../core/arranger/program';
import { encodePcm, wavEnd, wavHeader } from '../../core/formats/wav';
import type { Harp } from '../../core/harp/harp';
import type { HeardNote } from '../../core/hearing/heard-note';
import type { Settings } from '../../core/settings/settings';
import { fileStem, songTitle } from '../../core/song/song-files';
import type { Tune } from '../../core/song/tune';
import { heardAgain } from '../../core/takes/heard-again';
import { placeInSong } from '../../core/takes/place-in-song';
import { writtenPasses } from '../../core/takes/take-bars';
import { takeMidi } from '../../core/takes/take-midi';
import type { EndedNote } from '../../core/takes/take-note';
import { type TakeEvent, type TakePass, takePasses } from '../../core/takes/take-passes';
import { floatsOf, shortsOf, type TakeSide, type TakeSound, takeMix } from '../../core/takes/take-sound';
import type { Recording } from '../../mic/hear-through';
import type { Writing } from '../../storage/kept-values';
import type { FileSaver } from '../../storage/save-file';
import { pageTurn } from '../page-turn';
import type { OpenTake } from './takes-state';

/** What a take was played with. */
export interface PlayedWith {
  readonly settings: Settings;
  readonly tune: Tune;
  readonly harp: Harp;
}

/** The take being listened to, looked at or named: just played, kept, or read from a file. */
export interface TakeInHand {
  readonly source: OpenTake['source'];
  readonly name: string;
  readonly sound: TakeSound;
  readonly events: readonly TakeEvent[];
  readonly passes: readonly TakePass[];
  readonly begins: number | null;
  readonly played: PlayedWith;
}

type Given = Pick<TakeInHand, 'source' | 'name' | 'sound' | 'events' | 'played'>;

/** A take from what was recorded. */
export const takeUp = (given: Given): TakeInHand => ({
  ...given,
  passes: takePasses(given.events),
  begins: null,
});

/** The notes of a recording, which have no place in a song yet. */
export const looseEvents = (notes: readonly HeardNote[]): readonly TakeEvent[] =>
  notes.flatMap((note): readonly TakeEvent[] =>
    note.to === null ? [] : [{ kind: 'note', heard: { note: { ...note, to: note.to }, playhead: null } }],
  );

type Taped = Pick<TakeInHand, 'sound' | 'events'>;
type Heard = Pick<Recording, 'samples' | 'sent' | 'sampleRate'>;

/**
 * A take with its notes as they are heard in the whole of its sound, without the band that was sent; as they were heard
 * while it was played where that fails, with a word about it.
 */
export const heardWhole = async (
  taped: Taped,
  hear: (sound: Heard) => Promise<readonly HeardNote[]>,
): Promise<Taped & { readonly message?: string }> => {
  const { heard, sent, sampleRate } = taped.sound;
  const band = sent?.some((value) => value !== 0) ? { sent: floatsOf(sent) } : {};
  try {
    const notes = await hear({ samples: floatsOf(heard), ...band, sampleRate });
    const ended = notes.flatMap((note) => (note.to === null ? [] : [{ ...note, to: note.to }]));
    return { ...taped, events: heardAgain(taped.events, ended) };
  } catch {
    return {
      ...taped,
      message: 'Its notes are those heard while you played: they could not be listened for once more.',
    };
  }
};

const notesOf = ({ events }: Pick<TakeInHand, 'events'>): readonly EndedNote[] =>
  events.flatMap((event) => (event.kind === 'note' ? [event.heard.note] : []));

/** A recording with its first chorus at a time of it, as the song goes now; null takes it out of the song. */
export const placed = (take: TakeInHand, program: Program, begins: number | null): TakeInHand => {
  const notes = notesOf(take);
  const heard =
    begins === null
      ? notes.map((note) => ({ note, playhead: null }))
      : placeInSong(notes, { ...program, plan: { ...program.plan, choruses: null } }, begins);
  const events = heard.map((each): TakeEvent => ({ kind: 'note', heard: each }));
  return { ...take, events, begins, passes: takePasses(events) };
};

/** What the page shows of a take. */
export const shown = (take: TakeInHand): OpenTake => {
  const { source, name, sound, passes, begins, played } = take;
  const notes = notesOf(take);
  return {
    ...{ source, name, begins },
    seconds: sound.heard.length / sound.sampleRate,
    bytes: sound.heard.byteLength + (sound.sent?.byteLength ?? 0),
    notes: notes.length,
    passes: writtenPasses(passes, played),
    withBand: sound.sent?.some((value) => value !== 0) ?? false,
    firstNote: notes[0]?.from ?? null,
  };
};

/** A decoded recording as the sound of a take. */
export const soundOfRecording = (samples: Float32Array, sampleRate: number): TakeSound => ({
  sampleRate,
  heard: shortsOf(samples),
  sent: null,
  late: 0,
});

const nameOf = ({ played, source, name }: TakeInHand, ending: string): string => {
  const stem = source === 'file' ? name.replace(/\.[^.]*$/, '') : fileStem(played.settings, played.tune);
  return `${stem}-played${ending}`;
};

/** All of a take's sound, made a second at a time so that the page gets its turn. */
export const wholeSound = async (
  { sound }: TakeInHand,
  side: TakeSide,
  signal: AbortSignal,
): Promise<Float32Array> => {
  const mix = takeMix(sound, side);
  const whole = new Float32Array(mix.frames);
  for (let from = 0; from < mix.frames; from += sound.sampleRate) {
    whole.set(mix.piece(from, sound.sampleRate), from);
    await pageTurn();
    signal.throwIfAborted();
  }
  return whole;
};

/** Writes a take as WAV, 16 bits, mono. @returns the name of the file, and how writing it went. */
export const saveSound = async (
  take: TakeInHand,
  side: TakeSide,
  saver: FileSaver,
): Promise<{ readonly name: string; readonly writing: Writing }> => {
  const { sampleRate } = take.sound;
  const format = { sampleRate, channels: 1, bits: 16 } as const;
  const name = nameOf(take, `${side === 'band' ? '-with-band' : ''}.wav`);
  const mix = takeMix(take.sound, side);
  const file = await saver.open(name, 'audio/wav');
  let writing = await file.write(wavHeader(format, mix.frames));
  for (let from = 0; from < mix.frames && writing.kind === 'written'; from += sampleRate) {
    writing = await file.write(encodePcm([mix.piece(from, sampleRate)], 16));
    await pageTurn();
  }
  if (writing.kind === 'written') writing = await file.write(wavEnd(format, mix.frames));
  if (writing.kind === 'written') writing = await file.save();
  if (writing.kind !== 'written') await file.discard();
  return { name, writing };
};

/** Writes a take as MIDI. @returns as `saveSound`. */
export const saveNotes = async (
  take: TakeInHand,
  saver: FileSaver,
): Promise<{ readonly name: string; readonly writing: Writing }> => {
  const { settings, tune } = take.played;
  const { bass, chords, kit, push } = settings.style;
  const title = take.source === 'file' ? take.name : `${songTitle(settings, tune, ENGLISH)}, as played`;
  const bytes = takeMidi(take.passes, { title, voices: { bass, chords, kit }, push });
  const name = nameOf(take, '.mid');
  return { name, writing: await saver.give(name, 'audio/midi', bytes) };
};
