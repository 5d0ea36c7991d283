import type { Section } from '../arranger/program';
import { secondsPerTickAt } from '../arranger/section-time';
import type { Bar, Meter } from '../chart/chart';
import { type MidiSong, writeMidi } from '../formats/midi';
import type { Sound } from '../harp/harp';
import { finishScore } from '../score/finish-score';
import { noteEvent } from '../score/note';
import type { NoteEvent } from '../score/score';
import { median } from '../theory/statistics';
import { asBpm, asPitchClass, asTicks } from '../theory/units';
import type { EndedNote } from './take-note';
import type { TakePass } from './take-passes';

/** What goes into the file beside the take. */
export type TakeSong = Pick<MidiSong, 'title' | 'voices' | 'push'>;

/** Without a band: two beats a second, so that a tick is about a millisecond. */
const FREE = {
  bpm: asBpm(120),
  meter: { name: '4/4', beats: 4, beatTicks: asTicks(480) } satisfies Meter,
} as const;
/** Velocity of a note as loud as the take is as a rule, and how much a dB adds (by design, no source). */
const VELOCITY = { usual: 88, perDecibel: 2, softest: 24 } as const;
/** A note that begins so many cents from where it settles is written with its glide. */
const SCOOP = 30;
/** Semitones beyond which a beginning is a misreading, not a scoop. */
const WIDEST = 4;

/** How a note is written, its place given. @param tick seconds a tick lasts. */
const eventOf = (note: EndedNote, at: number, tick: number, usual: number): NoteEvent => {
  const velocity = Math.max(VELOCITY.softest, VELOCITY.usual + VELOCITY.perDecibel * (note.level - usual));
  const event = noteEvent('lead', { at, length: (note.to - note.from) / tick, pitch: note.pitch, velocity });
  const { start, settling } = note.movement;
  if (Math.abs(start) < SCOOP || Math.abs(start) > 100 * WIDEST || settling <= 0) return event;
  return { ...event, glideFrom: start / 100, glideTicks: asTicks(Math.max(1, settling / tick)) };
};

/** Bars without chords, long enough for what was played in them. */
const freeSection = (notes: readonly EndedNote[], index: number): Section => {
  const { bpm, meter } = FREE;
  const barTicks = meter.beats * meter.beatTicks;
  const tick = 60 / (bpm * meter.beatTicks);
  const [first, last] = [notes[0]?.from ?? 0, notes.at(-1)?.to ?? 0];
  const count = Math.max(1, Math.ceil((last - first) / tick / barTicks));
  const bars: readonly Bar[] = Array.from({ length: count }, (_, i) => ({
    at: asTicks(i * barTicks),
    length: asTicks(barTicks),
    chords: [],
  }));
  const length = asTicks(count * barTicks);
  return {
    index,
    kind: 'intro',
    chorus: 0,
    chart: { title: '', key: asPitchClass(0), mode: 'major', tonic: 'C', meter, bars, length },
    barNumbers: bars.map(() => null),
    score: { length, events: [] },
    tempo: [{ at: asTicks(0), bpm }],
    last: false,
  };
};

/** A note of the harmonica with all the holes that sounded then: a line is one voice, which they have no place in before. */
const allHoles = (event: NoteEvent, grips: ReadonlyMap<number, readonly Sound[]>): readonly NoteEvent[] =>
  event.part === 'lead'
    ? [event, ...(grips.get(event.at) ?? []).map(({ pitch }) => ({ ...event, pitch }))]
    : [event];

const sectionOf = ({ section, notes }: TakePass, index: number, usual: number): Section => {
  const played =
    section ??
    freeSection(
      notes.map(({ note }) => note),
      index,
    );
  const first = notes[0]?.note.from ?? 0;
  const grips = new Map<number, readonly Sound[]>();
  const heard = notes.map(({ note, playhead }) => {
    const tick = secondsPerTickAt(played, playhead?.ticks ?? 0);
    const event = eventOf(note, playhead?.ticks ?? (note.from - first) / tick, tick, usual);
    grips.set(event.at, note.together);
    return event;
  });
  const band = played.score.events.filter(({ part }) => part !== 'lead');
  const score = finishScore(played.chart, [...band, ...heard]);
  return { ...played, score: { ...score, events: score.events.flatMap((event) => allHoles(event, grips)) } };
};

/**
 * A take as a Standard MIDI File: what was played on the harmonica's track, the band as it played under it, bar by
 * bar; what was played without a band at 120 beats a minute. Throws as `writeMidi`.
 */
export const takeMidi = (passes: readonly TakePass[], { title, voices, push }: TakeSong): Uint8Array => {
  const usual = median(passes.flatMap(({ notes }) => notes.map(({ note }) => note.level)));
  const sections = passes.map((pass, index) => sectionOf(pass, index, usual));
  return writeMidi({ title, voices, sections, push: { ...push, lead: 0 } });
};
