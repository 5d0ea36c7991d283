import { useLayoutEffect } from 'react';
import { tab } from '../../core/harp/tab';
import { forLevel } from '../../core/phrasebook/for-level';
import { tradingFor } from '../../core/song/leads';
import { CallNotation } from '../chart/call-notation';
import { useSelected, useSession } from '../state/session-context';

/** What signs mean, in the player's own style, so that the sheet is read without the page. */
const Legend = () => {
  const style = useSelected((state) => state.settings.tabStyle);
  const four = { hole: 4, breath: 'draw', technique: 'natural', bend: 0 } as const;
  const blow = tab({ ...four, breath: 'blow' }, style);
  const draw = tab(four, style);
  const bend = tab({ ...four, technique: 'bend', bend: 1 }, style);
  return (
    <p className="hand-out-legend">
      <strong>{blow}</strong> hole 4 blown · <strong>{draw}</strong> drawn · <strong>{bend}</strong> bent a
      semitone · <strong>( )</strong> holes together ·{' '}
      <strong>
        {draw}~{bend}
      </strong>{' '}
      bends on one breath · <strong>1..4</strong> slides · <strong>4*5</strong> shakes · <strong>&gt;</strong>{' '}
      accent. Signs below: half note open, quarter note filled, a flag or beam for an eighth, a dot for half
      as long again.
    </p>
  );
};

/** The calls on the stand for every level of the class on one sheet, with the signs explained and a line for a name. */
export const PrintHandOut = () => {
  const { commands } = useSession();
  const settings = useSelected((state) => state.settings);
  const { chart, harp } = useSelected((state) => state.tune);
  useLayoutEffect(() => () => commands.chooseHandOut(false), [commands]);
  const trading = tradingFor(
    { ...settings, trade: { ...settings.trade, on: true } },
    { chart, harp, chorus: 0 },
  );
  const calls = trading?.calls ?? [];
  return (
    <article className="paper hand-out" aria-label="The hand-out on paper">
      <header>
        <h1>{chart.title}: call and answer</h1>
        <p className="hand-out-name">Name: </p>
      </header>
      <Legend />
      {settings.classLevels.map((level, row) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two levels may have one name
        <section key={row} className="hand-out-level">
          <h2>{level.name}</h2>
          {calls.map(({ turn, phrase }) => (
            <div key={turn} className="hand-out-call">
              <b>{turn + 1}</b>
              <CallNotation phrase={forLevel(phrase, level, harp)} from={null} />
            </div>
          ))}
        </section>
      ))}
    </article>
  );
};
