import { type BarHits, HIT_KINDS, type HitKind } from '../../core/practice/heard-chorus';

/** Signs of what was hit; told apart by their shape. */
export const HIT_SIGNS: Readonly<Record<HitKind, string>> = { chord: '●', blue: '◆', scale: '○', other: '×' };

const HIT_NAMES: Readonly<Record<HitKind, readonly [string, string]>> = {
  chord: ['chord tone', 'chord tones'],
  blue: ['blue note', 'blue notes'],
  scale: ['scale tone', 'scale tones'],
  other: ['other note', 'other notes'],
};

/** More signs than this have no room in a bar. */
const MOST = 6;

const kindsOf = ({ counts }: BarHits): readonly HitKind[] =>
  HIT_KINDS.flatMap((kind) => Array.from({ length: counts[kind] }, () => kind));

/** What was hit in a bar, as words: `2 chord tones, 1 blue note, 1 late`. Empty where nothing was. */
export const hitsInWords = (hits: BarHits): string => {
  const { counts, early, late } = hits;
  const words = HIT_KINDS.filter((kind) => counts[kind] > 0).map(
    (kind) => `${counts[kind]} ${HIT_NAMES[kind][counts[kind] === 1 ? 0 : 1]}`,
  );
  return [...words, ...(early > 0 ? [`${early} early`] : []), ...(late > 0 ? [`${late} late`] : [])].join(
    ', ',
  );
};

/** What was hit in a bar, as signs in its corner: one for each note, and arrows for what came early or late. */
export const BarHitSigns = ({ hits }: { readonly hits: BarHits | undefined }) => {
  if (hits === undefined) return null;
  const kinds = kindsOf(hits);
  if (kinds.length === 0) return null;
  return (
    <span className="hits" aria-hidden="true" title={hitsInWords(hits)}>
      {kinds.slice(0, MOST).map((kind, i) => (
        <i
          // biome-ignore lint/suspicious/noArrayIndexKey: notes of a bar are known by their place
          key={i}
          data-hit={kind}
        >
          {HIT_SIGNS[kind]}
        </i>
      ))}
      {kinds.length > MOST && '+'}
      {hits.early > 0 && <i>‹</i>}
      {hits.late > 0 && <i>›</i>}
    </span>
  );
};
