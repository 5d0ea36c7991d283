import type { Band, BandStatus } from '../../audio/band/band';
import type { Program } from '../../core/arranger/program';
import { withTake } from '../../core/song/another-take';
import { audibleSoundOf, programOf, rememberLeads, withRecordedTaken } from '../../core/song/song-program';
import type { Slice } from '../slice';
import type { Song, SongState } from './song-state';

/** Whether the band is in the middle of a song: heard, paused or interrupted. */
export const isUnderWay = (band: Band): boolean =>
  ['playing', 'paused', 'interrupted'].includes(band.status().kind);

/** Choices that follow each other closer than this are prepared for together, in seconds. */
const PREPARE_SECONDS = 0.4;

/** Programs are plain data, made field by field in one order. */
const sameValue = (a: Program | null, b: Program): boolean =>
  a !== null && (a === b || JSON.stringify(a) === JSON.stringify(b));

/** Tells the band what to play. */
export interface BandOrders {
  /** The song as it is now, for files. */
  programOf(state: Song): Program;
  /** The seed of the take that the next Play has where takes are not kept; asked once, another comes after it. */
  nextTake(): number;
  /** Plays the song as chosen, from a bar of the form. */
  play(fromBar: number): Promise<BandStatus>;
  /**
   * Lets a resting band compute what playing would need first, now and after every change from now on. Resolves when
   * that is done, or is not to be.
   */
  prepare(): Promise<void>;
  /** To be called after any change: a band under way is told when what it is to play is no longer what it was told. */
  follow(): void;
}

/** What orders need of the world. */
interface Clockwork {
  /** Runs something after so many seconds; returns what takes it back. */
  readonly later: (seconds: number, run: () => void) => () => void;
  /** A whole number that differs each time. */
  readonly newSeed: () => number;
}

/**
 * Orders for a band that compare the music itself, not the choices it is made from: whatever a choice changes in the
 * program, the band hears of it, and of nothing else.
 */
export const createBandOrders = (
  store: Slice<Song, SongState>,
  band: Band,
  { later, newSeed }: Clockwork,
): BandOrders => {
  let coming: number | null = null;
  const comingTake = (): number => {
    coming ??= newSeed();
    return coming;
  };
  const leads = rememberLeads();
  const laterLeads = rememberLeads();
  let told: Program | null = null;
  const programNow = (state: Song): Program => programOf(state, leads);
  const make = (state: Song): Program => {
    const { waiting } = state;
    const program = programNow(state);
    if (waiting === null || waiting.from === null) return program;
    const { settings, tune, from } = waiting;
    return { ...program, later: { from, program: programOf({ ...state, settings, tune }, laterLeads) } };
  };
  let rested = false;
  let takeBack = (): void => undefined;
  const prepare = async (): Promise<void> => {
    const state = store.getState();
    if (isUnderWay(band) || state.warmUp !== null) return;
    const played = state.settings.sameTake
      ? state
      : { ...state, settings: withTake(state.settings, comingTake()) };
    await band.prepare(make(played), audibleSoundOf(withRecordedTaken(state)), state.cursor);
  };
  const prepareSoon = (): void => {
    takeBack();
    if (rested) takeBack = later(PREPARE_SECONDS, () => void prepare());
  };
  return {
    programOf: programNow,
    nextTake: () => {
      const seed = comingTake();
      coming = null;
      return seed;
    },
    play: (fromBar) => {
      takeBack();
      told = make(store.getState());
      return band.play(told, audibleSoundOf(store.getState()), fromBar);
    },
    prepare: () => {
      rested = true;
      return prepare();
    },
    follow: () => {
      if (!isUnderWay(band)) return prepareSoon();
      if (store.getState().warmUp !== null) return;
      const program = make(store.getState());
      if (sameValue(told, program)) return;
      told = program;
      band.change(program);
    },
  };
};
