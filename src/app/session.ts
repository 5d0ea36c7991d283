import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Band, BandSound, BandStatus, HeardPosition } from '../audio/band';
import { isFormId } from '../core/chart/forms';
import { temperamentOf } from '../core/harp/intonation';
import type { Program, Section } from '../core/score/program';
import type { Mix } from '../core/settings/mix';
import type { Settings } from '../core/settings/settings';
import { asCents, asSeconds } from '../core/theory/units';
import type { KeptValues } from '../storage/kept-values';
import { withFittingRepeat, withForm } from './choices';
import { type Commands, createChoiceCommands, type PlayCommands } from './commands';
import { keepSettings, loadSettings } from './kept-settings';
import { leadsOf } from './leads';
import { openOwnCharts } from './own-charts';
import { EMPTY_DESK } from './own-charts-desk';
import type { Notice, SessionState } from './session-state';
import { openShelves } from './shelves';
import { statusNotice } from './status-notice';
import { createTakeAwayCommands } from './take-away';
import type { TakeAwayDevices } from './take-away-audio';
import { INITIAL_TAKE_AWAY } from './take-away-state';
import { chartFor, type Tune, tuneFor } from './tune';
import { heardViews, restingViews } from './views';
import { createWarmUpRun } from './warm-up-run';

/** What the session is built from. Everything that depends on the machine comes in here. */
export interface Devices {
  readonly band: Band;
  readonly kept: KeptValues;
  /** A whole number that differs each time: the seed of a new take. */
  readonly newSeed: () => number;
  /** Runs something after so many seconds; returns what takes it back. */
  readonly later: (seconds: number, run: () => void) => () => void;
  /** What files are made with. */
  readonly takeAway: TakeAwayDevices;
}

/** Values that change too often for the store; read them in an animation frame. */
export interface Live {
  heard(): HeardPosition | null;
}

export interface Session {
  readonly store: Pick<StoreApi<SessionState>, 'getState' | 'getInitialState' | 'subscribe'>;
  readonly commands: Commands;
  readonly live: Live;
  dispose(): void;
}

type Store = StoreApi<SessionState>;

/** Seconds a single sound is held when the player asks to hear it. */
const LISTEN_SECONDS = 1.2;
const EQUAL = Array.from({ length: 12 }, () => asCents(0));

/** Nobody asks for the click alone in order not to hear it: its mute gives way. */
const audibleMix = ({ mix, plan }: Settings): Mix => {
  if (plan.sounding !== 'click') return mix;
  const click = { ...mix.channels.click, muted: false };
  return { ...mix, channels: { ...mix.channels, click } };
};

const soundOf = ({ settings, tune }: SessionState): BandSound => {
  const { reference, style, bandFollowsHarp } = settings;
  const offsets = bandFollowsHarp ? (temperamentOf(tune.harp, reference).cents ?? EQUAL) : EQUAL;
  return {
    mix: audibleMix(settings),
    tuning: { reference, offsets },
    bass: style.bass,
    chords: style.chords,
    kit: style.kit,
  };
};

const musicDiffers = (a: Settings, b: Settings): boolean =>
  a.style !== b.style ||
  a.tempo !== b.tempo ||
  a.plan !== b.plan ||
  a.harpKey !== b.harpKey ||
  a.position !== b.position ||
  a.formId !== b.formId ||
  a.line !== b.line ||
  a.trade !== b.trade ||
  a.technique !== b.technique ||
  a.tuning !== b.tuning ||
  a.harpOctave !== b.harpOctave;

const createInitialState = (band: Band, kept: KeptValues): SessionState => {
  const { settings, notices } = loadSettings(kept);
  const tune = tuneFor(settings, chartFor(settings, []));
  return {
    settings,
    tune,
    status: band.status(),
    ...restingViews(tune, 0),
    lastChorus: null,
    warmUp: null,
    exercise: null,
    takeAway: INITIAL_TAKE_AWAY,
    notices,
    harpCase: [],
    ownTunings: [],
    ownCharts: [],
    chartDesk: EMPTY_DESK,
  };
};

const createNoticeBoard = (store: Store) => {
  const without = (id: string): readonly Notice[] =>
    store.getState().notices.filter((notice) => notice.id !== id);
  return {
    post: (notice: Notice): void => store.setState({ notices: [...without(notice.id), notice] }),
    dismiss: (id: string): void => {
      if (store.getState().notices.some((notice) => notice.id === id))
        store.setState({ notices: without(id) });
    },
  };
};

/** The music of a section with its harp and fit, worked out once a section. */
const createTuneCache = (settings: () => Settings): ((section: Section) => Tune) => {
  const tunes = new WeakMap<Section, { readonly of: Settings; readonly tune: Tune }>();
  return (section) => {
    const known = tunes.get(section);
    if (known && known.of === settings()) return known.tune;
    const tune = tuneFor(settings(), section.chart);
    tunes.set(section, { of: settings(), tune });
    return tune;
  };
};

const programOf = ({ settings, tune, lastChorus, ownCharts }: SessionState): Program => ({
  leads: leadsOf(settings, ownCharts),
  chart: tune.chart,
  style: settings.style,
  tempo: settings.tempo,
  plan: {
    ...settings.plan,
    choruses: lastChorus === null ? settings.plan.choruses : lastChorus + 1,
  },
});

