import { asEpochMs } from '../../../core/theory/units';
import { Panel } from '../../controls/panel';
import { Switch } from '../../controls/switch';
import { UndoRow } from '../../controls/undo-row';
import { useSelected, useSession } from '../../state/session-context';
import { SongChoices } from './song-choices';

/** The song's choices as a panel, for screens too narrow for the row. */
export const SongPanel = ({ onClose }: { readonly onClose: () => void }) => {
  const { commands } = useSession();
  const waits = useSelected((state) => state.settings.changesWait);
  return (
    <Panel title="Song" onClose={onClose}>
      <div className="group">
        <SongChoices />
        <div className="strip-buttons">
          <button type="button" className="tool" onClick={() => commands.nudgeTempo(-2)}>
            Slower by 2
          </button>
          <button type="button" className="tool" onClick={() => commands.nudgeTempo(2)}>
            Faster by 2
          </button>
        </div>
        <button type="button" className="tool" onClick={(event) => commands.tap(asEpochMs(event.timeStamp))}>
          Tap the tempo here
        </button>
        <Switch
          label="Change at the next chorus"
          on={waits}
          hint="While the band plays, another key, tempo, feel or form waits until the chorus is over."
          onChange={(changesWait) => commands.choose({ changesWait })}
        />
      </div>
      <UndoRow />
    </Panel>
  );
};
