import type { TurnResult } from '../../app/phrases/phrases-state';
import { phraseLead } from '../../core/phrase/phrase-lead';
import { asTicks } from '../../core/theory/units';
import { useSelected } from '../state/session-context';

/** The drawing's own units: width, height, and how thick notes are. */
const SIZE = { width: 320, height: 96, edge: 8, note: 9 } as const;

interface Block {
  readonly at: number;
  readonly length: number;
  readonly pitch: number;
}

/** Call above answer on one grid of time and pitch: what was called as outlines, what was heard as filled bars. */
export const TurnPicture = ({ result }: { readonly result: TurnResult }) => {
  const harp = useSelected((state) => state.now.tune.harp);
  const called: readonly Block[] = phraseLead(result.call, { harp, at: asTicks(0), swing: 1 });
  const heard: readonly Block[] = result.heard ?? [];
  const all = [...called, ...heard];
  if (heard.length === 0 || called.length === 0) return null;
  const end = Math.max(result.call.length, ...all.map(({ at, length }) => at + length));
  const low = Math.min(...all.map(({ pitch }) => pitch)) - 0.5;
  const high = Math.max(...all.map(({ pitch }) => pitch)) + 0.5;
  const { width, height, edge, note } = SIZE;
  const x = (ticks: number): number => edge + (Math.max(0, ticks) / end) * (width - 2 * edge);
  const y = (pitch: number): number =>
    edge + ((high - pitch) / Math.max(1, high - low)) * (height - 2 * edge) - note / 2;
  const blocks = (notes: readonly Block[], kind: string) =>
    notes.map(({ at, length, pitch }) => (
      <rect
        key={`${kind} ${at} ${pitch}`}
        className={kind}
        x={x(at)}
        y={y(pitch)}
        width={Math.max(4, x(at + length) - x(at) - 1.5)}
        height={note}
        rx={2}
      />
    ));
  return (
    <figure className="turn-picture">
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label="The call, and what was heard of the answer"
      >
        {blocks(heard, 'heard')}
        {blocks(called, 'called')}
      </svg>
      <figcaption>Outlined: the call. Filled: what was heard.</figcaption>
    </figure>
  );
};
