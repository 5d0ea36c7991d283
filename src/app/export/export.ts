import type { Encoding } from '../../audio/export/compression';
import { fileStem } from '../../core/song/song-files';
import { soundOf, withRecordedTaken } from '../../core/song/song-program';
import type { BookState } from '../book/book-state';
import type { Slice } from '../slice';
import { isUnderWay } from '../song/band-orders';
import type { Join, Stand } from '../song/feature';
import type { Song } from '../song/song-state';
import type { JobReins, TakeAwayDevices } from './export-audio';
import type { ExportState, TakeAwayChoices, TakeAwayMessage, TakeAwayState } from './export-state';
import { mustBeWritten, SavingTrouble, troubleText } from './export-trouble';
import type { ExportOrder } from './export-work';
import type { SavedSet } from './set-work';

/** What the page can ask for: files. */
export interface TakeAwayCommands {
  chooseTakeAway(change: Partial<TakeAwayChoices>): void;
  /** Finds out what this browser can compress to. */
  findEncodings(): Promise<void>;
  /** Makes the first audio file begin sooner, where the band rests. Resolves when it would; never rejects. */
  prepareAudio(): Promise<void>;
  /** These resolve when the file is handed over or the attempt is over; how it went is in the state. */
  saveMidi(): Promise<void>;
  saveAudio(): Promise<void>;
  saveLeadSheet(): Promise<void>;
  /** One chorus as an ABC tune. */
  saveAbc(): Promise<void>;
  /** Every song of a set as a file of its own, in the kind that was chosen. */
  saveSet(id: string): Promise<void>;
  /** Hands what was saved last on by the sheet of the platform; where that fails it says so. */
  shareSaved(): Promise<void>;
  /** Hands a link on in the same way. Returns what to tell the player, nothing where all went well. */
  shareLink(url: string): Promise<string>;
  /** Ends what is being made; nothing of it is kept. */
  cancelSaving(): void;
}

type Exported = Song & ExportState & BookState;

/** Fetches what makes files; rejects with SavingTrouble when it cannot be had. */
export const loadExportWork = async (): Promise<typeof import('./export-work')> => {
  try {
    return await import('./export-work');
  } catch {
    throw new SavingTrouble(
      'The part of the program that makes files could not be loaded. Save again; if it stays away, open Combshed in another tab and save there. Your choices are kept.',
    );
  }
};

