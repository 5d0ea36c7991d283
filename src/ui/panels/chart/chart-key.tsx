import { TONICS } from '../../../core/chart/tonics';
import type { ChartSays } from '../../../core/chart-text/header-lines';
import type { OwnChart } from '../../../core/chart-text/own-chart';
import { METER_NAMES, tonicIn } from '../../../core/chart-text/written-key';
import { prettyName } from '../../../core/theory/pitch';
import { Choice } from '../../controls/choice';
import { useSession } from '../../state/session-context';

const MODES = [
  { value: 'major', text: 'major' },
  { value: 'minor', text: 'minor' },
] as const;

interface Props {
  readonly own: OwnChart;
  readonly says: ChartSays;
}

/** The key and the meter the text is written in, as far as no line of it says so. */
export const ChartKey = ({ own, says }: Props) => {
  const { commands } = useSession();
  return (
    <div className="chart-key">
      {says.key === null && (
        <>
          <Choice
            label="Written in"
            value={own.tonic}
            options={TONICS[own.mode].map((name) => ({ value: name, text: prettyName(name) }))}
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
