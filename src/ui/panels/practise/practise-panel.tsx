import { useMemo } from 'react';
import type { Pace } from '../../../core/lines/line-slots';
import { LINE_TASTES } from '../../../core/lines/line-tastes';
import { type LineChoice, MOST_CALL_TEXT } from '../../../core/settings/practice-settings';
import { callRemarks } from '../../../core/song/call-remarks';
import { tradingFor, typedCalls } from '../../../core/song/leads';
import { quoted } from '../../../core/theory/wording';
import { Choice } from '../../controls/choice';
import { Fold } from '../../controls/fold';
import { Panel } from '../../controls/panel';
import { Switch } from '../../controls/switch';
import { UndoRow } from '../../controls/undo-row';
import { useSelected, useSession } from '../../state/session-context';
import { LadderChoices, MemoryChoice } from './chorus-choices';
import { PartnerChoices } from './partner-choices';
import { WarmUpOffer } from './warm-up-offer';

const KINDS: readonly { readonly value: LineChoice['kind']; readonly text: string }[] = [
  { value: 'none', text: 'None' },
  { value: 'guide tones', text: 'Guide tones (3 and 7)' },
  { value: 'chord tones', text: 'Chord tones' },
  { value: 'arpeggio', text: 'Walking arpeggio' },
];
const PACES: readonly { readonly value: Pace; readonly text: string }[] = [
  { value: 1, text: '1 a bar' },
  { value: 2, text: '2 a bar' },
  { value: 4, text: 'One a beat' },
];

const LineChoices = () => {
  const { commands } = useSession();
  const line = useSelected((state) => state.settings.line);
  const set = (change: Partial<LineChoice>): void => commands.choose({ line: { ...line, ...change } });
  const taste = LINE_TASTES.find(({ id }) => id === line.taste);
  return (
    <>
      <Choice
        label="Line"
        value={line.kind}
        options={KINDS}
        hint="The smoothest way through the changes on this harp, as far as you can reach: under each bar as tab, and through the map."
        onChoose={(kind) => set({ kind })}
      />
      {line.kind !== 'none' && (
        <>
          <div className="pair">
            {line.kind === 'chord tones' && (
              <Choice label="Notes" value={line.pace} options={PACES} onChoose={(pace) => set({ pace })} />
            )}
            <Choice
              label="Taste"
              value={line.taste}
              options={LINE_TASTES.map(({ id, name }) => ({ value: id, text: name }))}
              onChoose={(id) => set({ taste: id })}
            />
          </div>
          {taste && <p className="hint">{taste.about}</p>}
          <Switch
            label="Hear it over the band"
            on={line.heard}
            hint="The harp voice plays it; its fader is Lead in the mixer."
            onChange={(heard) => set({ heard })}
          />
          <div className="save-row">
            <button type="button" className="tool" onClick={() => set({ seed: line.seed + 1 })}>
              Another line
            </button>
            <button
              type="button"
              className="tool"
              disabled={line.seed === 0}
              onClick={() => set({ seed: 0 })}
            >
              The smoothest
            </button>
          </div>
        </>
      )}
    </>
  );
};

const TypedCalls = () => {
  const { commands } = useSession();
  const settings = useSelected((state) => state.settings);
  const { chart, harp } = useSelected((state) => state.tune);
  const readings = useMemo(() => typedCalls(settings, chart.meter.name), [settings, chart]);
  const remarks = useMemo(
    () =>
      callRemarks(readings, {
        harp,
        tabStyle: settings.tabStyle,
        trading: readings.length === 0 ? null : tradingFor(settings, { chart, harp, chorus: 0 }),
      }),
    [readings, settings, chart, harp],
  );
  const { trade } = settings;
  return (
    <>
      <label className="field">
        <span className="label">Your own calls, one a line (leave empty to have them made up)</span>
        <textarea
          className="text-box"
          rows={4}
          spellCheck={false}
          maxLength={MOST_CALL_TEXT}
          placeholder="-2:q -3':e -3 4:h | r:w"
          value={trade.calls}
          onChange={(event) => commands.choose({ trade: { ...trade, calls: event.target.value } })}
        />
      </label>
      <ul className="marks" aria-live="polite">
        {readings.flatMap(({ source, problems }, call) => [
          ...problems.map(({ column, what, advice }) => (
            <li
              // biome-ignore lint/suspicious/noArrayIndexKey: calls are known by their place
              key={`${call} ${column} ${what}`}
            >
              {quoted(source)}, column {column}: {what} {advice}
            </li>
          )),
          ...(remarks[call] ?? []).map((remark) => (
            <li
              // biome-ignore lint/suspicious/noArrayIndexKey: calls are known by their place
              key={`${call} ${remark}`}
            >
              {quoted(source)}: {remark}
            </li>
          )),
        ])}
      </ul>
      <p className="hint">
        A note is tab in any style: 4 or 4↑ or 4B is blow, -4 or 4↓ or 4D draw, each ' a semitone of bend.
        After a colon comes its length: w, h, q, e, s for whole to sixteenth, with . for dotted or t for a
        triplet. r is a rest. A note without a length is as long as the one before.
      </p>
    </>
  );
};

/** Ways to practise over the band: a line to follow, call and answer. */
export const PractisePanel = ({ onClose }: { readonly onClose: () => void }) => {
  const { commands } = useSession();
  const trade = useSelected((state) => state.settings.trade);
  const mode = useSelected((state) => state.settings.partner.mode);
  return (
    <Panel title="Practise" onClose={onClose}>
      <Fold title="Warm-up" open>
        <WarmUpOffer onStart={onClose} />
      </Fold>
      <Fold title="Chorus by chorus" open>
        <LadderChoices />
        <MemoryChoice />
      </Fold>
      <Fold title="A line through the changes" open>
        <LineChoices />
      </Fold>
      <Fold title="Call and answer" open>
        <Switch
          label="Trade with the harp voice"
          on={trade.on}
          hint="It calls, you answer, in turn over the form."
          onChange={(on) => commands.choose({ trade: { ...trade, on } })}
        />
        {trade.on && <PartnerChoices />}
        {trade.on && mode !== 'lead' && <TypedCalls />}
      </Fold>
      <UndoRow />
    </Panel>
  );
};
