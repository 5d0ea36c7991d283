import type { MelodyReader } from '../../sheet/sheet-reader';
import type { FileSaver } from '../../storage/save-file';

/** What reads files for phrases, and hands files over. */
export interface PhraseFiles {
  readonly melodies: MelodyReader;
  readonly saver: FileSaver;
}
