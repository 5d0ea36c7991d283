import type { FitChord } from '../core/harp/fit';
import type { Gap } from '../core/harp/gaps';
import { prettyName } from '../core/theory/pitch';

/** The octave most lines live in comes first; the top one last. */
const ORDER = ['middle', 'low', 'high'] as const;
/** Sentences shown at once; the dashes of the table show the rest. */
const SHOWN = 2;

const sentence = ({ sentence: text }: Gap): string =>
  prettyName(text.charAt(0).toUpperCase() + text.slice(1));

/** What this harp cannot give over a chord, in words. */
export const GapLines = ({ fit }: { readonly fit: FitChord }) => {
  const gaps = ORDER.flatMap((register) => fit.gaps.filter((gap) => gap.register === register));
  if (gaps.length === 0) return null;
  const rest = gaps.slice(SHOWN);
  return (
    <div className="gaps">
      {gaps.slice(0, SHOWN).map((gap) => (
        <p key={gap.sentence}>{sentence(gap)}.</p>
      ))}
      {rest.length > 0 && (
        <details>
          <summary>{rest.length} more out of reach</summary>
          {rest.map((gap) => (
            <p key={gap.sentence}>{sentence(gap)}.</p>
          ))}
        </details>
      )}
    </div>
  );
};
