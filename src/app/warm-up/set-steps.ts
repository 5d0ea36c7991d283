import type { BookSong } from '../../core/book/book-song';
import { songFacts } from '../../core/book/song-facts';
import { type SetWarmUpMinutes, setWarmUp, type WarmUpSong } from '../../core/practice/warm-up-set';
import type { WarmUpStep } from '../../core/practice/warm-up-step';
import { noteNames } from '../../core/theory/other-names';
import type { BookState } from '../book/book-state';
import type { Song } from '../song/song-state';

/** A step, and the song of the book that is put on the stand for it; null leaves the stand as it is. */
export interface RunStep {
  readonly step: WarmUpStep;
  readonly song: BookSong | null;
}

/** Which set is warmed up for, how long, and whether nothing may sound. */
export interface SetWarmUpChoice {
  readonly set: string;
  readonly minutes: SetWarmUpMinutes;
  readonly silent: boolean;
}

/** The steps for a set of the book; none for a set without songs. */
export const setStepsFor = (
  { book, ownCharts, settings }: Pick<Song & BookState, 'book' | 'ownCharts' | 'settings'>,
  { set: id, minutes, silent }: SetWarmUpChoice,
): readonly RunStep[] => {
  const set = book.sets.find((each) => each.id === id);
  const songs = (set?.entries ?? []).flatMap(({ song }) => book.songs.find((each) => each.id === song) ?? []);
  const listed = songs.map((song): WarmUpSong => {
    const { chart, harp, harpName } = songFacts(song, ownCharts);
    const { technique, tabStyle } = settings;
    const { tempo, style } = song.choices;
    return {
      name: song.name,
      harpName: noteNames(settings.noteNames).key(harpName),
      spec: { chart, harp, technique, tempo, swing: 1, tabStyle, seed: style.seed },
    };
  });
  return setWarmUp({ songs: listed, minutes, silent }).map(({ song, step }) => ({
    step,
    song: songs[song] ?? null,
  }));
};
