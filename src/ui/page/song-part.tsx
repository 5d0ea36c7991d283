import { SongChoices } from '../panels/song/song-choices';
import type { PanelId } from './entries';

/** The song's choices; on a phone they are behind a button. */
export const SongPart = ({
  narrow,
  onOpen,
}: {
  readonly narrow: boolean;
  readonly onOpen: (id: PanelId) => void;
}) =>
  narrow ? (
    <button type="button" className="tool setup-only" onClick={() => onOpen('song')}>
      Song
    </button>
  ) : (
    <SongChoices />
  );
