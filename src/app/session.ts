import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Band, BandSound, BandStatus, HeardPosition } from '../audio/band';
import type { Sound } from '../core/harp/harp';
import type { BarRange, Program, Section } from '../core/score/program';
import type { PartId } from '../core/score/score';
import type { FeelId } from '../core/score/style';
import { DEFAULT_SETTINGS } from '../core/settings/defaults';
import type { Channel } from '../core/settings/mix';
import { parseSettings, parseTempo, storableSettings } from '../core/settings/parse-settings';
import type { Settings } from '../core/settings/settings';
import { addTap, tappedTempo } from '../core/settings/tap-tempo';
import { asBpm, asCents, asSeconds, type Bpm, type EpochMs, type PitchClass } from '../core/theory/units';
import type { KeptValues, Writing } from '../storage/kept-values';
import { withFeel, withForm, withHarpKey, withPosition, withSongKey } from './choices';
import type { BarView, Notice, SessionState } from './session-state';
import { statusNotice } from './status-notice';
import { chartFor, type Tune, tuneFor } from './tune';

/** What the session is built from. Everything that depends on the machine comes in here. */
export interface Devices {
  readonly band: Band;
  readonly kept: KeptValues;
  /** A whole number that differs each time: the seed of a new take. */
  readonly newSeed: () => number;
}

