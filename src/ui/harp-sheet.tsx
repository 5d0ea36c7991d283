import { isInReach, usesTechnique } from '../core/harp/reach';
import { soundId, spokenTab, TAB_STYLES, tab } from '../core/harp/tab';
import { REFERENCE_RANGE } from '../core/settings/parse-settings';
import type { Look } from '../core/settings/settings';
import { asHz } from '../core/theory/units';
import { Choice } from './choice';
import { useSelected, useSession } from './session-context';
import { Sheet } from './sheet';
import { Slider } from './slider';
import { Switch } from './switch';

const RANGES = [
  { value: 1, text: 'High (an octave up)' },
  { value: 0, text: 'Standard' },
  { value: -1, text: 'Low (an octave down)' },
  { value: -2, text: 'Double low' },
];

const LOOKS: readonly { readonly value: Look; readonly text: string }[] = [
  { value: 'system', text: 'As the system has it' },
  { value: 'day', text: 'Day' },
  { value: 'night', text: 'Night' },
];

const SingleSounds = () => {
  const { commands } = useSession();
  const technique = useSelected((state) => state.settings.technique);
  const tabStyle = useSelected((state) => state.settings.tabStyle);
  const harp = useSelected((state) => state.tune.harp);
  const sounds = harp.sounds.filter(
    (sound) => sound.technique !== 'natural' && usesTechnique(sound, technique),
  );
  const flip = (id: string): void => {
    const off = technique.off.includes(id)
      ? technique.off.filter((each) => each !== id)
      : [...technique.off, id];
    commands.choose({ technique: { ...technique, off } });
  };
  if (sounds.length === 0)
    return <p className="hint">Natural notes only. Switch on a technique to choose single bends.</p>;
  return (
    <>
      <p className="hint">Switch off the ones that do not come yet; the band’s page then leaves them out.</p>
      <div className="sound-switches">
        {sounds.map((sound) => (
          <button
            key={soundId(sound)}
            type="button"
            className="tool"
            aria-label={spokenTab(sound)}
            aria-pressed={isInReach(sound, technique)}
            onClick={() => flip(soundId(sound))}
          >
            {tab(sound, tabStyle)}
          </button>
        ))}
      </div>
    </>
  );
};

const Techniques = () => {
  const { commands } = useSession();
  const technique = useSelected((state) => state.settings.technique);
  const set = (change: Partial<typeof technique>): void =>
    commands.choose({ technique: { ...technique, ...change } });
  return (
    <fieldset className="group">
      <legend>What you can play</legend>
      <div>
        <Switch label="Draw bends" on={technique.drawBends} onChange={(drawBends) => set({ drawBends })} />
        <Switch label="Blow bends" on={technique.blowBends} onChange={(blowBends) => set({ blowBends })} />
        <Switch
          label="Overblows and overdraws"
          on={technique.overbends}
          hint="They come from the shape of the mouth. Never force a reed."
          onChange={(overbends) => set({ overbends })}
        />
      </div>
      <SingleSounds />
    </fieldset>
  );
};

/** The harp in hand, what its player can do on it, and how it is written. */
export const HarpSheet = ({ onClose }: { readonly onClose: () => void }) => {
  const { commands } = useSession();
  const settings = useSelected((state) => state.settings);
  return (
    <Sheet title="Harp" onClose={onClose}>
      <Techniques />
      <fieldset className="group">
        <legend>This harp</legend>
        <Choice
          label="Range"
          value={settings.harpOctave}
          options={RANGES}
          onChoose={(harpOctave) => commands.choose({ harpOctave })}
        />
        <Slider
          label="A4 is"
          valueText={`${settings.reference} Hz`}
          value={settings.reference}
          low={REFERENCE_RANGE.low}
          high={REFERENCE_RANGE.high}
          step={1}
          onChange={(hz) => commands.choose({ reference: asHz(hz) })}
        />
        <p className="hint">
          Harps are often tuned a little sharp (442 to 446 Hz). Set what agrees with yours.
        </p>
        <Switch
          label="Keep the song’s key"
          on={settings.songPinned}
          hint="Another position then changes the harp, and another harp the position, instead of the song."
          onChange={(songPinned) => commands.choose({ songPinned })}
        />
      </fieldset>
      <fieldset className="group">
        <legend>How it is shown</legend>
        <Choice
          label="Tab"
          value={settings.tabStyle}
          options={TAB_STYLES.map(({ id, name }) => ({ value: id, text: name }))}
          onChoose={(tabStyle) => commands.choose({ tabStyle })}
        />
        <Choice
          label="Look"
          value={settings.look}
          options={LOOKS}
          onChoose={(look) => commands.choose({ look })}
        />
      </fieldset>
    </Sheet>
  );
};
