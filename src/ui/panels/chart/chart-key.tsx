import type { OwnChart } from '../../../core/chart-text/own-chart';
import { METER_NAMES, TONICS, tonicIn } from '../../../core/chart-text/written-key';
import { prettyName } from '../../../core/theory/pitch';
import { Choice } from '../../controls/choice';
import { useSession } from '../../state/session-context';

const MODES = [
  { value: 'major', text: 'major' },
  { value: 'minor', text: 'minor' },
] as const;

/** The key and the meter the text is written in. */
export const ChartKey = ({ own }: { readonly own: OwnChart }) => {
  const { commands } = useSession();
  return (
    <div className="chart-key">
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
      <Choice
        label="Meter"
        value={own.meter}
        options={METER_NAMES.map((name) => ({ value: name, text: name }))}
        onChoose={(meter) => commands.editChart({ meter })}
      />
    </div>
  );
};
