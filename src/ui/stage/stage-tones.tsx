import type { CSSProperties } from 'react';
import type { FitChord, FitSound } from '../../core/fit/fit';
import { DegreeChip } from '../controls/degree-chip';
import { Tap } from '../controls/tap';
import { useSelected } from '../state/session-context';
import { useNames } from '../state/use-names';
import { enoughFor, type ToneRow, toneLayout, toneRows } from './tone-layout';
import { useSize } from './use-size';

const Sounds = ({ sounds }: { readonly sounds: readonly FitSound[] }) => (
  <span className="stage-sounds">
    {sounds.map((sound) => (
      <Tap key={sound.id} sound={sound} />
    ))}
    {sounds.length === 0 && <span className="unseen">none in reach</span>}
  </span>
);

/** The high octave in one line: what is less needed keeps its place and gives up its size. */
const HighLine = ({ rows }: { readonly rows: readonly ToneRow[] }) => (
  <p className="stage-high">
    <span>High</span>
    {rows
      .filter(({ cells }) => cells.high.length > 0)
      .map(({ tone, cells }) => (
        <span key={tone.degree}>
          <DegreeChip degree={tone.degree} /> <Sounds sounds={cells.high} />
        </span>
      ))}
  </p>
);

/** The tones of the chord being heard: degree, note, and the holes that give them, octave by octave. */
export const StageTones = ({ fit }: { readonly fit: FitChord }) => {
  const style = useSelected((state) => state.settings.tabStyle);
  const [box, size] = useSize<HTMLDivElement>();
  const names = useNames();
  const rows = toneRows(fit);
  const { font, row, folded } =
    size === null || size.width === 0
      ? { font: enoughFor(), row: 1, folded: false }
      : toneLayout(rows, size, style, enoughFor());
  return (
    <div
      className="stage-tones"
      ref={box}
      style={{ '--hole': `${font}px`, '--row-ems': row } as CSSProperties}
    >
      <table data-folded={folded} data-names={names.system}>
        <caption className="unseen">{names.chord(fit.chord)}</caption>
        <thead className="unseen">
          <tr>
            <th scope="col">Tone</th>
            <th scope="col">Low</th>
            <th scope="col">Middle</th>
            {!folded && <th scope="col">High</th>}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ tone, cells }) => (
            <tr key={tone.degree}>
              <th scope="row">
                <DegreeChip degree={tone.degree} />
                <span className="stage-note">{names.note(tone.name)}</span>
              </th>
              <td>
                <Sounds sounds={cells.low} />
              </td>
              <td>
                <Sounds sounds={cells.middle} />
              </td>
              {!folded && (
                <td>
                  <Sounds sounds={cells.high} />
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
      {folded && <HighLine rows={rows} />}
    </div>
  );
};
