import { TAB_STYLES } from '../../../core/harp/tab';
import type { BesideTab, Look } from '../../../core/settings/page-settings';
import { ANNOUNCEMENTS, type Announcements, BESIDE_TAB } from '../../../core/settings/page-settings';
import { NOTE_SYSTEMS, type NoteSystem } from '../../../core/theory/note-names';
import { Choice, optionsOf } from '../../controls/choice';
import { Fold } from '../../controls/fold';
import { Panel } from '../../controls/panel';
import { Switch } from '../../controls/switch';
import { UndoRow } from '../../controls/undo-row';
import { useSelected, useSession } from '../../state/session-context';
import { HarpAdvice } from './harp-advice';
import { HarpCaseList } from './harp-case-list';
import { HarpInHand } from './harp-in-hand';
import { HarpPlain } from './harp-plain';
import { HarpTechniques } from './harp-techniques';
import { ReedEditor } from './reed-editor';

const LOOKS: readonly { readonly value: Look; readonly text: string }[] = [
  { value: 'system', text: 'Follow the device' },
  { value: 'day', text: 'Day' },
  { value: 'night', text: 'Night' },
];

const NAMES_HINT =
  'On the whole page and on paper. Charts and lists of keys are typed in English names, files have them, and so do most covers of harps.';
const STAMPED = ' A harp with B♭ on its cover is called B here, one with B on its cover H.';

const NAMES: Readonly<Record<NoteSystem, string>> = {
  english: 'English: A, B♭, B, C',
  german: 'With H: A, B, H, C',
  do: 'Do, re, mi: La, Si♭, Si, Do',
  numbers: 'Numbers in the key: 6, ♭7, 7, 1',
};

const BESIDE: Readonly<Record<BesideTab, string>> = {
  nothing: 'Nothing',
  notes: 'Note names',
  degrees: 'Degrees',
  both: 'Note names and degrees',
};

const ANNOUNCED: Readonly<Record<Announcements, string>> = {
  off: 'Nothing',
  places: 'Form, key, chorus and turn',
  chords: 'These and every chord change',
};

const Shown = () => {
  const { commands } = useSession();
  const settings = useSelected((state) => state.settings);
  return (
    <>
      <Choice
        label="Names of notes"
        value={settings.noteNames}
        options={optionsOf(NOTE_SYSTEMS, NAMES)}
        hint={NAMES_HINT + (settings.noteNames === 'german' ? STAMPED : '')}
        onChoose={(noteNames) => commands.choose({ noteNames })}
      />
      <Choice
        label="Tab"
        value={settings.tabStyle}
        options={TAB_STYLES.map(({ id, name }) => ({ value: id, text: name }))}
        onChoose={(tabStyle) => commands.choose({ tabStyle })}
      />
      <Switch
        label="Plain words"
        on={settings.plainWords}
        hint="Safe now, Leans well and Resolves to, in place of degrees such as R, 3 and ♭7."
        onChange={(plainWords) => commands.choose({ plainWords })}
      />
      <Choice
        label="Beside tab"
        value={settings.besideTab}
        options={optionsOf(BESIDE_TAB, BESIDE)}
        hint="Where tab stands alone: under the bars, in scales, and from chord to chord."
        onChoose={(besideTab) => commands.choose({ besideTab })}
      />
      <Choice
        label="Look"
        value={settings.look}
        options={LOOKS}
        onChoose={(look) => commands.choose({ look })}
      />
      <Choice
        label="Announced to screen readers"
        value={settings.announcements}
        options={optionsOf(ANNOUNCEMENTS, ANNOUNCED)}
        hint="While the band plays, at bar lines only. A reader that speaks aloud is heard over the band."
        onChoose={(announcements) => commands.choose({ announcements })}
      />
      <Switch
        label="Low notes on the right"
        on={settings.mirrored}
        hint="For a harp held the other way round. Map and paper are mirrored."
        onChange={(mirrored) => commands.choose({ mirrored })}
      />
      <Switch
        label="Hole numbers in large print"
        on={settings.largeHoles}
        onChange={(largeHoles) => commands.choose({ largeHoles })}
      />
    </>
  );
};

/** The harp in hand, what its player can do on it, the harps in the case, and how it is all shown. */
export const HarpPanel = ({ onClose }: { readonly onClose: () => void }) => (
  <Panel title="Harp" onClose={onClose}>
    <Fold title="What you can play" open>
      <HarpTechniques />
    </Fold>
    <Fold title="The harp in hand" open>
      <HarpInHand />
    </Fold>
    <Fold title="Which harp for this song">
      <HarpAdvice />
    </Fold>
    <Fold title="Your case">
      <HarpCaseList />
    </Fold>
    <Fold title="Reeds">
      <ReedEditor />
    </Fold>
    <Fold title="What this harp plays without bends">
      <HarpPlain />
    </Fold>
    <Fold title="How it is shown" open>
      <Shown />
    </Fold>
    <UndoRow />
  </Panel>
);
