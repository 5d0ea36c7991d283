import { sumInWords, sumOfLog } from '../../../core/log/log-files';
import { Panel } from '../../controls/panel';
import { Switch } from '../../controls/switch';
import { useSelected, useSession } from '../../state/session-context';
import { LogEntries } from './log-entries';
import { LogTools } from './log-tools';
import { Progress } from './progress';
import './log.css';

const Sum = () => {
  const entries = useSelected((state) => state.log.entries);
  if (entries.length === 0)
    return (
      <p className="hint">
        Nothing yet. Play a song, practise bends or run the warm-up, and it stands here by itself: what, in
        which key, on which harp, how fast and how long. With the microphone on, what was heard as well.
      </p>
    );
  const [time, rest] = sumInWords(sumOfLog(entries));
  return (
    <p>
      <strong>{time}</strong> {rest}.
    </p>
  );
};

/** What was played, written down by itself. */
export const LogPanel = ({ onClose }: { readonly onClose: () => void }) => {
  const { commands } = useSession();
  const on = useSelected((state) => state.settings.keepLog);
  return (
    <Panel title="Log" onClose={onClose}>
      <section className="group">
        <Sum />
        <Switch
          label="Write down what I play"
          on={on}
          hint="It stays in this browser. What was written before stays too, until you delete it."
          onChange={(keepLog) => commands.choose({ keepLog })}
        />
      </section>
      <Progress />
      <LogEntries />
      <LogTools />
    </Panel>
  );
};
