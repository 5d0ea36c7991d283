import { useEffect } from 'react';
import { Saving } from '../../chart/saving';
import { Panel } from '../../controls/panel';
import { useSession } from '../../state/session-context';
import { Everything } from './everything';
import { AudioChoices, LengthChoices } from './take-away-choices';

/** The song as files and as paper. The band may go on playing while a file is made. */
export const TakeAwayPanel = ({ onClose }: { readonly onClose: () => void }) => {
  const { commands } = useSession();
  useEffect(() => void commands.prepareAudio(), [commands]);
  return (
    <Panel title="Take away" onClose={onClose}>
      <Saving />
      <LengthChoices />
      <section className="group">
        <h3>MIDI</h3>
        <p className="hint">Every part on a track of its own, for programs that edit or print notes.</p>
        <button type="button" className="tool" onClick={() => void commands.saveMidi()}>
          Save MIDI
        </button>
      </section>
      <section className="group">
        <h3>Audio</h3>
        <AudioChoices />
        <button type="button" className="tool" onClick={() => void commands.saveAudio()}>
          Save audio
        </button>
      </section>
      <section className="group">
        <h3>Lead sheet</h3>
        <p className="hint">
          One chorus as MusicXML: chords, feel, and the third and seventh of each chord as tab for your harp.
        </p>
        <button type="button" className="tool" onClick={() => void commands.saveLeadSheet()}>
          Save lead sheet
        </button>
        <p className="hint">Or its chords alone as ABC, a plain text that many programs read.</p>
        <button type="button" className="tool" onClick={() => void commands.saveAbc()}>
          Save ABC
        </button>
      </section>
      <section className="group">
        <h3>Paper</h3>
        <button type="button" className="tool" onClick={() => window.print()}>
          Print
        </button>
      </section>
      <Everything />
    </Panel>
  );
};
