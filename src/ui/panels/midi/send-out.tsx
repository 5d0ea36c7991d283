import { channelOf, OUT_CHOICES, type OutChoice, outChoices } from '../../../core/midi/out-messages';
import { PART_NAMES } from '../../../core/score/part-names';
import { Choice } from '../../controls/choice';
import { Switch } from '../../controls/switch';
import { useSelected, useSession } from '../../state/session-context';

const NAMES: Readonly<Record<OutChoice, string>> = {
  clock: 'The clock: tempo, start, stop and place in the song',
  ...PART_NAMES,
  lead: 'Calls and lines of the harp voice',
};

const nameOf = (choice: OutChoice): string =>
  choice === 'clock' ? NAMES.clock : `${NAMES[choice]}, channel ${channelOf(choice)}`;

/** What the band sends to an instrument that is plugged in: nothing until it is chosen. */
export const SendOut = () => {
  const { commands } = useSession();
  const { out, to } = useSelected((state) => state.settings.midi);
  const status = useSelected((state) => state.midi.status);
  const chosen = outChoices(out);
  const outputs = status.kind === 'open' ? status.outputs : [];
  const names = [...new Set([...outputs, ...(to === '' ? [] : [to])])];
  const change = (choice: OutChoice, on: boolean): void =>
    commands.chooseMidi({
      out: OUT_CHOICES.filter((each) => (each === choice ? on : chosen.includes(each))),
    });
  return (
    <>
      <p>
        An instrument or a recorder can follow the band’s clock, or play a part of it: switch the part on
        here, and off in the mixer. It plays as the loudspeaker does, without bends. A part that changes on
        the spot may still sound a quarter of a second.
      </p>
      <p role="status">
        {status.kind !== 'open'
          ? 'First use what is plugged in, above.'
          : outputs.length === 0
            ? 'Nothing that can be sent to is plugged in. It is taken up by itself when it is.'
            : `Plugged in: ${outputs.join(', ')}.`}
      </p>
      <Choice
        label="Send to"
        value={to}
        options={[
          { value: '', text: 'All that is plugged in' },
          ...names.map((name) => ({
            value: name,
            text: outputs.includes(name) ? name : `${name} (not plugged in)`,
          })),
        ]}
        size="long"
        onChoose={(next) => commands.chooseMidi({ to: next })}
      />
      {OUT_CHOICES.map((choice) => (
        <Switch
          key={choice}
          label={nameOf(choice)}
          on={chosen.includes(choice)}
          onChange={(on) => change(choice, on)}
        />
      ))}
    </>
  );
};
