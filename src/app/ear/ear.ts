import { createLevelJudge } from '../../core/hearing/level-verdict';
import { createListeners } from '../../listeners/listeners';
import type { HeardReport, Microphone, MicStatus } from '../../mic/microphone';
import type { Join } from '../song/feature';
import type { Song } from '../song/song-state';
import { createBandListens } from './band-listens';
import { type CalibrationCommands, type Calibrator, createCalibrator } from './calibrate';
import { createChorusCollector } from './chorus-collector';
import { createEarMemory } from './ear-live';
import type { EarStand, EarState } from './ear-state';
import { earNotice } from './ear-words';
import type { Hearing } from './hearing';
import { type LearntShelf, openLearntReeds } from './learnt-reeds';
import { createListening, type Listening } from './listening';
import { createNotePlacer, type PlacedNote } from './place-notes';

/** What the page and other features can ask for about the ear. */
export interface EarCommands extends CalibrationCommands {
  /** Listens to the chosen microphone; to be called within a gesture. */
  listenToMe(): Promise<void>;
  stopListening(): void;
  /** Begins or stops. */
  toggleListening(): void;
  /** Chooses a microphone by its id, null for the system's own choice; one that is open gives way at once. */
  chooseMicrophone(id: string | null): void;
  /** Puts the report of the last chorus away. */
  putReportAway(): void;
  /** Forgets how the reeds of harps sound at this microphone. */
  forgetReeds(): void;
  /** What is heard, as it comes. */
  hearing(): Hearing;
}

const change = ({ store }: EarStand, made: Partial<EarState['ear']>): void =>
  store.setState(({ ear }) => ({ ear: { ...ear, ...made } }));

/** Judges the level whenever a report tells one. */
const createLevelWatch = (stand: EarStand) => {
  let judge = createLevelJudge();
  let judgedAt = 0;
  return {
    take: ({ level, frames }: HeardReport): void => {
      const now = frames.at(-1)?.known;
      if (level === null || now === undefined) return;
      const verdict = judge.take(level.peak, Math.min(1, Math.max(0, now - judgedAt)));
      judgedAt = now;
      if (verdict !== stand.store.getState().ear.level) change(stand, { level: verdict });
    },
    reset: (): void => {
      judge = createLevelJudge();
      change(stand, { level: null });
    },
  };
};

/** What becomes of the reports of the microphone. */
const createHearing = (
  stand: EarStand,
  { listening, reeds }: { readonly listening: Listening; readonly reeds: LearntShelf },
  microphone: Microphone | undefined,
) => {
  const memory = createEarMemory();
  const reports = createListeners<HeardReport>();
  const notes = createListeners<PlacedNote>();
  const played = createListeners<PlacedNote>();
  notes.add(played.tell);
  const level = createLevelWatch(stand);
  const placer = createNotePlacer({
    playheadAt: (time) => stand.band.playheadAt(time),
    roundTrip: listening.roundTrip,
  });
  const hearing: Hearing = {
    live: memory,
    onHeard: reports.add,
    onNote: notes.add,
    onPlayed: played.add,
    takePlayed: played.tell,
    teach: (sound, from, to) => microphone?.teach(sound, from, to),
    reeds: reeds.now,
    record: (on) => microphone?.record(on),
    onSound: (listener) => microphone?.onSound(listener) ?? (() => undefined),
    roundTrip: listening.roundTrip,
    aim: listening.aim,
  };
  return {
    hearing,
    take: (report: HeardReport): void => {
      if (report.begun !== null) placer.forget();
      memory.take(report);
      listening.take(report);
      level.take(report);
      reports.tell(report);
      for (const note of report.notes) notes.tell(placer.place(note));
    },
    /** Nothing comes for now: what was heard last sounds no longer. */
    hush: (): void => {
      memory.forget();
      level.reset();
    },
    forget: (): void => {
      memory.forget();
      placer.forget();
      level.reset();
    },
  };
};

const commandsOf = (
  stand: EarStand,
  listening: Listening,
  onStatus: (status: MicStatus) => void,
): Omit<EarCommands, 'hearing' | 'forgetReeds' | keyof CalibrationCommands> => {
  const { store, apply } = stand;
  const listenToMe = async (): Promise<void> => {
    const status = await listening.start();
    if (status !== null) onStatus(status);
  };
  return {
    listenToMe,
    stopListening: listening.stop,
    putReportAway: () => change(stand, { report: null }),
    toggleListening: () => {
      if (listening.isOpen()) listening.stop();
      else void listenToMe();
    },
    chooseMicrophone: (microphone) => {
      apply({ ...store.getState().settings, microphone });
      if (listening.isOpen()) void listenToMe();
    },
  };
};

/** Another form has other bars. */
const putOldReportAway = (stand: EarStand): void => {
  const { ear, settings } = stand.store.getState();
  if (ear.report !== null && ear.report.formId !== settings.formId) change(stand, { report: null });
};

/** Who forgets a calibration forgets how harps sounded there as well. */
const forgettingOf = (
  { commands }: Calibrator,
  reeds: LearntShelf,
  listening: Listening,
): Pick<EarCommands, 'forgetCalibration' | 'forgetReeds'> => {
  const forgetReeds = (): void => {
    reeds.forget();
    listening.follow();
  };
  return {
    forgetReeds,
    forgetCalibration: () => {
      commands.forgetCalibration();
      forgetReeds();
    },
  };
};

/** Listens to the microphone for the harp in hand, and tells what it hears and where in the music it was. */
export const joinEar: Join<EarState, EarCommands, Microphone | undefined, Song> = (stand, microphone) => {
  const reeds = openLearntReeds(stand);
  const { store, band } = stand;
  const listening = createListening({ store, band, microphone, reeds: reeds.now });
  const { hearing, take, hush, forget } = createHearing(stand, { listening, reeds }, microphone);
  const collector = createChorusCollector(stand.store);
  const calibrator = createCalibrator({ stand, hearing, microphone });
  const bandListens = createBandListens(stand, hearing);
  const onStatus = (status: MicStatus): void => {
    change(stand, { status });
    calibrator.onStatus(status);
    listening.onStatus(status);
    const notice = earNotice(status);
    if (notice === null) stand.board.dismiss('ear');
    else stand.board.post(notice);
    if (status.kind === 'silent') hush();
    if (status.kind === 'listening' || status.kind === 'silent') return;
    forget();
    collector.forget();
  };
  const unsubscribers = [
    microphone?.onStatus(onStatus),
    microphone?.onHeard(take),
    microphone?.onLearnt(reeds.take),
    microphone?.onDevices(() => void listening.onDevices()),
    stand.store.subscribe(listening.follow),
    stand.store.subscribe(reeds.follow),
    hearing.onNote(collector.take),
    stand.store.subscribe(() => putOldReportAway(stand)),
  ];
  return {
    commands: {
      ...commandsOf(stand, listening, onStatus),
      ...calibrator.commands,
      ...forgettingOf(calibrator, reeds, listening),
      hearing: () => hearing,
    },
    onPlayhead: (position) => {
      bandListens.onPlayhead(position, listening.isOpen());
      const { warmUp, ear } = stand.store.getState();
      if (!listening.isOpen() || warmUp !== null || ear.calibrating !== null) return collector.forget();
      const report = collector.follow(position);
      if (report !== null) change(stand, { report });
    },
    dispose: () => {
      for (const unsubscribe of unsubscribers) unsubscribe?.();
      calibrator.dispose();
      bandListens.dispose();
      listening.dispose();
      reeds.dispose();
    },
  };
};
