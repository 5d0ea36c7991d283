import type { Playhead } from '../../core/arranger/playhead';
import type { HeardNote } from '../../core/hearing/heard-note';
import { floatsOf, type TakeSide, type TakeSound } from '../../core/takes/take-sound';
import { messageOf } from '../../core/theory/thrown';
import type { Recording } from '../../mic/hear-through';
import type { KeptLog } from '../../storage/kept-log';
import type { Writing } from '../../storage/kept-values';
import type { FileSaver } from '../../storage/save-file';
import type { TapeMachine } from '../../tape/tape-machine';
import type { Hearing } from '../ear/hearing';
import type { Join, Stand } from '../song/feature';
import type { Song } from '../song/song-state';
import { type KeptTakes, openKeptTakes } from './kept-takes';
import type { PlayedWith, TakeInHand } from './take-desk';
import { mustBeWritten, TakeTrouble, troubleText } from './take-trouble';
import type { TakesState } from './takes-state';
import { createTapeKeeper, type TapeKeeper } from './tape-keeper';

/** What the page can ask for about what was played. */
export interface TakesCommands {
  /** Takes the last minutes up, to be looked at and heard; they take the place of the take that lies open. */
  takeUpPlaying(): Promise<void>;
  /** Throws away what is kept of the last minutes. */
  forgetPlaying(): void;
  /** Reads a recording, and writes down what it hears in it; it takes the place of the take that lies open. */
  openRecording(file: File): Promise<void>;
  /** Says at which second of a recording its first chorus begins; null: it stands for itself. */
  placeRecording(begins: number | null): Promise<void>;
  hearTake(side: TakeSide): Promise<void>;
  /** Ends hearing a take, and reading a recording. */
  stopTake(): void;
  saveTakeSound(side: TakeSide): Promise<void>;
  saveTakeNotes(): Promise<void>;
  deleteTake(): void;
  /** Shows the takes that are kept in the browser. */
  readKeptTakes(): Promise<void>;
  /** Keeps the take that lies open under a name. */
  keepTake(name: string): Promise<void>;
  /** Hears a kept take once more; it takes the place of the take that lies open. */
  openKeptTake(id: string): Promise<void>;
  dropKeptTake(id: string): Promise<void>;
  restoreKeptTake(): Promise<void>;
}

export interface TakeDevices {
  /** Fetches what reads, hears and plays recordings; rejects when it cannot be had. */
  readonly loadMachine: () => Promise<TapeMachine>;
  readonly saver: FileSaver;
  /** A place for takes that are kept; without one none are. */
  readonly kept?: KeptLog;
}

/** What it asks of other features. */
export interface HearingAsked {
  hearing(): Hearing;
}

type TakesStand = Stand<TakesState & Song, HearingAsked>;

/** Longer recordings do not fit into the memory of small machines. */
const LONGEST = { bytes: 300e6, minutes: 15 } as const;

/** Fetches what is done with takes; rejects when it cannot be had. */
export const loadTakeDesk = (): Promise<typeof import('./take-desk')> => import('./take-desk');

/** Where nothing can be read, played or saved. */
const NO_DEVICES: TakeDevices = {
  loadMachine: () => Promise.reject(new TakeTrouble('Recordings cannot be read or heard here.')),
  saver: {
    give: async () => ({ kind: 'refused', detail: 'no files' }),
    open: () => Promise.reject(new TakeTrouble('Files cannot be saved here.')),
  },
};

class Takes {
  private readonly stand: TakesStand;
  private readonly devices: TakeDevices;
  private readonly shelf: KeptTakes;
  private keeper: TapeKeeper | null = null;
  private hand: TakeInHand | null = null;
  private running: AbortController | null = null;
  private silence: (() => void) | null = null;

  constructor(stand: TakesStand, devices: TakeDevices) {
    this.stand = stand;
    this.devices = devices;
    this.shelf = openKeptTakes(stand, devices.kept);
  }

  /** Keeps as many minutes as are chosen; does nothing before any are. */
  readonly follow = (): void => {
    const { takeMinutes } = this.stand.store.getState().settings;
    if (this.keeper === null && takeMinutes === 0) return;
    this.keeper ??= createTapeKeeper(this.stand.ask().hearing(), (kept) => this.set({ kept }));
    this.keeper.keep(takeMinutes);
  };

