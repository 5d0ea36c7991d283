import { HIT_KINDS } from '../../core/practice/heard-chorus';
import { useSelected, useSession } from '../state/session-context';
import { useNames } from '../state/use-names';
import { HIT_SIGNS, hitsInWords } from './bar-hits';

const LEGEND: Readonly<Record<(typeof HIT_KINDS)[number], string>> = {
  chord: 'of the chord',
  blue: 'blue note',
  scale: 'of the scale',
  other: 'neither',
};

/** What was heard of the last chorus: the one thing most worth knowing, and every bar in words. */
export const ChorusSign = () => {
  const { commands } = useSession();
  const names = useNames();
  const report = useSelected((state) => state.ear.report);
  if (report === null) return null;
  const { heard, advice, chorus, numbers } = report;
  const bars = heard.bars.flatMap((hits, i) => {
    const words = hitsInWords(hits);
    return words === '' ? [] : [{ number: (numbers[i] ?? i) + 1, words }];
  });
  return (
    <section className="chorus-sign card" aria-label="What was heard">
      <p aria-live="polite">
        <b>Chorus {chorus + 1}:</b> {names.text(advice)}
      </p>
      <button type="button" className="tool" onClick={commands.putReportAway}>
        Put away
      </button>
      {bars.length > 0 && (
        <details>
          <summary>Bar by bar</summary>
          <p className="hint" aria-hidden="true">
            {HIT_KINDS.map((kind) => `${HIT_SIGNS[kind]} ${LEGEND[kind]}`).join('  ')} ‹ early › late
          </p>
          <ul>
            {bars.map(({ number, words }) => (
              <li key={number}>
                Bar {number}: {words}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
};
