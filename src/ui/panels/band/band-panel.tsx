import { Panel } from '../../controls/panel';
import { UndoRow } from '../../controls/undo-row';
import { PlanChoices } from './plan-choices';
import { PlayerChoices } from './player-choices';
import { PracticeChoices } from './practice-choices';

/** Who plays, how, and how the song runs over time. */
export const BandPanel = ({ onClose }: { readonly onClose: () => void }) => (
  <Panel title="Band" onClose={onClose}>
    <PracticeChoices />
    <PlayerChoices />
    <PlanChoices />
    <UndoRow />
  </Panel>
);
