/**
 * Takes of a foreign voice: the same lines as the corpus has, played by program 22 of a General MIDI sound set instead
 * of our reed model. Its reeds are recordings, with an attack, a spectrum and a tuning that nobody here chose. They
 * begin flat: measured on FluidR3 GM, by 60 to 130 cents for 20 to 60 ms below 500 Hz, by 30 to 70 for 10 to 20 ms
 * above. So the key that was sent is not the truth about a beginning; what a detector of others reads there, from the
 * voice alone before room, noise and band, is.
 */
import { type MidiEvent, writeMidi } from 'midi-file';
import { PitchDetector } from 'pitchy';
import { soundHz } from '../../../src/core/harp/intonation';
import { asHz } from '../../../src/core/theory/units';
import { ratio } from './chance';
import { gestureOf, type PlannedNote } from './gesture';
import { type Performance, type Player, truthOf } from './perform';
import { renderMidi } from './sound-set';
import type { PitchTrack } from './take';

/** General MIDI 1 sound 23, harmonica, as sent. */
const HARMONICA = 22;
/** Semitones to either side that the pitch wheel is set to. */
const WHEEL_RANGE = 12;
const WHEEL_MIDDLE = 8192;
/** The highest key that the harmonica of the usual free sets has a sample for; above it they are silent. */
const HIGHEST_KEY = 96;
/** A tick is a millisecond: 500 a quarter at 120 quarters a minute. */
const TICKS = 1000;
/** Milliseconds between positions of the wheel. */
const WHEEL_STEP = 4;
const STEP = 0.001;
/** Judged from so long after a note begins, as its recorded attack has no plain pitch before, until just before its end. */
const PLAIN = { after: 0.02, before: 0.004, tail: 0.4 } as const;

type Timed = readonly [at: number, event: MidiEvent];

const wheel = (cents: number): MidiEvent => ({
  deltaTime: 0,
  channel: 0,
  type: 'pitchBend',
  value: Math.round((cents / 100 / WHEEL_RANGE) * WHEEL_MIDDLE),
});

const controller = (controllerType: number, value: number): MidiEvent => ({
  deltaTime: 0,
  channel: 0,
  type: 'controller',
  controllerType,
  value,
});

/** Registered parameter 0 is the range of the wheel (MIDI 1.0 Detailed Specification). */
const SETUP: readonly Timed[] = [
  [0, { deltaTime: 0, channel: 0, type: 'programChange', programNumber: HARMONICA }],
  [0, controller(101, 0)],
  [0, controller(100, 0)],
  [0, controller(6, WHEEL_RANGE)],
  [0, controller(38, 0)],
];

interface Played {
  readonly note: PlannedNote;
  readonly until: number;
  /** Where it settles first. */
  readonly hz: number;
  /** Cents from there, by the second of the note. */
  readonly cents: (time: number) => number;
}

const keyHz = (pitch: number): number => 440 * 2 ** ((pitch - 69) / 12);

/** A planned note as a keyboard with a wheel can play it: one at a time. */
const playedOf = (note: PlannedNote, next: PlannedNote | undefined, { reference, seed }: Player): Played => ({
  note,
  until: Math.min(note.at + note.length, next?.at ?? Number.POSITIVE_INFINITY),
  hz: soundHz(note.sounds[0], asHz(reference)) * ratio(note.aim),
  cents: gestureOf(note, 0.02, seed).cents,
});

const eventsOf = ({ note, until, hz, cents }: Played): readonly Timed[] => {
  const ms = (seconds: number): number => Math.round(seconds * TICKS);
  const velocity = Math.max(30, Math.min(120, Math.round(96 * 10 ** (note.level / 40))));
  const common = { deltaTime: 0, channel: 0 };
  const off = 1200 * Math.log2(hz / keyHz(note.sounds[0].pitch));
  const wheels: Timed[] = [];
  for (let at = ms(note.at); at < ms(until); at += WHEEL_STEP)
    wheels.push([at, wheel(off + cents(at / TICKS - note.at))]);
  const keys = note.sounds.map(({ pitch }) => pitch);
  return [
    ...wheels.slice(0, 1),
    ...keys.map((noteNumber): Timed => [ms(note.at), { ...common, type: 'noteOn', noteNumber, velocity }]),
    ...wheels.slice(1),
    ...keys.map((noteNumber): Timed => [ms(until), { ...common, type: 'noteOff', noteNumber, velocity: 0 }]),
  ];
};

