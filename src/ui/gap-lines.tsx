import type { FitChord } from '../core/harp/fit';
import { type Gap, gapSentence } from '../core/harp/gaps';
import { type TabStyle, tab } from '../core/harp/tab';
import { prettyName } from '../core/theory/pitch';
import { useSelected } from './session-context';

/** The octave most lines live in comes first; the top one last. */
const ORDER = ['middle', 'low', 'high'] as const;

const sentenceOf = ({ chord, beyond }: FitChord, gap: Gap, style: TabStyle): string => {
  const fillers = beyond.filter(({ id }) => gap.with.includes(id));
  const text = gapSentence(chord, gap, fillers, (sound) => tab(sound, style));
  return `${prettyName(text.charAt(0).toUpperCase() + text.slice(1))}.`;
};

/** What this harp cannot give over a chord: the gap that matters most in words, the others on request. */
export const GapLines = ({ fit }: { readonly fit: FitChord }) => {
  const style = useSelected((state) => state.settings.tabStyle);
  const [first, ...rest] = ORDER.flatMap((register) => fit.gaps.filter((gap) => gap.register === register));
  if (first === undefined) return null;
  return (
    <div className="gaps">
      <p>{sentenceOf(fit, first, style)}</p>
      {rest.length > 0 && (
        <details>
          <summary>{rest.length} more out of reach</summary>
          {rest.map((gap) => (
            <p key={gap.sentence}>{sentenceOf(fit, gap, style)}</p>
          ))}
        </details>
      )}
    </div>
  );
};
