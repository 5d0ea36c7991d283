import { harpForCase, inCase } from '../../core/song/harp-in-case';
import { keyName, PITCH_CLASSES } from '../../core/theory/pitch';
import type { PitchClass } from '../../core/theory/units';
import { useSelected, useSession } from '../state/session-context';
import { useNames } from '../state/use-names';

/** Whether the question is to be seen: while the band plays the chart has its place. */
const useAsking = (): boolean =>
  useSelected(
    ({ settings, status, warmUp }) =>
      settings.askHarp && warmUp === null && !['playing', 'paused', 'interrupted'].includes(status.kind),
  );

/** The one question of a first visit: the harps named go into the case, the first of them into the hand. */
export const HarpQuestion = () => {
  const { commands } = useSession();
  const names = useNames();
  const asking = useAsking();
  const settings = useSelected((state) => state.settings);
  const harpCase = useSelected((state) => state.harpCase);
  if (!asking) return null;
  const owned = (harpKey: PitchClass) => inCase({ ...settings, harpKey }, harpCase);
  const press = (harpKey: PitchClass): void => {
    const before = owned(harpKey);
    if (before !== null) {
      commands.dropHarp(before.id);
      return;
    }
    const harp = harpForCase({ ...settings, harpKey }, harpCase);
    commands.keepHarp(harp);
    if (harpCase.length === 0) commands.takeHarp(harp);
  };
  return (
    <section className="card harp-question" aria-labelledby="harp-question">
      <h2 id="harp-question">Which harp have you got?</h2>
      <p id="harp-question-how">Press the letter that stands on it, and on any others you have.</p>
      <fieldset className="letters" aria-labelledby="harp-question" aria-describedby="harp-question-how">
        {PITCH_CLASSES.map((key) => (
          <button
            key={key}
            type="button"
            className="tool"
            aria-pressed={owned(key) !== null}
            aria-label={`${names.key(keyName(key, 'major'))} harp`}
            onClick={() => press(key)}
          >
            {names.key(keyName(key, 'major'))}
          </button>
        ))}
      </fieldset>
      <p className="row">
        <span className="hint">They are kept under Harp, Your case.</span>
        <button type="button" className="tool" onClick={() => commands.choose({ askHarp: false })}>
          {harpCase.length === 0 ? 'Ask me later' : 'Done'}
        </button>
      </p>
    </section>
  );
};
