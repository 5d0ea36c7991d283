import { type ChangeEvent, useRef } from 'react';
import {
  OWN_SOUND_CHOICES,
  type OwnFile,
  partsOf,
  voiceOfPart,
} from '../../../app/soundfont/soundfont-state';
import { sizeText } from '../../../app/soundfont/soundfont-words';
import { Switch } from '../../controls/switch';
import { useSelected, useSession } from '../../state/session-context';

const VOICE_NAMES = {
  sticks: 'drum set played with sticks',
  brushes: 'drum set',
  'upright-bass': 'upright bass',
  'fingered-bass': 'fingered bass',
  piano: 'piano',
  'electric-piano': 'electric piano',
  organ: 'organ',
  guitar: 'guitar',
  harmonica: 'harmonica',
} as const;

/** Opens the browser's file picker. */
const LoadButton = ({ text }: { readonly text: string }) => {
  const { commands } = useSession();
  const picker = useRef<HTMLInputElement>(null);
  const load = ({ target }: ChangeEvent<HTMLInputElement>): void => {
    const [file] = target.files ?? [];
    if (file) void commands.loadOwnSounds(file);
    // Otherwise choosing the same file again, say after a copy gone wrong, would change nothing.
    target.value = '';
  };
  return (
    <>
      <button type="button" className="tool" onClick={() => picker.current?.click()}>
        {text}
      </button>
      <input ref={picker} type="file" accept=".sf2,.sf3" aria-label="SoundFont file" hidden onChange={load} />
    </>
  );
};

/** Which parts play from the file. */
const Parts = ({ file }: { readonly file: OwnFile }) => {
  const { commands } = useSession();
  const using = useSelected((state) => state.settings.ownSounds);
  const style = useSelected((state) => state.settings.style);
  const voices = file.opened?.voices ?? null;
  const playable = voices === null ? null : partsOf(voices);
  const hint = (part: (typeof OWN_SOUND_CHOICES)[number]['part']): string | null => {
    const voice = voiceOfPart(part, style);
    if (voices === null || voices.includes(voice)) return null;
    return `The file has no ${VOICE_NAMES[voice]}: the built-in one plays.`;
  };
  return OWN_SOUND_CHOICES.map(({ part, name }) => {
    const missing = hint(part);
    return playable === null || playable.includes(part) ? (
      <Switch
        key={part}
        label={`${name} from this file`}
        on={using.includes(part)}
        onChange={(on) => void commands.playOwnSounds(part, on)}
        {...(missing === null ? {} : { hint: missing })}
      />
    ) : (
      <p key={part} className="hint">
        {name}: {missing}
      </p>
    );
  });
};

const Loaded = ({ file }: { readonly file: OwnFile }) => {
  const { commands } = useSession();
  const none = useSelected((state) => state.settings.ownSounds.length === 0);
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
      <Parts file={file} />
      <div className="own-buttons">
        <button
          type="button"
          className="tool"
          aria-disabled={none}
          onClick={() => {
            if (!none) commands.playBuiltInVoices();
          }}
        >
          Back to the built-in voices
        </button>
        <button type="button" className="tool" onClick={() => void commands.forgetOwnSounds()}>
          Forget this file
        </button>
      </div>
    </>
  );
};

/** Sounds from a file of the player's own in place of the built-in voices. */
export const OwnSounds = () => {
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
      <LoadButton text={file === null ? 'Load a SoundFont' : 'Load another SoundFont'} />
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
