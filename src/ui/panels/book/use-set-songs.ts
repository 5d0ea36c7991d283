import { useMemo } from 'react';
import type { GigSet } from '../../../core/book/gig-set';
import type { SetSong } from '../../../core/book/set-harps';
import { songFacts } from '../../../core/book/song-facts';
import { useSelected } from '../../state/session-context';

/** The songs of a set entry by entry, with what they come to; `null` for one that is gone. */
export const useSetSongs = ({ entries }: GigSet): readonly (SetSong | null)[] => {
  const songs = useSelected((state) => state.book.songs);
  const ownCharts = useSelected((state) => state.ownCharts);
  return useMemo(
    () =>
      entries.map(({ song: id }) => {
        const song = songs.find((each) => each.id === id);
        return song === undefined ? null : { id, name: song.name, facts: songFacts(song, ownCharts) };
      }),
    [entries, songs, ownCharts],
  );
};
