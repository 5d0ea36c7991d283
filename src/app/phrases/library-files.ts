import { bookSong } from '../../core/book/book-song';
import { mergeItems } from '../../core/book/merge-items';
import { songText } from '../../core/book/song-link';
import { phraseMidi } from '../../core/formats/phrase-midi';
import type { KeptPhrase } from '../../core/phrasebook/kept-phrase';
import { phrasesText, readPhrasesText } from '../../core/phrasebook/phrases-file';
import { plainName } from '../../core/song/song-files';
import type { Writing } from '../../storage/kept-values';
import type { Shelf } from '../keeping/shelf';
import type { Stand } from '../song/feature';
import type { Song } from '../song/song-state';
import type { PhraseFiles } from './phrase-files';
import type { LibraryCommands, PhrasesState } from './phrases-state';

type FileCommands = Pick<
  LibraryCommands,
  'readMelodies' | 'savePhraseMidi' | 'savePhrases' | 'openPhrases' | 'saveExercise'
>;

interface Needs {
  readonly stand: Stand<PhrasesState & Song>;
  readonly shelf: Shelf<KeptPhrase>;
  readonly files: PhraseFiles | undefined;
}

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

/** What became of phrases that came in with a file. */
const cameIn = (added: number, known: number): readonly string[] => [
  ...(added > 0 ? [`${counted(added, 'phrase')} added.`] : []),
  ...(known > 0 ? [`${counted(known, 'phrase')} ${known === 1 ? 'was' : 'were'} here already.`] : []),
];

/** Phrases out of files and into them. */
export const createLibraryFiles = ({ stand, shelf, files }: Needs): FileCommands => {
  const { store, board } = stand;
  const give = async (name: string, type: string, bytes: Uint8Array): Promise<void> => {
    const writing: Writing | undefined = await files?.saver.give(name, type, bytes);
    if (writing?.kind === 'written') return;
    const why = writing?.kind === 'full' ? 'there is no room for it' : 'the browser refused it';
    board.post({ id: 'phrase-file', tone: 'trouble', text: `${name} was not saved: ${why}.` });
  };
  return {
    readMelodies: async (file) => {
      const failed = 'What reads files could not be fetched. Try again with the network on.';
      return (await files?.melodies.read(file).catch(() => failed)) ?? failed;
    },
    savePhraseMidi: (name, phrase) => {
      const { settings, tune } = store.getState();
      const bytes = phraseMidi(phrase, { name, harp: tune.harp, tempo: settings.tempo });
      return give(`${plainName(name) || 'phrase'}.mid`, 'audio/midi', bytes);
    },
    savePhrases: () =>
      give('phrases.json', 'application/json', new TextEncoder().encode(phrasesText(shelf.items()))),
    saveExercise: (name) => {
      const { settings, ownCharts } = store.getState();
      const text = songText(bookSong({ id: '', name }, settings, ownCharts), settings);
      return give(
        `${plainName(name) || 'exercise'}.json`,
        'application/json',
        new TextEncoder().encode(text),
      );
    },
    openPhrases: async (text) => {
      const { items, problems } = readPhrasesText(text);
      const { added, known } = mergeItems(shelf.items(), items);
      for (const item of added) shelf.put(item);
      return [...cameIn(added.length, known), ...problems];
    },
  };
};
