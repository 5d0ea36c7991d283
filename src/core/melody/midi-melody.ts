/** The melodies of a MIDI file: one a track and channel, the likeliest first. */

import { type MidiFile, type MidiFileNote, type MidiFileTrack, readMidiFile } from '../formats/read-midi';
import { meterFor } from '../sheets/sheet-bars';
import { asPitchClass } from '../theory/units';
import { type Melody, melodyFrom, noteMeter, type PlacedKey } from './melody';

const QUARTER = 480;
const PERCUSSION = 9;
/** Most tracks that are offered. */
const MOST_OFFERED = 16;

interface Voice {
  readonly track: MidiFileTrack;
  readonly channel: number;
  readonly notes: readonly MidiFileNote[];
}

const voicesOf = ({ tracks }: MidiFile): readonly Voice[] =>
  tracks.flatMap((track) =>
    [...new Set(track.notes.map(({ channel }) => channel))]
      .filter((channel) => channel !== PERCUSSION)
      .map(
        (channel): Voice => ({
          track,
          channel,
          notes: track.notes.filter((note) => note.channel === channel),
        }),
      ),
  );

/** The share of notes that begin after the one before has ended: 1 for a single voice. */
const singleness = ({ notes }: Voice): number => {
  const apart = notes.filter((note, i) => {
    const before = notes[i - 1];
    return before === undefined || note.at >= before.at + before.length - 1;
  });
  return apart.length / Math.max(1, notes.length);
};

const meanKey = ({ notes }: Voice): number =>
  notes.reduce((sum, { key }) => sum + key, 0) / Math.max(1, notes.length);

/** A melody is one voice more than chords, and higher than a bass. */
const likeliest = (a: Voice, b: Voice): number =>
  Number(singleness(b) > 0.8) - Number(singleness(a) > 0.8) || meanKey(b) - meanKey(a);

/** Where notes of a file may stand: thirty-seconds and triplet sixteenths, in ticks. */
const FINE = [60, 80] as const;
/** Where played notes are taken to: sixteenths and triplet eighths. */
const COARSE = [120, 160] as const;

const toGrid = (tick: number, steps: readonly number[]): number =>
  steps
    .map((step) => Math.round(tick / step) * step)
    .reduce(
      (best, each) => (Math.abs(each - tick) < Math.abs(best - tick) ? each : best),
      Number.POSITIVE_INFINITY,
    );

/** A file counts as written, not played in, where so many of its notes begin on the fine grid, within so many ticks. */
const WRITTEN = { share: 0.8, ticks: 3 } as const;

const isWritten = (places: readonly number[]): boolean =>
  places.filter((at) => Math.abs(toGrid(at, FINE) - at) <= WRITTEN.ticks).length >=
  WRITTEN.share * places.length;

/** Between notes played one after the other the breath takes a moment: what ends shortly before the next was held. */
const closed = (placed: readonly PlacedKey[]): readonly PlacedKey[] => {
  let later = Number.POSITIVE_INFINITY;
  let next = Number.POSITIVE_INFINITY;
  return placed
    .toReversed()
    .map((note) => {
      if (note.at < later) next = later;
      later = note.at;
      const gap = next - (note.at + note.length);
      return gap > 0 && gap <= COARSE[0] ? { ...note, length: note.length + gap } : note;
    })
    .reverse();
};

const melodyOfVoice = (file: MidiFile, voice: Voice): Melody | string => {
  const left = new Set(file.left);
  const perTick = QUARTER / file.ticksPerQuarter;
  const tabs = new Map(voice.track.lyrics.map(({ at, text }) => [at, text]));
  // What this program wrote has its tab with every note, and stands where it was written.
  const isOurs = voice.notes.every(({ at }) => tabs.has(at));
  const written = isWritten(voice.notes.map(({ at }) => at * perTick));
  if (!written && !isOurs)
    left.add('The notes were played in: each went to the nearest sixteenth or triplet.');
  const snap = (tick: number): number => (isOurs ? Math.round(tick) : toGrid(tick, written ? FINE : COARSE));
  const placed = voice.notes.map((note): PlacedKey => {
    const at = snap(note.at * perTick);
    const tab = tabs.get(note.at);
    const end = Math.max(snap((note.at + note.length) * perTick), at + (isOurs ? 1 : FINE[0]));
    const how = tab === undefined ? {} : { tab, velocity: note.velocity };
    return { at, length: end - at, key: note.key, ...how };
  });
  const { beats, unit } = file.meter ?? { beats: 4, unit: 4 };
  const meter = meterFor(beats, unit);
  noteMeter(left, `${beats}/${unit}`, meter);
  const { key } = file;
  const tonic = key === null ? null : asPitchClass(7 * key.fifths + (key.minor ? 9 : 0));
  const channels = new Set(voice.track.notes.map((note) => note.channel)).size;
  const name = voice.track.name || 'Melody from a file';
  return melodyFrom(
    { name: channels > 1 ? `${name}, channel ${voice.channel + 1}` : name, meter, tonic },
    written || isOurs ? placed : closed(placed),
    left,
  );
};

/** Reads the melodies of a Standard MIDI File; a sentence where there is none. Never throws on any bytes. */
export const midiMelodies = (bytes: Uint8Array): readonly Melody[] | string => {
  const file = readMidiFile(bytes);
  if (typeof file === 'string') return file;
  const voices = voicesOf(file).toSorted(likeliest).slice(0, MOST_OFFERED);
  const melodies = voices
    .map((voice) => melodyOfVoice(file, voice))
    .filter((melody) => typeof melody !== 'string');
  return melodies.length > 0
    ? melodies
    : 'This MIDI file has no notes but percussion, so there is no melody in it.';
};
