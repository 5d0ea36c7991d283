import type { Encoding } from '../../audio/export/compress-audio';
import type { Program, Section } from '../../core/arranger/program';
import { writeMidi } from '../../core/formats/midi';
import type { WavFormat } from '../../core/formats/wav';
import { openParts } from '../../core/settings/mix';
import type { BandSound } from '../../core/song/band-sound';
import { fileStem, leadSheetOf, songTitle, soundingParts } from '../../core/song/song-files';
import { eachSongSection, type SongExtent, sectionSeconds, songSeconds } from '../../core/song/song-sections';
import type { Slice } from '../slice';
import type { Song } from '../song/song-state';
import {
  type AudioFile,
  type AudioOrder,
  type JobReins,
  mustFitWav,
  saveAudioFiles,
  type TakeAwayDevices,
} from './export-audio';
import {
  type ExportState,
  extentOf,
  type TakeAwayChoices,
  type TakeAwayMessage,
  type TakeAwayState,
} from './export-state';
import { mustBeWritten, SavingTrouble, troubleText } from './export-trouble';

/** What the page can ask for: files. */
export interface TakeAwayCommands {
  chooseTakeAway(change: Partial<TakeAwayChoices>): void;
  /** Finds out what this browser can compress to. */
  findEncodings(): Promise<void>;
  /** These resolve when the file is handed over or the attempt is over; how it went is in the state. */
  saveMidi(): Promise<void>;
  saveAudio(): Promise<void>;
  saveLeadSheet(): Promise<void>;
  /** Ends what is being made; nothing of it is kept. */
  cancelSaving(): void;
}

type Exported = Song & ExportState;

export interface TakeAwayOptions {
  readonly store: Slice<Exported, ExportState>;
  readonly devices: TakeAwayDevices;
  readonly programOf: (state: Exported) => Program;
  readonly soundOf: (state: Exported) => BandSound;
}

const SILENT =
  'Every part is muted in the mixer, so there would be nothing to hear. Let at least one part sound, then save again.';
/** Sections arranged before the page gets its turn: some tens of milliseconds. */
const SECTIONS_AT_A_TIME = 4;

const turn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

const collectSections = async (
  program: Program,
  extent: SongExtent,
  signal: AbortSignal,
): Promise<readonly Section[]> => {
  const sections: Section[] = [];
  for (const section of eachSongSection(program, extent)) {
    sections.push(section);
    if (sections.length % SECTIONS_AT_A_TIME === 0) await turn();
    signal.throwIfAborted();
  }
  return sections;
};

/** Rejects as soon as the signal is aborted, whatever the work is still waiting for. */
const unlessAborted = <Value>(work: Promise<Value>, signal: AbortSignal): Promise<Value> =>
  Promise.race([
    work,
    new Promise<never>((_, reject) =>
      signal.addEventListener('abort', () => reject(signal.reason), { once: true }),
    ),
  ]);

const note = (text: string): TakeAwayMessage => ({ tone: 'note', text });
const trouble = (text: string): TakeAwayMessage => ({ tone: 'trouble', text });

type Work = (reins: JobReins) => Promise<TakeAwayMessage>;

/** Lets one job run at a time and keeps the state telling how it goes. */
const createJobs = (store: Slice<Exported, ExportState>) => {
  let running: AbortController | null = null;
  const set = (change: Partial<TakeAwayState>): void =>
    store.setState(({ takeAway }) => ({ takeAway: { ...takeAway, ...change } }));
  const run = async (fileName: string, work: Work): Promise<void> => {
    if (running !== null) {
      const busy = store.getState().takeAway.job?.fileName ?? 'another file';
      set({ message: note(`${busy} is still being made. Wait for it or cancel it, then save this one.`) });
      return;
    }
    const controller = new AbortController();
    running = controller;
    const { signal } = controller;
    set({ job: { fileName, share: 0 }, message: null });
    const report: JobReins['report'] = (name, share) => {
      if (running === controller) set({ job: { fileName: name, share } });
    };
    let message: TakeAwayMessage;
    try {
      message = await unlessAborted(work({ signal, report }), signal);
    } catch (error) {
      message = signal.aborted
        ? note('Cancelled. What was not finished is not kept.')
        : trouble(troubleText(error));
    }
    running = null;
    set({ job: null, message });
  };
  return { run, set, cancel: () => running?.abort() };
};

const saved = (names: readonly string[]): string =>
  names.length === 1
    ? `${names[0]} is in your downloads.`
    : `${names.length} files are in your downloads: ${names.join(', ')}.`;

const formatOf = ({ kind, sampleRate, bits }: TakeAwayChoices, encodings: readonly Encoding[]) => {
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
    title: songTitle(settings, tune),
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
  const { bass, chords, push } = settings.style;
  return writeMidi({ title: songTitle(settings, tune), sections, voices: { bass, chords }, parts, push });
};

/** The commands that make files. Each works on the song as it is when asked; what changes later is not in the file. */
export const createTakeAwayCommands = ({
  store,
  devices,
  programOf,
  soundOf,
}: TakeAwayOptions): TakeAwayCommands => {
  const jobs = createJobs(store);
  const give = async (name: string, type: string, bytes: Uint8Array): Promise<TakeAwayMessage> => {
    mustBeWritten(await devices.saver.give(name, type, bytes));
    return note(saved([name]));
  };
  /** A wish for an ending belongs to the playing under way, not to the file. */
  const songOf = (state: Exported): Program => programOf({ ...state, lastChorus: null });
  const nameWith = ({ settings, tune }: Exported, extension: string): string =>
    `${fileStem(settings, tune)}.${extension}`;
  return {
    chooseTakeAway: (change) => jobs.set({ choices: { ...store.getState().takeAway.choices, ...change } }),
    findEncodings: async () => jobs.set({ encodings: await devices.compressor.offered() }),
    saveMidi: () => {
      const state = store.getState();
      const song = songOf(state);
      const name = nameWith(state, 'mid');
      return jobs.run(name, async ({ signal }) => {
        const extent = extentOf(state.takeAway.choices, song.plan);
        return give(name, 'audio/midi', midiOf(state, await collectSections(song, extent, signal)));
      });
    },
    saveAudio: () => {
      const state = store.getState();
      const song = songOf(state);
      const { choices, encodings } = state.takeAway;
      return jobs.run(nameWith(state, choices.kind), async (reins) => {
        const extent = extentOf(choices, song.plan);
        const format = formatOf(choices, encodings);
        if (!('bitrate' in format)) mustFitWav(format, songSeconds(song, extent));
        const order = audioOrder(
          state,
          await collectSections(song, extent, reins.signal),
          soundOf(state),
          extent.ending,
        );
        const missing = await saveAudioFiles(order, devices, reins);
        const done = saved(order.files.map(({ name }) => name));
        if (missing === 0) return note(done);
        return trouble(`${done} Some of its sounds could not be made and are missing from it; save again.`);
      });
    },
    saveLeadSheet: () => {
      const state = store.getState();
      const name = nameWith(state, 'musicxml');
      return jobs.run(name, async () => {
        const text = leadSheetOf(state.settings, state.tune);
        return give(name, 'application/vnd.recordare.musicxml+xml', new TextEncoder().encode(text));
      });
    },
    cancelSaving: jobs.cancel,
  };
};
