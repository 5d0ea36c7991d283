import { useState } from 'react';
import { setStepsFor } from '../../../app/warm-up/set-steps';
import type { GigSet } from '../../../core/book/gig-set';
import { WARM_UP_CAUTIONS } from '../../../core/practice/warm-up';
import { SET_WARM_UPS, type SetWarmUpMinutes } from '../../../core/practice/warm-up-set';
import { Choice } from '../../controls/choice';
import { Fold } from '../../controls/fold';
import { Switch } from '../../controls/switch';
import { useSession } from '../../state/session-context';

const OPTIONS = SET_WARM_UPS.map((value) => ({ value, text: `${value} minutes` }));

/** Minutes before the set: its harps, its tempos, the bends its songs need. */
export const SetWarmUp = ({ set }: { readonly set: GigSet }) => {
  const { commands, store } = useSession();
  const [minutes, setMinutes] = useState<SetWarmUpMinutes>(10);
  const [silent, setSilent] = useState(false);
  const [shown, setShown] = useState<readonly string[]>([]);
  const empty = set.entries.length === 0;
  const show = (): void =>
    setShown(
      setStepsFor(store.getState(), { set: set.id, minutes, silent }).map(
        ({ step }) => `${step.title}, ${Math.round(step.seconds)} s`,
      ),
    );
  return (
    <Fold title="Warm-up for this set">
      <Choice label="Time" value={minutes} options={OPTIONS} onChoose={setMinutes} />
      <Switch
        label="Without a sound"
        on={silent}
        hint="Breath and rhythm only, for a dressing room."
        onChange={setSilent}
      />
      <div className="own-buttons">
        <button
          type="button"
          className="tool"
          disabled={empty}
          onClick={() => commands.startSetWarmUp({ set: set.id, minutes, silent })}
        >
          Start it
        </button>
        <button type="button" className="tool" disabled={empty} onClick={show}>
          Show what is in it
        </button>
      </div>
      {shown.length > 0 && (
        <ol className="set-steps">
          {shown.map((line, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a step is known by its place
            <li key={i}>{line}</li>
          ))}
        </ol>
      )}
      <ul className="cautions">
        {WARM_UP_CAUTIONS.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </Fold>
  );
};
