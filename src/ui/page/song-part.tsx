import { SongChoices } from '../panels/song/song-choices';
import type { SheetId } from './masthead';

/** The song's choices; on a phone they are behind a button. */
export const SongPart = ({
  narrow,
  onOpen,
}: {
  readonly narrow: boolean;
  readonly onOpen: (id: SheetId | 'song') => void;
}) =>
  narrow ? (
    <button type="button" className="tool setup-only" onClick={() => onOpen('song')}>
      Song
    </button>
  ) : (
    <SongChoices />
  );