const loadSetWork = async (): Promise<typeof import('./set-work')> => {
  await loadExportWork();
  return import('./set-work');
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

type Work = (reins: JobReins & { readonly onSong: OnSong }) => Promise<TakeAwayMessage>;
type OnSong = (number: number, of: number) => void;

/** Lets one job run at a time and keeps the state telling how it goes. */
const createJobs = (store: Slice<Exported, ExportState>, share: TakeAwayDevices['share']) => {
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
    share?.begin();
    set({ job: { fileName, share: 0 }, message: null });
    const report: JobReins['report'] = (name, share) => {
      if (running === controller) set({ job: { fileName: name, share, ...(song && { song }) } });
    };
    let song: { readonly number: number; readonly of: number } | null = null;
    const onSong: OnSong = (number, of) => {
      song = { number, of };
    };
    let message: TakeAwayMessage;
    try {
      message = await unlessAborted(work({ signal, report, onSong }), signal);
      if (share?.takes()) message = { ...message, shareable: true };
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

const setMessage = ({ names, left, missing }: SavedSet): TakeAwayMessage => {
  const parts = [
    names.length === 0 ? 'No file could be made.' : saved(names),
    ...(left.length === 0 ? [] : [`Left out: ${left.join('; ')}.`]),
    ...(missing === 0 ? [] : ['Some sounds could not be made and are missing; save again.']),
  ];
  return left.length + missing === 0 ? note(parts.join(' ')) : trouble(parts.join(' '));
};

/** What this browser can compress to: nothing where the part that compresses cannot be had. */
const offered = async ({ loadCompressor }: TakeAwayDevices): Promise<readonly Encoding[]> => {
  try {
    return await (await loadCompressor()).offered();
  } catch {
    return [];
  }
};

const shareCommands = (
  sheet: TakeAwayDevices['share'],
  say: (message: TakeAwayMessage) => void,
): Pick<TakeAwayCommands, 'shareSaved' | 'shareLink'> => ({
  shareSaved: async () => {
    const shared = await sheet?.offer();
    if (shared?.kind !== 'refused') return;
    const text = `Nothing could be handed on (${shared.detail}). What was saved is in your downloads; share it from there.`;
    say(trouble(text));
  },
  shareLink: async (url) =>
    (await sheet?.offerLink(url))?.kind === 'refused'
      ? 'The link could not be handed on. Copy the text instead.'
      : '',
});

const giveTo =
  ({ saver }: TakeAwayDevices) =>
  async (name: string, type: string, bytes: Uint8Array): Promise<TakeAwayMessage> => {
    mustBeWritten(await saver.give(name, type, bytes));
    return note(saved([name]));
  };

/** Makes the sounds of one file ready at a time. */
const createPreparing = (devices: TakeAwayDevices) => {
  let controller = new AbortController();
  const end = (): void => controller.abort();
  const begin = async (order: ExportOrder): Promise<void> => {
    end();
    controller = new AbortController();
    const { signal } = controller;
    try {
      const { prepareAudio } = await loadExportWork();
      await prepareAudio(order, devices, signal);
    } catch {
      // Whoever saves is told what was wrong.
    }
  };
  return { begin, end };
};

interface SheetMeans {
  readonly orderNow: () => ExportOrder;
  readonly nameWith: (song: Song, extension: string) => string;
  readonly give: ReturnType<typeof giveTo>;
}

/** Files that are text and soon written. */
const sheetCommands = (
  run: ReturnType<typeof createJobs>['run'],
  { orderNow, nameWith, give }: SheetMeans,
): Pick<TakeAwayCommands, 'saveLeadSheet' | 'saveAbc'> => {
  const saver = (extension: string, type: string, make: 'makeLeadSheet' | 'makeAbc') => () => {
    const order = orderNow();
    const name = nameWith(order.state, extension);
    return run(name, async () => give(name, type, (await loadExportWork())[make](order)));
  };
  return {
    saveLeadSheet: saver('musicxml', 'application/vnd.recordare.musicxml+xml', 'makeLeadSheet'),
    saveAbc: saver('abc', 'text/vnd.abc', 'makeAbc'),
  };
};

/** The commands that make files. Each works on the song as it is when asked; what changes later is not in the file. */
const createCommands = (
  { store, band, orders: { programOf } }: Stand<Exported>,
  devices: TakeAwayDevices,
): TakeAwayCommands => {
  const jobs = createJobs(store, devices.share);
  const give = giveTo(devices);
  const preparing = createPreparing(devices);
  /** A wish for an ending, and what others play along, belong to the playing under way, not to the file. */
  const orderNow = (): ExportOrder => {
    const state = store.getState();
    // What is heard now; at rest, what a Play would be heard as.
    const heard = isUnderWay(band) ? state : withRecordedTaken(state);
    const alone = { lastChorus: null, harpHeard: null, followed: [] };
    return { state, song: programOf({ ...state, ...alone }), sound: soundOf(heard) };
  };
  const nameWith = ({ settings, tune }: Song, extension: string): string =>
    `${fileStem(settings, tune)}.${extension}`;
  return {
    chooseTakeAway: (change) => jobs.set({ choices: { ...store.getState().takeAway.choices, ...change } }),
    findEncodings: async () => jobs.set({ encodings: await offered(devices) }),
    prepareAudio: async () => {
      if (!isUnderWay(band) && store.getState().takeAway.job === null) await preparing.begin(orderNow());
    },
    saveMidi: () => {
      const order = orderNow();
      const name = nameWith(order.state, 'mid');
      return jobs.run(name, async ({ signal }) => {
        const { makeMidi } = await loadExportWork();
        return give(name, 'audio/midi', await makeMidi(order, signal));
      });
    },
    saveAudio: () => {
      preparing.end();
      const order = orderNow();
      return jobs.run(nameWith(order.state, order.state.takeAway.choices.kind), async (reins) => {
        const { makeAudio } = await loadExportWork();
        const { names, missing } = await makeAudio(order, devices, reins);
        const done = saved(names);
        if (missing === 0) return note(done);
        return trouble(`${done} Some of its sounds could not be made and are missing from it; save again.`);
      });
    },
    ...sheetCommands(jobs.run, { orderNow, nameWith, give }),
    saveSet: async (id) => {
      const state = store.getState();
      const set = state.book.sets.find((each) => each.id === id);
      if (set === undefined) return;
      await jobs.run(set.name, async (reins) => {
        const { makeSet } = await loadSetWork();
        return setMessage(await makeSet({ state, set, programOf }, devices, reins, reins.onSong));
      });
    },
    ...shareCommands(devices.share, (message) => jobs.set({ message })),
    cancelSaving: jobs.cancel,
  };
};

/** Files to take away. */
export const joinExport: Join<ExportState, TakeAwayCommands, TakeAwayDevices, Song & BookState> = (
  stand,
  devices,
) => {
  const commands = createCommands(stand, devices);
  return {
    commands,
    isBusy: () => stand.store.getState().takeAway.job !== null,
    dispose: commands.cancelSaving,
  };
};
