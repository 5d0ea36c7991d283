import type { FitChord } from '../core/harp/fit';
import type { Gap } from '../core/harp/gaps';
import { prettyName } from '../core/theory/pitch';

/** The octave most lines live in comes first; the top one last. */
const ORDER = ['middle', 'low', 'high'] as const;

const gapText = ({ sentence }: Gap): string =>
  `${prettyName(sentence.charAt(0).toUpperCase() + sentence.slice(1))}.`;

/** What this harp cannot give over a chord: the gap that matters most in words, the others on request. */
export const GapLines = ({ fit }: { readonly fit: FitChord }) => {
  const [first, ...rest] = ORDER.flatMap((register) => fit.gaps.filter((gap) => gap.register === register));
  if (first === undefined) return null;
  return (
    <div className="gaps">
      <p>{gapText(first)}</p>
      {rest.length > 0 && (
        <details>
          <summary>{rest.length} more out of reach</summary>
          {rest.map((gap) => (
            <p key={gap.sentence}>{gapText(gap)}</p>
          ))}
        </details>
      )}
    </div>
  );
};
