import { useState } from 'react';
import { findKept, type KeptPhrase } from '../../../core/phrasebook/kept-phrase';
import { STARTER_CALLS } from '../../../core/phrasebook/starter-set';
import { DeletedLine } from '../../controls/deleted-line';
import { Fold } from '../../controls/fold';
import { Panel } from '../../controls/panel';
import { TextField } from '../../controls/text-field';
import { UndoRow } from '../../controls/undo-row';
import { useSelected, useSession } from '../../state/session-context';
import { ClassLevels } from './class-levels';
import { Exercises } from './exercises';
import { LibraryFile } from './library-file';
import { PhraseCard } from './phrase-card';
import { PhraseEditor } from './phrase-editor';

interface FoundProps {
  readonly phrases: readonly KeptPhrase[];
  readonly own: boolean;
  readonly onEdit: (phrase: KeptPhrase) => void;
}

const Found = ({ phrases, own, onEdit }: FoundProps) => (
  <ul className="rows">
    {phrases.map((phrase) => (
      <PhraseCard key={phrase.id} kept={phrase} own={own} onEdit={() => onEdit(phrase)} />
    ))}
  </ul>
);

/** The library: exercises, phrases of one's own and of the starter set, and a place to write one. */
export const PhrasesPanel = ({ onClose }: { readonly onClose: () => void }) => {
  const { commands } = useSession();
  const { phrases: own, dropped } = useSelected((state) => state.phrasebook);
  const [typed, setTyped] = useState('');
  const [edited, setEdited] = useState<KeptPhrase | null>(null);
  const found = findKept(own, typed);
  const starters = findKept(STARTER_CALLS, typed);
  return (
    <Panel title="Phrases" onClose={onClose}>
      <Fold title="Exercises" open={false}>
        <Exercises />
      </Fold>
      <Fold title="Write a phrase" open>
        <PhraseEditor key={edited?.id ?? 'new'} kept={edited} onDone={() => setEdited(null)} />
      </Fold>
      <Fold title="For a class" open={false}>
        <ClassLevels />
      </Fold>
      <Fold title="Your phrases and the starter set" open>
        <LibraryFile
          what="phrases"
          none={own.length === 0}
          onSave={commands.savePhrases}
          onOpen={commands.openPhrases}
        />
        <DeletedLine
          name={dropped?.kind === 'phrase' ? dropped.item.name : null}
          onBack={commands.restorePhrase}
        />
        <TextField label="Find by name, tag or written words" search value={typed} onChange={setTyped} />
        {own.length === 0 && <p className="hint">None of your own yet. What you keep comes first here.</p>}
        {found.length + starters.length === 0 && <p role="status">No phrase has all of these words.</p>}
        <Found phrases={found} own onEdit={setEdited} />
        <Found phrases={starters} own={false} onEdit={setEdited} />
      </Fold>
      <UndoRow />
    </Panel>
  );
};