const isUnderWay = (band: Band): boolean =>
  band.status().kind === 'playing' || band.status().kind === 'interrupted';

interface Parts {
  readonly store: Store;
  readonly band: Band;
  readonly board: ReturnType<typeof createNoticeBoard>;
}

interface PlayParts extends Parts {
  readonly endWarmUp: () => void;
}

const createPlayCommands = ({ store, band, board, endWarmUp }: PlayParts): PlayCommands => {
  const state = store.getState;
  const stop = (): void => {
    if (state().warmUp !== null) endWarmUp();
    band.stop();
  };
  const play = async (): Promise<void> => {
    const status = await band.play(programOf(state()), soundOf(state()), state().cursor);
    const notice = statusNotice(status);
    if (notice) board.post(notice);
  };
  const moveTo = (bar: number): void => {
    const { tune, cursor } = state();
    const bars = tune.chart.bars.length;
    const to = ((bar % bars) + bars) % bars;
    if (isUnderWay(band)) {
      band.seek(to);
      store.setState({ cursor: to });
    } else if (to !== cursor) {
      store.setState(restingViews(tune, to));
    }
  };
  return {
    play,
    stop,
    toggle: () => {
      if (isUnderWay(band) || state().warmUp !== null) stop();
      else void play();
    },
    moveTo,
    moveBy: (bars) => moveTo((state().now.formBar ?? state().cursor) + bars),
    lastTime: (on) => {
      const heard = band.heard();
      store.setState({ lastChorus: on && heard !== null ? heard.section.chorus : null });
      if (isUnderWay(band)) band.change(programOf(state()));
    },
    listen: ({ pitch, bend }) => void band.audition('lead', pitch, asSeconds(LISTEN_SECONDS), bend),
    listenTo: (pitch) => void band.audition('lead', pitch, asSeconds(LISTEN_SECONDS), 0),
    dismiss: board.dismiss,
  };
};

/** Keeps tune, band and view in step with the settings, the saved charts and what is heard. */
const createConductor = ({ store, band, board }: Parts, kept: KeptValues) => {
  const state = store.getState;
  const tuneOf = createTuneCache(() => state().settings);
  const showHeard = (position: HeardPosition | null): void => {
    if (position === null) {
      store.setState({ ...restingViews(state().tune, state().cursor), lastChorus: null });
    } else {
      store.setState(heardViews(position, band.upcoming(), tuneOf));
    }
  };
  const tuneTo = (asked: Settings): void => {
    const chart = chartFor(asked, state().ownCharts);
    const settings = withFittingRepeat(asked, chart.bars.length);
    store.setState({ settings, tune: tuneFor(settings, chart) });
  };
  const show = (): void => showHeard(isUnderWay(band) ? band.heard() : null);
  return {
    showHeard,
    apply: (asked: Settings): void => {
      const before = state().settings;
      if (asked === before) return;
      tuneTo(asked);
      const { settings } = state();
      const trouble = keepSettings(kept, settings);
      if (trouble) board.post(trouble);
      else board.dismiss('storage');
      band.setSound(soundOf(state()));
      if (isUnderWay(band) && state().warmUp === null && musicDiffers(before, settings)) {
        band.change(programOf(state()));
      }
      show();
    },
    /** The saved charts are others now: a chosen one is played as it stands. */
    takeSavedCharts: (): void => {
      tuneTo(state().settings);
      const chosen = !isFormId(state().settings.formId);
      if (isUnderWay(band) && state().warmUp === null && chosen) band.change(programOf(state()));
      show();
    },
  };
};

/** Joins the core with the devices: holds the state of the page and carries out what the player asks for. */
export const createSession = ({ band, kept, newSeed, later, takeAway }: Devices): Session => {
  const store = createStore<SessionState>(() => createInitialState(band, kept));
  const state = store.getState;
  const board = createNoticeBoard(store);
  const { showHeard, apply, takeSavedCharts } = createConductor({ store, band, board }, kept);

  const routine = createWarmUpRun({ store, band, soundOf, later });

  const onStatus = (status: BandStatus): void => {
    store.setState({ status });
    routine.status(status);
    const notice = statusNotice(status);
    if (notice) board.post(notice);
    else board.dismiss('band');
  };
  const shelves = openShelves(kept, store, board.post);
  const charts = openOwnCharts({
    kept,
    store,
    post: board.post,
    newSeed,
    chooseForm: (id) => apply(withForm(state().settings, id)),
    onSaved: takeSavedCharts,
  });
  takeSavedCharts();
  const files = createTakeAwayCommands({ store, devices: takeAway, programOf, soundOf });
  const onBar = (position: HeardPosition | null): void => {
    showHeard(position);
    routine.heard(position);
  };
  const unsubscribers = [band.onBar(onBar), band.onStatus(onStatus), shelves.dispose, charts.dispose];

  return {
    store,
    commands: {
      ...createChoiceCommands((make) => apply(make(state().settings)), newSeed),
      ...createPlayCommands({ store, band, board, endWarmUp: routine.commands.endWarmUp }),
      ...files,
      ...routine.commands,
      ...shelves.commands,
      ...charts.commands,
    },
    live: { heard: () => band.heard() },
    dispose: () => {
      for (const unsubscribe of unsubscribers) unsubscribe();
      files.cancelSaving();
      band.dispose();
    },
  };
};
