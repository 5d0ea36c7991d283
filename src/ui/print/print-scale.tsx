import type { ScaleRun } from '../../core/fit/scale-tab';
import { type TabStyle, tab } from '../../core/harp/tab';
import { degreeText, type NoteNames } from '../../core/theory/note-names';
import type { Scale } from '../../core/theory/scales';
import { capital } from '../../core/theory/wording';
import { useNames } from '../state/use-names';

/** `Minor blues in G`. */
export const scaleHeading = ({ name, tonic }: Scale, names: NoteNames): string =>
  `${capital(name)} in ${names.key(tonic)}`;

interface Props {
  readonly scale: Scale;
  readonly runs: readonly ScaleRun[];
  readonly tabStyle: TabStyle;
}

/** The scale as tab, octave by octave, with degree and note under each sound. */
export const PrintScale = ({ scale, runs, tabStyle }: Props) => {
  const names = useNames();
  return (
    <section className="print-scale">
      <h2>
        {scaleHeading(scale, names)}, going up <small>(and back the same way)</small>
      </h2>
      <div className="print-runs">
        {runs.map(({ up }) => (
          <ol key={up[0]?.pitch ?? 0}>
            {up.map(({ sound, tone, pitch }) => (
              <li key={pitch}>
                <b>{sound === null ? '–' : tab(sound, tabStyle)}</b>
                <span>{degreeText(tone.degree)}</span>
                <span>{names.note(tone.name)}</span>
              </li>
            ))}
          </ol>
        ))}
      </div>
    </section>
  );
};
