import type { Playhead } from '../../core/arranger/playhead';
import type { Program } from '../../core/arranger/program';
import { type BookSong, withBookSong } from '../../core/book/book-song';
import { warmUp } from '../../core/practice/warm-up';
import type { Cue, WarmUpSpec, WarmUpStep } from '../../core/practice/warm-up-step';
import type { NoteEvent } from '../../core/score/score';
import { DEFAULT_PLAN } from '../../core/settings/defaults';
import type { Settings } from '../../core/settings/settings';
import { audibleSoundOf } from '../../core/song/song-program';
import { tuneFor } from '../../core/song/tune';
import { restingViews } from '../../core/song/views';
import { asTicks } from '../../core/theory/units';
import type { BookState } from '../book/book-state';
import type { Join, Joined, Stand } from '../song/feature';
import type { Song, SongState } from '../song/song-state';
import { type RunStep, type SetWarmUpChoice, setStepsFor } from './set-steps';
import type { WarmingUp, WarmUpState } from './warm-up-state';

/** What the page can ask for about the warm-up. */
export interface WarmUpCommands {
  startWarmUp(): void;
  /** A warm-up for a set of the book: its harps, tempos and bends. */
  startSetWarmUp(choice: SetWarmUpChoice): void;
  skipWarmUpStep(): void;
  endWarmUp(): void;
}

/** What the warm-up for the harp in hand and the song as chosen is made of. */
export const warmUpSpec = ({ settings, tune }: Pick<SongState, 'settings' | 'tune'>): WarmUpSpec => ({
  chart: tune.chart,
  harp: tune.harp,
  technique: settings.technique,
  tempo: settings.tempo,
  swing: 1,
  tabStyle: settings.tabStyle,
  seed: settings.style.seed,
});

/** The step's lead, pass by pass, each from its own start. */
const passesOf = (step: WarmUpStep, passes: number, length: number): readonly (readonly NoteEvent[])[] =>
  Array.from({ length: passes }, (_, pass) =>
    step.lead
      .filter(({ at }) => at >= pass * length && at < (pass + 1) * length)
      .map((note) => ({ ...note, at: asTicks(note.at - pass * length) })),
  );

/** What the band plays in a step: its bars over and over, without ending, after a bar of count-in. */
const programOf = (step: WarmUpStep, { settings }: SongState): Program | null => {
  if (step.band === null) return null;
  const { chart, passes, sounding } = step.band;
  return {
    chart,
    style: { ...settings.style, stopTime: 'off' },
    tempo: step.tempo,
    plan: {
      ...DEFAULT_PLAN,
      choruses: passes,
      arc: 'steady',
      turnarounds: 'as written',
      sounding,
      repeat: { from: 0, to: chart.bars.length - 1 },
    },
    leads: { [chart.key]: passesOf(step, passes, chart.length) },
  };
};

const cueAt = (step: WarmUpStep, { section, bar }: Playhead): Cue | null => {
  const inForm = section.barNumbers[bar];
  if (step.band === null || inForm === null || inForm === undefined) return null;
  const place = section.chorus * step.band.chart.bars.length + inForm;
  return step.cues.findLast((cue) => cue.bar <= place) ?? null;
};

/** The stand, as the warm-up finds it. */
type WarmUpStand = Stand<Song & BookState & WarmingUp>;

/** Lends the stand to songs of a set, and gives it back as it was. */
const createLoan = ({ store, apply }: Pick<WarmUpStand, 'store' | 'apply'>) => {
  let before: Settings | null = null;
  return {
    put: (song: BookSong): void => {
      before ??= store.getState().settings;
      apply(withBookSong(before, song));
    },
    giveBack: (): void => {
      const back = before;
      before = null;
      if (back !== null) apply(back);
    },
  };
};

const showStep = (store: WarmUpStand['store'], warmUp: WarmUpState): void => {
  const { band } = warmUp.step;
  store.setState({
    warmUp,
    exercise: band === null ? null : tuneFor(store.getState().settings, band.chart),
  });
};

const showCue = (store: WarmUpStand['store'], position: Playhead | null): void => {
  const { warmUp: now } = store.getState();
  if (now === null || position === null) return;
  const cue = cueAt(now.step, position);
  if (cue !== now.cue) store.setState({ warmUp: { ...now, cue } });
};

/** Runs a warm-up by itself: each step when the one before has ended, rests by the clock. */
const createWarmUp = ({ store, band, later, apply }: WarmUpStand): Joined<WarmUpCommands> => {
  const state = store.getState;
  let steps: readonly RunStep[] = [];
  const loan = createLoan({ store, apply });
  let stopWaiting = (): void => {};
  /** True while the band plays a step, so that its end means the next one. */
  let playingStep = false;

  const leave = (): void => {
    stopWaiting();
    if (!playingStep) return;
    playingStep = false;
    band.stop();
  };
  const end = (): void => {
    leave();
    steps = [];
    store.setState({ warmUp: null, exercise: null, ...restingViews(state().tune, state().cursor) });
    loan.giveBack();
  };
  const enter = async (number: number): Promise<void> => {
    const entered = steps[number - 1];
    if (entered === undefined) return end();
    const { step, song } = entered;
    if (song !== null) loan.put(song);
    showStep(store, { step, number, of: steps.length, cue: null });
    const program = programOf(step, state());
    if (program === null) {
      stopWaiting = later(step.seconds, () => void enter(number + 1));
      return;
    }
    playingStep = (await band.play(program, audibleSoundOf(state()), 0)).kind === 'playing';
    if (!playingStep) end();
  };
  const begin = (found: readonly RunStep[]): void => {
    if (found.length === 0) return;
    end();
    band.stop();
    steps = found;
    void enter(1);
  };
  const next = (): void => {
    const number = state().warmUp?.number;
    leave();
    if (number !== undefined) void enter(number + 1);
  };
  return {
    commands: {
      startWarmUp: () => begin(warmUp(warmUpSpec(state())).steps.map((step) => ({ step, song: null }))),
      startSetWarmUp: (choice) => begin(setStepsFor(state(), choice)),
      skipWarmUpStep: next,
      endWarmUp: end,
    },
    onPlayhead: (position) => showCue(store, position),
    onStatus: (status) => {
      if (!playingStep || status.kind === 'playing' || status.kind === 'interrupted') return;
      playingStep = false;
      next();
    },
  };
};

/** The warm-up that runs by itself. */
export const joinWarmUp: Join<WarmingUp, WarmUpCommands, undefined, Song & BookState> = (stand) => ({
  ...createWarmUp(stand),
  isBusy: () => stand.store.getState().warmUp !== null,
});