/** A file of one track; events of one time keep their order. */
const fileOf = (events: readonly Timed[]): Uint8Array => {
  let last = 0;
  const track = events
    .toSorted(([a], [b]) => a - b)
    .map(([at, event]) => {
      const deltaTime = at - last;
      last = at;
      return { ...event, deltaTime };
    });
  const end: MidiEvent = { deltaTime: 0, meta: true, type: 'endOfTrack' };
  const header = { format: 0, numTracks: 1, ticksPerBeat: TICKS / 2 } as const;
  return Uint8Array.from(writeMidi({ header, tracks: [[...track, end]] }));
};

const mark = (track: PitchTrack, { note, until, hz, cents }: Played): void => {
  const last = Math.min(track.hz.length - 1, Math.ceil((until + PLAIN.tail) / track.step));
  for (let i = Math.max(0, Math.floor(note.at / track.step)); i <= last; i += 1) {
    const time = i * track.step - note.at;
    const sounds = time >= 0 && i * track.step < until;
    track.hz[i] = sounds ? hz * ratio(cents(time)) : 0;
    const plain = sounds && time > PLAIN.after && i * track.step < until - PLAIN.before;
    track.judged[i] = plain && note.sounds.length === 1 ? 1 : 0;
  }
};

/**
 * A beginning is read in windows of so many periods, by the clarity its author advises, where it lies within so many
 * cents of the key: farther away is the note before.
 */
const BEGINNING = { seconds: 0.12, periods: 3, clear: 0.9, within: 150 } as const;

/** Puts the pitch that a note really begins with into the track. */
const markBeginning = (
  track: PitchTrack,
  { note, until, hz }: Played,
  { samples, sampleRate }: { readonly samples: Float32Array; readonly sampleRate: number },
): void => {
  const size = Math.ceil((BEGINNING.periods * sampleRate) / hz);
  const detector = PitchDetector.forFloat32Array(size);
  const end = Math.min(until, note.at + BEGINNING.seconds);
  for (let i = Math.ceil(note.at / track.step); i * track.step < end; i += 1) {
    const from = Math.round(i * track.step * sampleRate - size / 2);
    if (from < 0 || from + size > samples.length) continue;
    const [read, clarity] = detector.findPitch(samples.subarray(from, from + size), sampleRate);
    if (clarity < BEGINNING.clear) continue;
    if (Math.abs(1200 * Math.log2(read / track.hz[i])) < BEGINNING.within) track.hz[i] = read;
  }
};

/** Plays planned notes by a sound set, but those beyond its keys; overbends that fail are played as if they came. */
export const performForeign = (
  plan: readonly PlannedNote[],
  player: Player,
  { seconds, sampleRate, set }: { seconds: number; sampleRate: number; set: string },
): Performance => {
  const playable = plan.filter(({ sounds }) => sounds.every(({ pitch }) => pitch <= HIGHEST_KEY));
  const all = playable.map((note, i) => playedOf({ ...note, failed: null }, playable[i + 1], player));
  const steps = Math.ceil(seconds / STEP);
  const track: PitchTrack = {
    step: STEP,
    hz: new Float64Array(steps),
    judged: new Uint8Array(steps).fill(1),
  };
  for (const one of all) mark(track, one);
  const events = [...SETUP, ...all.flatMap(eventsOf)];
  const samples = renderMidi(fileOf(events), { set, seconds, sampleRate });
  for (const one of all) if (one.note.sounds.length === 1) markBeginning(track, one, { samples, sampleRate });
  return {
    samples,
    notes: all.flatMap(({ note, until, hz }) => truthOf({ note: { ...note, length: until - note.at }, hz })),
    track,
  };
};
