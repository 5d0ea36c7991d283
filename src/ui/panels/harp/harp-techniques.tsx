import { isInReach, usesTechnique } from '../../../core/harp/reach';
import { soundId, spokenTab, tab } from '../../../core/harp/tab';
import { Switch } from '../../controls/switch';
import { useSelected, useSession } from '../../state/session-context';

const SingleSounds = () => {
  const { commands } = useSession();
  const { technique, tabStyle } = useSelected((state) => state.settings);
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
      <p className="hint">Switch off the ones that do not come yet; the page then leaves them out.</p>
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

/** What the player can do: whole techniques, and single sounds that do not come yet. */
export const HarpTechniques = () => {
  const { commands } = useSession();
  const technique = useSelected((state) => state.settings.technique);
  const { byResults } = useSelected((state) => state.settings.bends);
  const set = (change: Partial<typeof technique>): void =>
    commands.choose({ technique: { ...technique, ...change } });
  return (
    <>
      <div>
        <Switch label="Draw bends" on={technique.drawBends} onChange={(drawBends) => set({ drawBends })} />
        <Switch label="Blow bends" on={technique.blowBends} onChange={(blowBends) => set({ blowBends })} />
        <Switch
          label="Overbends"
          on={technique.overbends}
          hint="Overblows and overdraws. They come from the shape of the mouth: never force a reed."
          onChange={(overbends) => set({ overbends })}
        />
      </div>
      <SingleSounds />
      {byResults && (
        <p className="hint">
          Your results add single sounds and leave them out, each time with a sentence: Practise, Bends.
        </p>
      )}
    </>
  );
};
