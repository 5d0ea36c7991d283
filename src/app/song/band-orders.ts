import type { Band, BandStatus } from '../../audio/band/band';
import type { Program } from '../../core/arranger/program';
import { audibleSoundOf, programOf, rememberLeads } from '../../core/song/song-program';
import type { Slice } from '../slice';
import type { Song, SongState } from './song-state';

/** Whether the band is in the middle of a song: heard, paused or interrupted. */
export const isUnderWay = (band: Band): boolean =>
  ['playing', 'paused', 'interrupted'].includes(band.status().kind);

/** Programs are plain data, made field by field in one order. */
const sameValue = (a: Program | null, b: Program): boolean =>
  a !== null && (a === b || JSON.stringify(a) === JSON.stringify(b));

/** Tells the band what to play. */
export interface BandOrders {
  programOf(state: Song): Program;
  /** Plays the song as chosen, from a bar of the form. */
  play(fromBar: number): Promise<BandStatus>;
  /** To be called after any change: a band under way is told when what it is to play is no longer what it was told. */
  follow(): void;
}

/**
 * Orders for a band that compare the music itself, not the choices it is made from: whatever a choice changes in the
 * program, the band hears of it, and of nothing else.
 */
export const createBandOrders = (store: Slice<Song, SongState>, band: Band): BandOrders => {
  const leads = rememberLeads();
  let told: Program | null = null;
  const make = (state: Song): Program => programOf(state, leads);
  return {
    programOf: make,
    play: (fromBar) => {
      told = make(store.getState());
      return band.play(told, audibleSoundOf(store.getState()), fromBar);
    },
    follow: () => {
      if (!isUnderWay(band) || store.getState().warmUp !== null) return;
      const program = make(store.getState());
      if (sameValue(told, program)) return;
      told = program;
      band.change(program);
    },
  };
};
