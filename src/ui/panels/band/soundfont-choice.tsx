import type { OwnFile } from '../../../app/soundfont/soundfont-state';
import { sizeText } from '../../../core/theory/quantities';
import { FileButton } from '../../controls/file-button';
import { useSelected, useSession } from '../../state/session-context';

const Loaded = ({ file }: { readonly file: OwnFile }) => {
  const { commands } = useSession();
  return (
    <>
      <div>
        <p className="own-file">
          <strong>{file.name}</strong>, {sizeText(file.bytes)}
        </p>
        <p className="hint">
          {file.kept ? 'Kept in this browser until you forget it.' : 'At hand until you close the page.'}
        </p>
      </div>
      <button type="button" className="tool" onClick={() => void commands.forgetOwnSounds()}>
        Forget this file
      </button>
    </>
  );
};

/** Sounds from a file of the player's own in place of the built-in ones. */
export const OwnSounds = () => {
  const { commands } = useSession();
  const { file, opening, trouble } = useSelected((state) => state.ownSounds);
  return (
    <fieldset className="group">
      <legend>Your own sounds</legend>
      {file === null ? (
        <p className="hint">
          The band can play the General MIDI instruments of a SoundFont of yours (.sf2 or .sf3, up to 200 MB).
          The file stays on this machine.
        </p>
      ) : (
        <Loaded file={file} />
      )}
      <FileButton
        text={file === null ? 'Load a SoundFont' : 'Load another SoundFont'}
        label="SoundFont file"
        accept=".sf2,.sf3"
        onFile={(chosen) => void commands.loadOwnSounds(chosen)}
      />
      <div>
        <div role="status">{opening !== null && <p className="hint">Reading {opening} …</p>}</div>
        {trouble !== null && (
          <p role="alert" className="wrong">
            {trouble}
          </p>
        )}
      </div>
    </fieldset>
  );
};
