import type { Playhead } from '../../core/arranger/playhead';
import type { Program } from '../../core/arranger/program';
import { warmUp } from '../../core/practice/warm-up';
import type { Cue, WarmUp, WarmUpStep } from '../../core/practice/warm-up-step';
import type { NoteEvent } from '../../core/score/score';
import { DEFAULT_PLAN } from '../../core/settings/defaults';
import { audibleSoundOf } from '../../core/song/song-program';
import { tuneFor } from '../../core/song/tune';
import { restingViews } from '../../core/song/views';
import { asTicks } from '../../core/theory/units';
import type { Join, Joined, Stand } from '../song/feature';
import type { Song, SongState } from '../song/song-state';
import type { WarmingUp } from './warm-up-state';

/** What the page can ask for about the warm-up. */
export interface WarmUpCommands {
  startWarmUp(): void;
  skipWarmUpStep(): void;
  endWarmUp(): void;
}

/** The warm-up for the harp in hand and the song as chosen. */
export const warmUpFor = ({ settings, tune }: SongState): WarmUp =>
  warmUp({
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

/** Runs a warm-up by itself: each step when the one before has ended, rests by the clock. */
const createWarmUp = ({ store, band, later }: Stand<Song & WarmingUp>): Joined<WarmUpCommands> => {
  const state = store.getState;
  let steps: readonly WarmUpStep[] = [];
  let stopWaiting = (): void => {};
  /** True while the band plays a step, so that its end means the next one. */
  let playingStep = false;

  const leave = (): void => {
    stopWaiting();
    stopWaiting = () => {};
    if (!playingStep) return;
    playingStep = false;
    band.stop();
  };
  const end = (): void => {
    leave();
    steps = [];
    store.setState({ warmUp: null, exercise: null, ...restingViews(state().tune, state().cursor) });
  };
  const enter = async (number: number): Promise<void> => {
    const step = steps[number - 1];
    if (step === undefined) return end();
    const exercise = step.band === null ? null : tuneFor(state().settings, step.band.chart);
    store.setState({ warmUp: { step, number, of: steps.length, cue: null }, exercise });
    const program = programOf(step, state());
    if (program === null) {
      stopWaiting = later(step.seconds, () => void enter(number + 1));
      return;
    }
    const status = await band.play(program, audibleSoundOf(state()), 0);
    playingStep = status.kind === 'playing';
    if (!playingStep) end();
  };
  const next = (): void => {
    const number = state().warmUp?.number;
    leave();
    if (number !== undefined) void enter(number + 1);
  };
  return {
    commands: {
      startWarmUp: () => {
        leave();
        band.stop();
        steps = warmUpFor(state()).steps;
        void enter(1);
      },
      skipWarmUpStep: next,
      endWarmUp: end,
    },
    onPlayhead: (position) => {
      const { warmUp: now } = state();
      if (now === null || position === null) return;
      const cue = cueAt(now.step, position);
      if (cue !== now.cue) store.setState({ warmUp: { ...now, cue } });
    },
    onStatus: (status) => {
      if (!playingStep || status.kind === 'playing' || status.kind === 'interrupted') return;
      playingStep = false;
      next();
    },
  };
};

/** The warm-up that runs by itself. */
export const joinWarmUp: Join<WarmingUp, WarmUpCommands, undefined, Song> = (stand) => ({
  ...createWarmUp(stand),
  isBusy: () => stand.store.getState().warmUp !== null,
});