/** What the page can ask for. */
export interface Commands {
  choose(change: Partial<Settings>): void;
  chooseSongKey(key: PitchClass): void;
  chooseHarpKey(key: PitchClass): void;
  choosePosition(position: number): void;
  chooseForm(id: string): void;
  chooseFeel(id: FeelId): void;
  /** Takes a typed tempo; returns a sentence when it cannot be used. */
  typeTempo(text: string): string | null;
  nudgeTempo(by: number): void;
  tap(now: EpochMs): void;
  setChannel(part: PartId, change: Partial<Channel>): void;
  setMaster(gain: number): void;
  repeat(range: BarRange | null): void;
  /** Another take: same choices, other fills and lines. */
  newTake(): void;
  play(): Promise<void>;
  stop(): void;
  toggle(): void;
  moveTo(bar: number): void;
  moveBy(bars: number): void;
  /** The chorus being heard becomes the last, with an ending. */
  lastTime(on: boolean): void;
  listen(sound: Sound): void;
  dismiss(notice: string): void;
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

const SETTINGS = 'settings';
/** Seconds a single sound is held when the player asks to hear it. */
const LISTEN_SECONDS = 1.2;

const soundOf = (settings: Settings): BandSound => ({
  mix: settings.mix,
  tuning: { reference: settings.reference, offsets: Array.from({ length: 12 }, () => asCents(0)) },
  bass: settings.style.bass,
  chords: settings.style.chords,
  kit: settings.style.kit,
});

const writingNotice = (writing: Writing): Notice | null => {
  if (writing.kind === 'written') return null;
  const why =
    writing.kind === 'full'
      ? 'The browser’s storage for this page is full'
      : 'The browser does not let this page keep anything';
  return {
    id: 'storage',
    tone: 'trouble',
    text: `${why}: your choices hold until you close the page. Free some site data or allow it for this page, then change any setting to try again.`,
  };
};

interface Loaded {
  readonly settings: Settings;
  readonly notices: readonly Notice[];
}

const loadSettings = (kept: KeptValues): Loaded => {
  const reading = kept.read(SETTINGS);
  if (reading.kind === 'nothing') return { settings: DEFAULT_SETTINGS, notices: [] };
  if (reading.kind === 'refused') {
    const notice = writingNotice({ kind: 'refused', detail: reading.detail });
    return { settings: DEFAULT_SETTINGS, notices: notice ? [notice] : [] };
  }
  const { settings, problems } =
    reading.kind === 'value'
      ? parseSettings(reading.value)
      : {
          settings: DEFAULT_SETTINGS,
          problems: ['The kept settings are damaged; the usual ones are used instead.'],
        };
  if (problems.length === 0) return { settings, notices: [] };
  const aside = kept.setAside(SETTINGS, reading.raw);
  const copy = aside.kind === 'written' ? ' A copy of what was there is kept in this browser.' : '';
  return {
    settings,
    notices: [{ id: 'unread-settings', tone: 'trouble', text: `${problems.join(' ')}${copy}` }],
  };
};

const plainView = (tune: Tune, bar: number): BarView => ({
  tune,
  bar,
  formBar: bar,
  kind: 'chorus',
  chorus: 0,
});

/** Joins the core with the devices: holds the state of the page and carries out what the player asks for. */
export const createSession = ({ band, kept, newSeed }: Devices): Session => {
  const loaded = loadSettings(kept);
  const firstTune = tuneFor(loaded.settings, chartFor(loaded.settings));
  let taps: readonly EpochMs[] = [];
  let lastChorus: number | null = null;
  const tunes = new WeakMap<Section, Tune>();

  const store = createStore<SessionState>(() => ({
    settings: loaded.settings,
    tune: firstTune,
    status: band.status(),
    cursor: 0,
    now: plainView(firstTune, 0),
    next: plainView(firstTune, 1),
    lastTime: false,
    notices: loaded.notices,
  }));
  const state = store.getState;

  const notify = (notice: Notice): void =>
    store.setState({ notices: [...state().notices.filter(({ id }) => id !== notice.id), notice] });
  const dismiss = (id: string): void =>
    store.setState({ notices: state().notices.filter((notice) => notice.id !== id) });

  const tuneOf = (section: Section): Tune => {
    const known = tunes.get(section);
    if (known) return known;
    const tune = tuneFor(state().settings, section.chart);
    tunes.set(section, tune);
    return tune;
  };

  const viewOf = (section: Section, bar: number): BarView => ({
    tune: tuneOf(section),
    bar,
    formBar: section.barNumbers[bar] ?? null,
    kind: section.kind,
    chorus: section.chorus,
  });

  const restingViews = (tune: Tune, cursor: number): Pick<SessionState, 'cursor' | 'now' | 'next'> => {
    const bars = tune.chart.bars.length;
    const at = Math.min(cursor, bars - 1);
    return { cursor: at, now: plainView(tune, at), next: plainView(tune, (at + 1) % bars) };
  };

  const showHeard = (position: HeardPosition | null): void => {
    if (position === null) {
      lastChorus = null;
      store.setState({ ...restingViews(state().tune, state().cursor), lastTime: false });
      return;
    }
    const { section, bar } = position;
    const within = bar + 1 < section.chart.bars.length;
    const upcoming = within ? null : band.upcoming();
    const next = within ? viewOf(section, bar + 1) : upcoming && viewOf(upcoming, 0);
    store.setState({ now: viewOf(section, bar), next });
  };

  const playing = (): boolean => band.status().kind === 'playing' || band.status().kind === 'interrupted';

  const program = (): Program => {
    const { settings, tune } = state();
    const choruses = lastChorus === null ? settings.plan.choruses : lastChorus + 1;
    return {
      chart: tune.chart,
      style: settings.style,
      tempo: settings.tempo,
      plan: { ...settings.plan, choruses },
    };
  };

  const keep = (settings: Settings): void => {
    const notice = writingNotice(kept.write(SETTINGS, storableSettings(settings)));
    if (notice) notify(notice);
    else if (state().notices.some(({ id }) => id === 'storage')) dismiss('storage');
  };

  const musicChanged = (before: Settings, after: Settings): boolean =>
    before.style !== after.style ||
    before.tempo !== after.tempo ||
    before.plan !== after.plan ||
    before.harpKey !== after.harpKey ||
    before.position !== after.position ||
    before.formId !== after.formId;

  const apply = (settings: Settings): void => {
    const before = state().settings;
    if (settings === before) return;
    const tune = tuneFor(settings, chartFor(settings));
    store.setState({ settings, tune });
    keep(settings);
    band.setSound(soundOf(settings));
    if (playing()) {
      if (musicChanged(before, settings)) band.change(program());
      showHeard(band.heard());
    } else {
      store.setState(restingViews(tune, state().cursor));
    }
  };

  const change = (make: (settings: Settings) => Settings): void => apply(make(state().settings));

  const play = async (): Promise<void> => {
    const status = await band.play(program(), soundOf(state().settings), state().cursor);
    const notice = statusNotice(status);
    if (notice) notify(notice);
  };

  const moveTo = (bar: number): void => {
    const { tune, cursor } = state();
    const bars = tune.chart.bars.length;
    const to = ((bar % bars) + bars) % bars;
    if (playing()) {
      band.seek(to);
      store.setState({ cursor: to });
    } else if (to !== cursor) {
      store.setState(restingViews(tune, to));
    }
  };

  const commands: Commands = {
    choose: (fields) => change((settings) => ({ ...settings, ...fields })),
    chooseSongKey: (key) => change((settings) => withSongKey(settings, key)),
    chooseHarpKey: (key) => change((settings) => withHarpKey(settings, key)),
    choosePosition: (position) => change((settings) => withPosition(settings, position)),
    chooseForm: (id) => change((settings) => withForm(settings, id)),
    chooseFeel: (id) => change((settings) => withFeel(settings, id)),
    typeTempo: (text) => {
      const tempo = parseTempo(text);
      if (typeof tempo === 'string') return tempo;
      change((settings) => ({ ...settings, tempo }));
      return null;
    },
    nudgeTempo: (by) => {
      const tempo = parseTempo(String(Math.round(state().settings.tempo + by)));
      if (typeof tempo !== 'string') change((settings) => ({ ...settings, tempo }));
    },
    tap: (now) => {
      taps = addTap(taps, now);
      const tempo: Bpm | null = tappedTempo(taps);
      if (tempo !== null) change((settings) => ({ ...settings, tempo: asBpm(tempo) }));
    },
    setChannel: (part, fields) =>
      change((settings) => {
        const channels = { ...settings.mix.channels, [part]: { ...settings.mix.channels[part], ...fields } };
        return { ...settings, mix: { ...settings.mix, channels } };
      }),
    setMaster: (master) => change((settings) => ({ ...settings, mix: { ...settings.mix, master } })),
    repeat: (range) => change((settings) => ({ ...settings, plan: { ...settings.plan, repeat: range } })),
    newTake: () => change((settings) => ({ ...settings, style: { ...settings.style, seed: newSeed() } })),
    play,
    stop: () => band.stop(),
    toggle: () => {
      if (band.status().kind === 'playing') band.stop();
      else void play();
    },
    moveTo,
    moveBy: (bars) => moveTo((state().now.formBar ?? state().cursor) + bars),
    lastTime: (on) => {
      const heard = band.heard();
      lastChorus = on && heard !== null ? heard.section.chorus : null;
      store.setState({ lastTime: lastChorus !== null });
      if (playing()) band.change(program());
    },
    listen: (sound) => void band.audition('lead', sound.pitch, asSeconds(LISTEN_SECONDS)),
    dismiss,
  };

  const onStatus = (status: BandStatus): void => {
    store.setState({ status });
    const notice = statusNotice(status);
    if (notice) notify(notice);
    else dismiss('band');
  };
  const unsubscribers = [band.onBar(showHeard), band.onStatus(onStatus)];

  return {
    store,
    commands,
    live: { heard: () => band.heard() },
    dispose: () => {
      for (const unsubscribe of unsubscribers) unsubscribe();
      band.dispose();
    },
  };
};
