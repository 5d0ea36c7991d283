import type { Melody } from '../core/melody/melody';
import type { ImportedChart } from '../core/sheets/sheet-bars';

/** What reads files of sheet music. */
export interface SheetReader {
  /** A chart, or a sentence why there is none; rejects only where the reader itself cannot be fetched. */
  read(bytes: Uint8Array): Promise<ImportedChart | string>;
}

/** What reads the melodies of files. */
export interface MelodyReader {
  /** The melodies, or a sentence why there is none; rejects only where the reader itself cannot be fetched. */
  read(bytes: Uint8Array): Promise<readonly Melody[] | string>;
}
