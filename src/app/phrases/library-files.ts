import { phraseMidi } from '../../core/formats/phrase-midi';
import type { KeptPhrase } from '../../core/phrasebook/kept-phrase';
import { plainName } from '../../core/song/song-files';
import type { Stand } from '../song/feature';
import type { Song } from '../song/song-state';
import { giveFile, type KeptItems } from './kept-items';
import type { PhraseFiles } from './phrase-files';
import type { LibraryCommands, PhrasesState } from './phrases-state';

type FileCommands = Pick<LibraryCommands, 'readMelodies' | 'savePhraseMidi' | 'savePhrases' | 'openPhrases'>;

interface Needs {
  readonly stand: Stand<PhrasesState & Song>;
  readonly items: KeptItems<KeptPhrase>;
  readonly files: PhraseFiles | undefined;
}

/** Phrases out of files and into them. */
export const createLibraryFiles = ({ stand, items, files }: Needs): FileCommands => {
  const give = giveFile(stand.board, files?.saver);
  return {
    readMelodies: async (file) => {
      const failed = 'What reads files could not be fetched. Try again with the network on.';
      return (await files?.melodies.read(file).catch(() => failed)) ?? failed;
    },
    savePhraseMidi: (name, phrase) => {
      const { settings, tune } = stand.store.getState();
      const bytes = phraseMidi(phrase, { name, harp: tune.harp, tempo: settings.tempo });
      return give(`${plainName(name) || 'phrase'}.mid`, 'audio/midi', bytes);
    },
    savePhrases: items.save,
    openPhrases: async (text) => items.open(text),
  };
};
