import { useMemo } from 'react';
import type { BarKey } from '../../../core/chart/chart';
import { METER_NAMES } from '../../../core/chart/chart';
import { TONICS } from '../../../core/chart/tonics';
import { guessKey } from '../../../core/chart-text/guess-key';
import type { ChartSays } from '../../../core/chart-text/header-lines';
import { type OwnChart, readOwnChart } from '../../../core/chart-text/own-chart';
import { tonicIn } from '../../../core/chart-text/written-key';
import { pitchClassOf } from '../../../core/theory/pitch';
import { Choice } from '../../controls/choice';
import { useSession } from '../../state/session-context';
import { useNames } from '../../state/use-names';

const MODES = [
  { value: 'major', text: 'major' },
  { value: 'minor', text: 'minor' },
] as const;

/** The same key, however it is spelled. */
const isSameKey = (a: BarKey, b: BarKey): boolean =>
  a.mode === b.mode && pitchClassOf(a.tonic) === pitchClassOf(b.tonic);

interface Props {
  readonly own: OwnChart;
  readonly says: ChartSays;
}

/** Offers the key that the chords speak for, where they speak for another than the one chosen. */
const GuessedKey = ({ own }: { readonly own: OwnChart }) => {
  const { commands } = useSession();
  const names = useNames();
  const guessed = useMemo(() => guessKey(readOwnChart(own).chart), [own]);
  if (guessed === null || isSameKey(guessed, own)) return null;
  const { tonic, mode } = guessed;
  return (
    <p className="hint" role="status">
      These chords look like {names.key(tonic)} {mode}.{' '}
      <button type="button" className="tool" onClick={() => commands.editChart({ tonic, mode })}>
        Write it in {names.key(tonic)} {mode}
      </button>
    </p>
  );
};

/** The key and the meter the text is written in, as far as no line of it says so. */
export const ChartKey = ({ own, says }: Props) => {
  const { commands } = useSession();
  const names = useNames();
  return (
    <div className="chart-key">
      {says.key === null && (
        <>
          <Choice
            label="Written in"
            value={own.tonic}
            options={TONICS[own.mode].map((name) => ({ value: name, text: names.key(name) }))}
            onChoose={(tonic) => commands.editChart({ tonic })}
          />
          <Choice
            label="Mode"
            value={own.mode}
            options={MODES}
            onChoose={(mode) => commands.editChart({ mode, tonic: tonicIn(own.tonic, mode) })}
          />
        </>
      )}
      {says.key === null && <GuessedKey own={own} />}
      {says.meter === null && (
        <Choice
          label="Meter"
          value={own.meter}
          options={METER_NAMES.map((name) => ({ value: name, text: name }))}
          onChoose={(meter) => commands.editChart({ meter })}
        />
      )}
    </div>
  );
};