  readonly commands: TakesCommands = {
    takeUpPlaying: () => this.work('Writing down', (signal) => this.writeDown(signal)),
    forgetPlaying: () => this.keeper?.forget(),
    openRecording: (file) => this.work(`Reading ${file.name}`, (signal) => this.open(file, signal)),
    placeRecording: async (begins) => {
      const desk = await loadTakeDesk();
      const { hand } = this;
      if (hand === null || hand.source !== 'file') return;
      const program = this.stand.orders.programOf({ ...this.stand.store.getState(), lastChorus: null });
      this.lay(desk.placed(hand, program, begins), desk);
    },
    hearTake: (side) => this.hear(side),
    stopTake: () => {
      this.running?.abort();
      this.silence?.();
    },
    saveTakeSound: (side) => this.save((desk, hand) => desk.saveSound(hand, side, this.devices.saver)),
    saveTakeNotes: () => this.save((desk, hand) => desk.saveNotes(hand, this.devices.saver)),
    deleteTake: () => {
      this.commands.stopTake();
      this.hand = null;
      this.set({ take: null, message: null });
    },
    readKeptTakes: () => this.shelf.read(),
    keepTake: (name) =>
      this.work('Keeping it', async () =>
        this.hand === null ? undefined : this.shelf.keep(name, this.hand.sound),
      ),
    openKeptTake: (id) =>
      this.work('Getting it ready', async (signal) => {
        const kept = await this.shelf.find(id);
        if (kept === null) throw new TakeTrouble('That take is no longer here.');
        return this.listenTo(kept.name, kept.sound, signal);
      }),
    dropKeptTake: (id) => this.shelf.drop(id),
    restoreKeptTake: () => this.shelf.restore(),
  };

  readonly onPlayhead = (playhead: Playhead | null): void => this.keeper?.onPlayhead(playhead);

  readonly isBusy = (): boolean => {
    const { work, take, kept } = this.stand.store.getState().takes;
    return work !== null || take?.source === 'microphone' || kept !== null;
  };

  dispose(): void {
    this.commands.stopTake();
    this.keeper?.dispose();
    this.shelf.dispose();
  }

  private set(change: Partial<TakesState['takes']>): void {
    this.stand.store.setState(({ takes }) => ({ takes: { ...takes, ...change } }));
  }

  private played() {
    const { settings, tune, now } = this.stand.store.getState();
    return { settings, tune, harp: now.tune.harp };
  }

  /** @returns nothing to be said about it. */
  private lay(take: TakeInHand, desk: typeof import('./take-desk')): undefined {
    this.silence?.();
    this.hand = take;
    this.set({ take: desk.shown(take) });
  }

  /** Does one thing at a time, and tells how it goes; what begins later ends what was begun before. */
  private async work(what: string, job: (signal: AbortSignal) => Promise<string | undefined>): Promise<void> {
    this.running?.abort();
    const controller = new AbortController();
    this.running = controller;
    this.set({ work: { what, share: 0 }, message: null });
    let message: TakesState['takes']['message'] = null;
    try {
      const text = await job(controller.signal);
      if (text) message = { tone: 'note', text };
    } catch (error) {
      const text = troubleText(error);
      if (!controller.signal.aborted) message = { tone: 'trouble', text };
    }
    if (this.running !== controller) return;
    this.running = null;
    this.set({ work: null, message });
  }

  private async writeDown(signal: AbortSignal): Promise<string | undefined> {
    const taped = this.keeper?.taken();
    if (taped === undefined || taped === null)
      throw new TakeTrouble('Nothing of your playing is kept yet. Listen, play, and ask again.');
    const played = this.played();
    const desk = await loadTakeDesk();
    const hear = this.hearer('Writing down', played, signal);
    const { message, ...whole } = await desk.heardWhole(taped, hear);
    signal.throwIfAborted();
    this.lay(desk.takeUp({ source: 'microphone', name: '', ...whole, played }), desk);
    return message;
  }

