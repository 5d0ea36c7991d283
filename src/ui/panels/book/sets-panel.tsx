import { useState } from 'react';
import type { GigSet } from '../../../core/book/gig-set';
import { Choice } from '../../controls/choice';
import { DeletedLine } from '../../controls/deleted-line';
import { Panel } from '../../controls/panel';
import { useSelected, useSession } from '../../state/session-context';
import { NameField } from './name-field';
import { SetEntries } from './set-entries';
import { SetHarps } from './set-harps';
import { SetTools } from './set-tools';
import { SetWarmUp } from './set-warm-up';

const OneSet = ({ set }: { readonly set: GigSet }) => (
  <>
    <SetEntries set={set} />
    <SetTools set={set} />
    <SetHarps set={set} />
    <SetWarmUp set={set} />
  </>
);

/** Sets: songs in the order of an evening. */
export const SetsPanel = ({ onClose }: { readonly onClose: () => void }) => {
  const { commands } = useSession();
  const sets = useSelected((state) => state.book.sets);
  const dropped = useSelected((state) => state.book.dropped);
  const running = useSelected((state) => state.book.running?.set ?? null);
  const [chosen, setChosen] = useState<string | null>(null);
  const set = sets.find(({ id }) => id === (chosen ?? running)) ?? sets.at(-1);
  return (
    <Panel title="Sets" onClose={onClose}>
      <section className="group">
        <DeletedLine
          name={dropped?.kind === 'set' ? dropped.set.name : null}
          onBack={commands.restoreDropped}
        />
        {sets.length > 1 && set !== undefined && (
          <Choice
            label="Set"
            value={set.id}
            options={sets.map(({ id, name }) => ({ value: id, text: name }))}
            onChoose={setChosen}
          />
        )}
        {sets.length === 0 && (
          <p className="hint">
            None yet. A set puts songs of your book in order, with talk between them, and names the harps to
            lay out.
          </p>
        )}
        <NameField
          label="New set called"
          placeholder="Tonight"
          button="New set"
          onName={(name) => {
            commands.newSet(name);
            setChosen(null);
          }}
        />
      </section>
      {set !== undefined && <OneSet key={set.id} set={set} />}
    </Panel>
  );
};
