import {
  OWN_SOUND_CHOICES,
  partsOf,
  type SoundKind,
  soundKindOf,
  voiceOfPart,
} from '../../../app/soundfont/sound-kinds';
import type { OwnFile, RecordedState } from '../../../app/soundfont/soundfont-state';
import type { Style } from '../../../core/players/style';
import { Choice, type Option } from '../../controls/choice';
import { useSelected, useSession } from '../../state/session-context';

type Part = (typeof OWN_SOUND_CHOICES)[number]['part'];

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

const RECORDED: Option<SoundKind> = { value: 'recorded', text: 'Recorded' };
const COMPUTED: Option<SoundKind> = { value: 'computed', text: 'Computed' };
const OWN: Option<SoundKind> = { value: 'own', text: 'Your own file' };

const optionsFor = (part: Part, file: OwnFile | null, chosen: SoundKind): readonly Option<SoundKind>[] => {
  const playable = file !== null && (file.opened === null || partsOf(file.opened.voices).includes(part));
  return [
    ...(part === 'lead' ? [] : [RECORDED]),
    COMPUTED,
    // What is chosen stays to be seen, though the file is gone.
    ...(playable || chosen === 'own' ? [OWN] : []),
  ];
};

const missingIn = (part: Part, file: OwnFile | null, style: Style): string | undefined => {
  const voice = voiceOfPart(part, style);
  if (!file?.opened || file.opened.voices.includes(voice)) return undefined;
  return `Your file has no ${VOICE_NAMES[voice]}: the computed one plays.`;
};

const RECORDED_HINTS: Readonly<Record<RecordedState['kind'], string>> = {
  none: 'The recorded instruments are fetched when the page rests; until then the computed ones play.',
  coming: 'The recorded instruments are being fetched; until then the computed ones play.',
  there: 'You can change from one to the other while the band plays.',
  missing:
    'The recorded instruments could not be fetched or played here, so the computed ones play. They are tried again at the next visit.',
};

/** Where each part's sounds come from. */
export const SoundSources = () => {
  const { commands } = useSession();
  const { file } = useSelected((state) => state.ownSounds);
  const recorded = useSelected((state) => state.recorded.kind);
  const settings = useSelected((state) => state.settings);
  return (
    <fieldset className="group">
      <legend>Sounds</legend>
      <div className="pair">
        {OWN_SOUND_CHOICES.map(({ part, name }) => {
          const chosen = soundKindOf(part, settings);
          const options = optionsFor(part, file, chosen);
          return options.length < 2 ? null : (
            <Choice
              key={part}
              label={`${name} sound`}
              value={chosen}
              options={options}
              hint={chosen === 'own' ? missingIn(part, file, settings.style) : undefined}
              onChoose={(kind) => void commands.chooseSounds(part, kind)}
            />
          );
        })}
      </div>
      <p className="hint">{RECORDED_HINTS[recorded]}</p>
    </fieldset>
  );
};
