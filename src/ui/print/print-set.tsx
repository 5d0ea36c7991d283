import { type GigSet, setSeconds } from '../../core/book/gig-set';
import { harpsOfSet, type SetSong } from '../../core/book/set-harps';
import type { NoteName } from '../../core/theory/chord';
import type { NoteNames } from '../../core/theory/note-names';
import { clockText } from '../../core/theory/quantities';
import { useNames, useNamesIn } from '../state/use-names';

/** Bars of a song that are printed to remind of how it begins. */
const FIRST_BARS = 4;

const firstBars = ({ facts }: SetSong, namesIn: (tonic: NoteName) => NoteNames): string =>
  facts.chart.bars
    .slice(0, FIRST_BARS)
    .map(({ chords }) => chords.map(({ chord }) => namesIn(facts.chart.tonic).chord(chord)).join(' '))
    .join(' | ');

/** A set on one sheet: songs with key, harp, tempo and first bars, and the harps to lay out. */
export const PrintSet = ({
  set,
  songs,
}: {
  readonly set: GigSet;
  readonly songs: readonly (SetSong | null)[];
}) => {
  const names = useNames();
  const namesIn = useNamesIn();
  const there = songs.flatMap((song) => song ?? []);
  const seconds = setSeconds(set, (id) => there.find((song) => song.id === id)?.facts.seconds ?? 0);
  return (
    <article className="paper" aria-label="The set on paper">
      <header>
        <h1>{set.name}</h1>
        <p className="print-song">
          {set.entries.length} songs, about {clockText(seconds)} with talk
        </p>
      </header>
      <table className="print-set">
        <thead>
          <tr>
            <th>Song</th>
            <th>Key</th>
            <th>Harp</th>
            <th>Tempo</th>
            <th>First bars</th>
          </tr>
        </thead>
        <tbody>
          {songs.map((song, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a song may stand in a set twice.
            <tr key={index}>
              <th scope="row">
                {index + 1}. {song?.name ?? 'no longer in the book'}
              </th>
              <td>{song && names.key(song.facts.key)}</td>
              <td>{song && `${names.key(song.facts.harpName)}, ${song.facts.position}`}</td>
              <td>{song && `${song.facts.feel}, ${song.facts.tempo}`}</td>
              <td>{song && firstBars(song, namesIn)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <h2>Harps to lay out</h2>
      <ul>
        {harpsOfSet(there, []).map(({ name, songs: titles }) => (
          <li key={name}>
            ☐ <strong>{names.key(name)}</strong>: {titles.join(', ')}
          </li>
        ))}
      </ul>
    </article>
  );
};
