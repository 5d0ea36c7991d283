import type { FitChord } from '../../core/fit/fit';
import type { Gap } from '../../core/fit/gaps';
import { DegreeChip } from '../controls/degree-chip';
import { useSelected } from '../state/session-context';
import { useNames } from '../state/use-names';

/** The octave most lines live in comes first; the top one last. */
const ORDER = ['middle', 'low', 'high'] as const;

/** A tone missing in neighbouring octaves is said once. */
const saidOnce = (gaps: readonly Gap[]): readonly Gap[] =>
  gaps.filter(
    ({ degree, sentence }, i) =>
      !gaps.slice(0, i).some((other) => other.degree === degree && other.sentence === sentence),
  );

const GapLine = ({ gap: { degree, sentence } }: { readonly gap: Gap }) => {
  const plain = useSelected((state) => state.settings.plainWords);
  const names = useNames();
  return (
    <p>
      {!plain && <DegreeChip degree={degree} />} {names.text(sentence)}.
    </p>
  );
};

/** What this harp cannot give over a chord: the gap that matters most in words, the others on request. */
export const GapLines = ({ fit }: { readonly fit: FitChord }) => {
  const [first, ...rest] = saidOnce(
    ORDER.flatMap((register) => fit.gaps.filter((gap) => gap.register === register)),
  );
  if (first === undefined) return null;
  return (
    <div className="gaps">
      <GapLine gap={first} />
      {rest.length > 0 && (
        <details>
          <summary>{rest.length} more out of reach</summary>
          {rest.map((gap) => (
            <GapLine key={gap.degree + gap.sentence} gap={gap} />
          ))}
        </details>
      )}
    </div>
  );
};