  /** Hears sound through on a harp, and tells how far it is. */
  private hearer(what: string, { harp, settings }: PlayedWith, signal: AbortSignal) {
    const choice = { harp, reference: settings.reference, ...this.stand.ask().hearing().reeds() };
    const onProgress = (share: number): void => this.set({ work: { what, share } });
    return async (sound: Omit<Recording, 'choice'>): Promise<readonly HeardNote[]> =>
      (await this.devices.loadMachine()).hear({ ...sound, choice }, { signal, onProgress });
  }

  private async open(file: File, signal: AbortSignal): Promise<undefined> {
    const [desk, machine] = await Promise.all([loadTakeDesk(), this.devices.loadMachine()]);
    if (file.size > LONGEST.bytes)
      throw new TakeTrouble(
        `${file.name} is larger than ${LONGEST.bytes / 1e6} MB. Cut out the part you want.`,
      );
    const decoded = await machine.decode(file).catch((error: unknown) => {
      throw new TakeTrouble(
        `${file.name} could not be read as sound (${messageOf(error)}). Save it as WAV or another kind this browser plays, and open it again.`,
      );
    });
    signal.throwIfAborted();
    const { samples, sampleRate } = decoded;
    if (samples.length > LONGEST.minutes * 60 * sampleRate)
      throw new TakeTrouble(
        `${file.name} is longer than ${LONGEST.minutes} minutes. Cut out the part you want.`,
      );
    if (samples.length === 0) throw new TakeTrouble(`${file.name} holds no sound.`);
    return this.listenTo(file.name, desk.soundOfRecording(samples, sampleRate), signal);
  }

  /** Hears a recording through, and lays it open. */
  private async listenTo(name: string, sound: TakeSound, signal: AbortSignal): Promise<undefined> {
    const [desk, machine] = await Promise.all([loadTakeDesk(), this.devices.loadMachine()]);
    const { sampleRate } = sound;
    const played = this.played();
    const choice = { harp: played.harp, reference: played.settings.reference };
    const onProgress = (share: number): void => this.set({ work: { what: `Hearing ${name}`, share } });
    const samples = floatsOf(sound.heard);
    const notes = await machine.hear({ samples, sampleRate, choice }, { signal, onProgress });
    this.lay(desk.takeUp({ source: 'file', name, sound, events: desk.looseEvents(notes), played }), desk);
  }

  private async hear(side: TakeSide): Promise<void> {
    const { hand, stand } = this;
    if (hand === null) return;
    this.silence?.();
    // Asked for within the gesture.
    const lending = stand.band.lend();
    stand.band.stop();
    await this.work('Getting it ready', async (signal) => {
      const lent = await lending;
      if (lent === null)
        throw new TakeTrouble('The page’s sound could not be opened. Press Play once, then try again.');
      try {
        const [desk, machine] = await Promise.all([loadTakeDesk(), this.devices.loadMachine()]);
        const samples = await desk.wholeSound(hand, side, signal);
        this.keeper?.pause(true);
        this.silence = machine.play({ samples, sampleRate: hand.sound.sampleRate }, lent, () => {
          this.silence = null;
          lent.giveBack();
          this.keeper?.pause(false);
          this.set({ sounding: null });
        });
        this.set({ sounding: side });
        return undefined;
      } catch (error) {
        lent.giveBack();
        throw error;
      }
    });
  }

  private save(
    write: (
      desk: typeof import('./take-desk'),
      hand: TakeInHand,
    ) => Promise<{ readonly name: string; readonly writing: Writing }>,
  ): Promise<void> {
    return this.work('Saving', async () => {
      const { hand } = this;
      if (hand === null) return undefined;
      const { name, writing } = await write(await loadTakeDesk(), hand);
      mustBeWritten(name, writing);
      return `${name} is in your downloads.`;
    });
  }
}

/** What was played: the last minutes of it where the player wants, and recordings from files. */
export const joinTakes: Join<TakesState, TakesCommands, TakeDevices | undefined, Song, HearingAsked> = (
  stand,
  devices,
) => {
  const takes = new Takes(stand, devices ?? NO_DEVICES);
  const leave = stand.store.subscribe(takes.follow);
  return {
    commands: takes.commands,
    onPlayhead: takes.onPlayhead,
    isBusy: takes.isBusy,
    dispose: () => {
      leave();
      takes.dispose();
    },
  };
};
