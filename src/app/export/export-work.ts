/** How files are made: fetched when the first is asked for, or before that when the page rests. */
import type { Encoding } from '../../audio/export/compression';
import type { Program, Section } from '../../core/arranger/program';
import { titleOnly } from '../../core/formats/audio-tags';
import { writeMidi } from '../../core/formats/midi';
import type { WavFormat } from '../../core/formats/wav';
import { openParts } from '../../core/settings/mix';
import type { BandSound } from '../../core/song/band-sound';
import { abcSheetOf, leadSheetOf } from '../../core/song/lead-sheet';
import { fileStem, songTitle, soundingParts } from '../../core/song/song-files';
import { eachSongSection, type SongExtent, sectionSeconds, songSeconds } from '../../core/song/song-sections';
import { ENGLISH } from '../../core/theory/note-names';
import { pageTurn } from '../page-turn';
import type { Song } from '../song/song-state';
import {
  type AudioFile,
  type AudioOrder,
  type JobReins,
  mustFitWav,
  saveAudioFiles,
  type TakeAwayDevices,
} from './export-audio';
import { type ExportState, extentOf, type TakeAwayChoices } from './export-state';
import { SavingTrouble } from './export-trouble';

type Exported = Song & ExportState;

/** What a file is made from, as it was when it was asked for. */
export interface ExportOrder {
  readonly state: Exported;
  readonly song: Program;
  readonly sound: BandSound;
}

const SILENT =
  'Every part is muted in the mixer, so there would be nothing to hear. Let at least one part sound, then save again.';
/** How long sections are arranged before the page gets its turn, ms: on a slow phone one of them takes as long. */
const AT_A_TIME = 10;

/** Arranges a song section by section, letting the page have its turn. Rejects with the signal's reason when aborted. */
export const collectSections = async (
  program: Program,
  extent: SongExtent,
  signal: AbortSignal,
): Promise<readonly Section[]> => {
  const sections: Section[] = [];
  let began = performance.now();
  for (const section of eachSongSection(program, extent)) {
    sections.push(section);
    if (performance.now() - began > AT_A_TIME) {
      await pageTurn();
      began = performance.now();
    }
    signal.throwIfAborted();
  }
  return sections;
};

/** The kind of file that was chosen. Throws SavingTrouble where this browser cannot make it. */
export const formatOf = ({ kind, sampleRate, bits }: TakeAwayChoices, encodings: readonly Encoding[]) => {
  if (kind === 'wav') return { sampleRate, channels: 2, bits } satisfies WavFormat;
  const encoding = encodings.find(({ id }) => id === kind);
  if (!encoding) throw new SavingTrouble('This browser cannot make that kind of file. Choose WAV.');
  return encoding;
};

const audioOrder = (
  { settings, tune, takeAway }: Exported,
  sections: readonly Section[],
  sound: BandSound,
  ending: boolean,
): AudioOrder => {
  const format = formatOf(takeAway.choices, takeAway.encodings);
  const extension = 'bitrate' in format ? format.extension : 'wav';
  const parts = soundingParts(settings.mix, sections);
  if (parts.length === 0) throw new SavingTrouble(SILENT);
  const files: readonly AudioFile[] =
    takeAway.choices.files === 'band'
      ? [{ name: `${fileStem(settings, tune)}.${extension}`, parts }]
      : parts.map((part) => ({ name: `${fileStem(settings, tune, part)}.${extension}`, parts: [part] }));
  const seconds = sections.reduce((sum, section) => sum + sectionSeconds(section), 0);
  return {
    tags: titleOnly(songTitle(settings, tune, ENGLISH)),
    files,
    sections,
    style: settings.style,
    sound,
    format,
    cutAt: ending ? null : seconds,
  };
};

const midiOf = ({ settings, tune }: Exported, sections: readonly Section[]): Uint8Array => {
  const parts = openParts(settings.mix);
  if (soundingParts(settings.mix, sections).length === 0) throw new SavingTrouble(SILENT);
  const { bass, chords, second, kit, push } = settings.style;
  return writeMidi({
    title: songTitle(settings, tune, ENGLISH),
    sections,
    voices: { bass, chords, kit, ...(second !== 'none' && { second }) },
    parts,
    push,
  });
};

/** The bytes of the song as a MIDI file. Throws SavingTrouble when nothing in it would sound. */
export const makeMidi = async ({ state, song }: ExportOrder, signal: AbortSignal): Promise<Uint8Array> =>
  midiOf(state, await collectSections(song, extentOf(state.takeAway.choices, song.plan), signal));

/** The bytes of one chorus as an ABC tune. */
export const makeAbc = ({ state }: ExportOrder): Uint8Array =>
  new TextEncoder().encode(abcSheetOf(state.settings, state.tune));

/** The bytes of one chorus as a lead sheet. */
export const makeLeadSheet = ({ state }: ExportOrder): Uint8Array =>
  new TextEncoder().encode(leadSheetOf(state.settings, state.tune));

/** Has the sounds made ready that the audio files would need. Rejects when that part of the program cannot be had. */
export const prepareAudio = async (
  { state, song, sound }: ExportOrder,
  { prepareSounds }: TakeAwayDevices,
  signal: AbortSignal,
): Promise<void> => {
  const { choices, encodings } = state.takeAway;
  const { sampleRate } = formatOf(choices, encodings);
  const sections = await collectSections(song, extentOf(choices, song.plan), signal);
  await prepareSounds({ sections, sound, sampleRate, signal });
};

/** Makes and hands over the audio files asked for: their names, and the number of sounds that are missing in them. */
export const makeAudio = async (
  { state, song, sound }: ExportOrder,
  devices: TakeAwayDevices,
  reins: JobReins,
): Promise<{ readonly names: readonly string[]; readonly missing: number }> => {
  const { choices, encodings } = state.takeAway;
  const extent = extentOf(choices, song.plan);
  const format = formatOf(choices, encodings);
  if (!('bitrate' in format)) mustFitWav(format, songSeconds(song, extent));
  const sections = await collectSections(song, extent, reins.signal);
  const order = audioOrder(state, sections, sound, extent.ending);
  const missing = await saveAudioFiles(order, devices, reins);
  return { names: order.files.map(({ name }) => name), missing };
};
