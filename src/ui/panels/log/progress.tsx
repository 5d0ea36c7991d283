import { useDeferredValue, useEffect, useMemo, useState } from 'react';
import { LATE_WEEKS } from '../../../core/log/comb-progress';
import {
  type BendProgress,
  bendProgress,
  functionProgress,
  minutesByDay,
  songLadders,
} from '../../../core/log/progress';
import { Choice } from '../../controls/choice';
import { useSelected, useSession } from '../../state/session-context';
import { useNames } from '../../state/use-names';
import { bendName } from './bend-name';
import { CombPicture } from './comb-picture';
import { LazyFold } from './lazy-fold';
import { BendPicture, FunctionPicture, LadderPicture, YearPicture } from './progress-pictures';

const BendsOf = ({ bends, harp }: { readonly bends: readonly BendProgress[]; readonly harp: string }) => {
  const mirrored = useSelected((state) => state.settings.mirrored);
  const names = useNames();
  const [chosen, setChosen] = useState(0);
  const bend = bends[chosen] ?? bends[0];
  if (bend === undefined) return null;
  return (
    <>
      <CombPicture bends={bends} harp={harp} mirrored={mirrored} />
      <p className="hint">
        Each place is filled as high as its bend was hit in the last {LATE_WEEKS} weeks, in hundredths; the
        marks at its sides are the weeks before. Below stands the mean in cents.
      </p>
      {bends.length > 1 && (
        <Choice
          label="One bend over the weeks"
          value={Math.min(chosen, bends.length - 1)}
          options={bends.map(({ sound }, value) => ({ value, text: bendName(sound) }))}
          onChoose={setChosen}
        />
      )}
      <BendPicture bend={bend} name={`${bendName(bend.sound)} on the ${names.key(harp)}`} />
      <p className="hint">
        Dots are the mean in cents, the lines through them its spread, the middle line in tune; the thin line
        is the share that was hit.
      </p>
    </>
  );
};

const Bends = () => {
  const entries = useDeferredValue(
    useSelected((state) => state.log.entries),
    [],
  );
  const bends = useMemo(() => bendProgress(entries), [entries]);
  const names = useNames();
  const harps = [...new Map(bends.map(({ harpKind, harp }) => [harpKind, harp]))];
  const [chosen, setChosen] = useState('');
  const [kind, harp] = harps.find(([each]) => each === chosen) ?? harps[0] ?? [];
  if (kind === undefined || harp === undefined)
    return <p className="hint">No bend has been heard or marked yet.</p>;
  return (
    <>
      {harps.length > 1 && (
        <Choice
          label="Harp"
          value={kind}
          options={harps.map(([value, name]) => ({ value, text: names.key(name) }))}
          onChoose={setChosen}
        />
      )}
      <BendsOf key={kind} bends={bends.filter(({ harpKind }) => harpKind === kind)} harp={harp} />
    </>
  );
};

const Ladders = () => {
  const entries = useDeferredValue(
    useSelected((state) => state.log.entries),
    [],
  );
  const ladders = useMemo(() => songLadders(entries), [entries]);
  const [chosen, setChosen] = useState(0);
  const ladder = ladders[chosen] ?? ladders[0];
  if (ladder === undefined) return <p className="hint">No whole chorus has been played yet.</p>;
  return (
    <>
      {ladders.length > 1 && (
        <Choice
          label="Song"
          value={Math.min(chosen, ladders.length - 1)}
          options={ladders.map(({ song }, value) => ({ value, text: song }))}
          onChoose={setChosen}
        />
      )}
      <LadderPicture ladder={ladder} />
      <p className="hint">A full dot: on that day every judged chorus at that tempo was clean.</p>
    </>
  );
};

const Functions = () => {
  const entries = useDeferredValue(
    useSelected((state) => state.log.entries),
    [],
  );
  const weeks = useMemo(() => functionProgress(entries), [entries]);
  if (weeks.length === 0)
    return <p className="hint">Nothing was heard yet: it takes the microphone and a chorus.</p>;
  return <FunctionPicture weeks={weeks} />;
};

const Year = () => {
  const entries = useDeferredValue(
    useSelected((state) => state.log.entries),
    [],
  );
  const { commands } = useSession();
  const today = useSelected((state) => state.log.today);
  useEffect(() => commands.readDay(), [commands]);
  const days = useMemo(() => minutesByDay(entries), [entries]);
  return days.length === 0 || today === '' ? null : <YearPicture days={days} today={today} />;
};

/** Pictures of progress, each opened when it is wanted. */
export const Progress = () => {
  const any = useSelected((state) => state.log.entries.length > 0);
  if (!any) return null;
  return (
    <>
      <LazyFold title="Minutes by day" open>
        <Year />
      </LazyFold>
      <LazyFold title="Tempo of a song">
        <Ladders />
      </LazyFold>
      <LazyFold title="Bends over the weeks">
        <Bends />
      </LazyFold>
      <LazyFold title="Chord tones over the weeks">
        <Functions />
      </LazyFold>
    </>
  );
};
