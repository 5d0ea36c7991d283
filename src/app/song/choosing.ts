import type { Band } from '../../audio/band/band';
import type { Playhead } from '../../core/arranger/playhead';
import { type ChoiceTaken, recordChoice, redoChoice, undoChoice } from '../../core/settings/choice-history';
import { mergeSettings } from '../../core/settings/merge-settings';
import type { Settings } from '../../core/settings/settings';
import { chorusAfter, holdChoices, withHeld } from '../../core/song/held-choices';
import type { Slice } from '../slice';
import { isUnderWay } from './band-orders';
import type { Conductor } from './conductor';
import type { Song, SongState } from './song-state';

/** What the page can ask for about choices made. */
export interface HistoryCommands {
  undoChoice(): void;
  redoChoice(): void;
  /** What waits for the next chorus is carried out now. */
  changeNow(): void;
  /** What waits for the next chorus is taken back. */
  keepAsIs(): void;
}

/** Carries choices out, at once or from the next chorus, and remembers them for undoing. */
export interface Choosing {
  readonly commands: HistoryCommands;
  change(make: (settings: Settings) => Settings): void;
  /** Carries out settings that were made from the present ones: what waits and is not another in them goes on waiting. */
  apply(asked: Settings): void;
  /** Carries out and keeps what came by itself, as a new take does: nobody chose it, so it is no step to undo. */
  follow(make: (settings: Settings) => Settings): void;
  /** Takes over what was typed in another tab: it is not this tab's to undo. */
  adopt(make: (settings: Settings) => Settings): void;
  onPlayhead(position: Playhead | null): void;
  /** To be called when the band may have stopped: what waited is carried out. */
  onStatus(): void;
}

interface Needs {
  readonly store: Slice<Song, SongState>;
  readonly band: Band;
  readonly conductor: Conductor;
  /** Keeps the settings for the next visit. */
  readonly keep: (settings: Settings) => void;
  readonly later: (seconds: number, run: () => void) => () => void;
}

/** Choices of one thing so soon after each other are one step to undo. */
const JOIN_SECONDS = 1;

/** Carries choices out now or from the next chorus; false when one cannot be worked out: nothing is changed then. */
const createCarrier = ({ store, band, conductor }: Needs) => {
  const state = store.getState;
  const canWait = (): boolean =>
    state().settings.changesWait && isUnderWay(band) && state().warmUp === null && band.playhead() !== null;
  const carryOut = (asked: Settings, wait = canWait()): boolean => {
    if (!wait || !asked.changesWait) return conductor.change(asked, null);
    const { settings, waiting } = state();
    const { now, held } = holdChoices(settings, asked);
    const playhead = band.playhead();
    const from = waiting?.from ?? (playhead && chorusAfter(playhead));
    return conductor.change(now, held && { from, held });
  };
  return {
    carryOut,
    /** Carries out what waits. */
    carryOutHeld: (): void => {
      const { waiting, settings } = state();
      if (waiting !== null) carryOut(withHeld(settings, waiting.held), false);
    },
  };
};

/** Whether choices of one thing belong to one step. */
const createJoining = (later: Needs['later']) => {
  let joins = false;
  let forget = (): void => {};
  return {
    joins: () => joins,
    /** Lets what comes soon belong to the same step. */
    open: (): void => {
      joins = true;
      forget();
      forget = later(JOIN_SECONDS, () => {
        joins = false;
      });
    },
    close: (): void => {
      joins = false;
    },
  };
};

/** Whether a section is heard with which what waits for a chorus begins. */
const begins = ({ section: { kind, chorus } }: Playhead, from: number): boolean =>
  kind !== 'intro' && chorus >= from && (kind !== 'count-in' || chorus > 0);

/** Creates what carries choices out. */
export const createChoosing = (needs: Needs): Choosing => {
  const { store, band, keep, later } = needs;
  const state = store.getState;
  const chosen = (): Settings => state().waiting?.settings ?? state().settings;
  const { carryOut, carryOutHeld } = createCarrier(needs);
  const joining = createJoining(later);
  const change: Choosing['change'] = (make) => {
    const from = chosen();
    const asked = make(from);
    if (asked === from || !carryOut(asked)) return;
    keep(chosen());
    store.setState({ choices: recordChoice(state().choices, from, chosen(), joining.joins()), taken: '' });
    joining.open();
  };
  const take = (step: ChoiceTaken | null, verb: string): void => {
    if (step === null || !carryOut(step.settings)) return;
    joining.close();
    keep(chosen());
    store.setState({ choices: step.history, taken: `${verb}: ${step.name}` });
  };
  return {
    change,
    apply: (asked) => {
      const { settings } = state();
      change((now) => (now === settings ? asked : mergeSettings(settings, asked, now)));
    },
    follow: (make) => {
      if (carryOut(make(chosen()), false)) keep(chosen());
    },
    adopt: (make) => void carryOut(make(chosen())),
    onPlayhead: (position) => {
      const from = state().waiting?.from ?? null;
      if (position !== null && from !== null && begins(position, from)) carryOutHeld();
    },
    onStatus: () => {
      if (!isUnderWay(band)) carryOutHeld();
    },
    commands: {
      undoChoice: () => take(undoChoice(state().choices, chosen()), 'Undone'),
      redoChoice: () => take(redoChoice(state().choices, chosen()), 'Made again'),
      changeNow: carryOutHeld,
      keepAsIs: () => change(() => state().settings),
    },
  };
};
