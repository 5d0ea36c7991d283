import { Sheet } from '../../controls/panel';
import { SongChoices } from './song-choices';

/** The song's choices as a panel, for screens too narrow for the row. */
export const SongSheet = ({ onClose }: { readonly onClose: () => void }) => (
  <Sheet title="Song" onClose={onClose}>
    <div className="group">
      <SongChoices />
    </div>
  </Sheet>
);
