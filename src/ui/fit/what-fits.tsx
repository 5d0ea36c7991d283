import type { FitChord } from '../../core/fit/fit';
import { type GuideMove, guideMoves, moveWord } from '../../core/fit/guide-moves';
import { barPlace } from '../../core/song/bar-place';
import type { BarView } from '../../core/song/bar-view';
import { degreeText } from '../../core/theory/note-names';
import { keyName } from '../../core/theory/pitch';
import { ChordText, namesStyle } from '../controls/chord-text';
import { laterView } from '../controls/later-view';
import { ScrollBox } from '../controls/scroll-box';
import { Tap } from '../controls/tap';
import { useSelected } from '../state/session-context';
import { useHeldFit } from '../state/use-held-fit';
import { useNames } from '../state/use-names';
import { usePlayingIndex } from '../state/use-playing-chord';
import { FitTable } from './fit-table';
import { GapLines } from './gap-lines';

const PlainTable = laterView(async () => (await import('./plain-table')).PlainTable);

const fitsOf = (view: BarView): readonly FitChord[] => view.tune.fit.bars[view.bar]?.chords ?? [];

const placeText = (view: BarView): string => {
  if (view.formBar !== null) return barPlace(view.tune.chart.bars[view.bar], view.formBar);
  return view.kind === 'count-in' ? 'count-in' : view.kind;
};

interface HeadProps {
  readonly title: string;
  readonly fits: readonly FitChord[];
  /** Those of them that are read: where there is no room for all, the others go unseen. */
  readonly read?: readonly FitChord[];
}

const FitHead = ({ title, fits, read = fits }: HeadProps) => {
  const names = useNames();
  return (
    <header>
      <h2>{title}</h2>
      <span className="chords" data-count={fits.length} {...namesStyle(read, names)}>
        {fits.map((fit) => (
          <span key={fit.at} data-read={read.includes(fit)}>
            <ChordText chord={fit.chord} />
          </span>
        ))}
      </span>
    </header>
  );
};

const Move = ({
  move,
  before,
  after,
}: {
  readonly move: GuideMove;
  readonly before: FitChord;
  readonly after: FitChord;
}) => {
  const names = useNames();
  return (
    <p>
      {degreeText(move.from.degree)} of {names.chord(before.chord)} {moveWord(move.step)}{' '}
      {degreeText(move.to.degree)} of {names.chord(after.chord)}:{' '}
      <strong>
        <Tap sound={move.from} meaning={move.from} /> → <Tap sound={move.to} meaning={move.to} />
      </strong>
    </p>
  );
};

/** The same without degrees: what to play now, and what it becomes. */
const PlainMoves = ({ moves }: { readonly moves: readonly GuideMove[] }) => (
  <p className="moves">
    Resolves to:{' '}
    {moves.map(({ from, to }, i) => (
      <strong key={from.id}>
        {i > 0 && ', '}
        <Tap sound={from} meaning={from} /> → <Tap sound={to} meaning={to} />
      </strong>
    ))}
  </p>
);

/** What a chord has for the harp: by degree, or in plain words. */
const Tones = ({
  fit,
  captioned,
  when,
}: {
  readonly fit: FitChord;
  readonly captioned: boolean;
  readonly when: 'now' | 'next';
}) => {
  const plain = useSelected((state) => state.settings.plainWords);
  return plain ? (
    <PlainTable fit={fit} captioned={captioned} when={when} />
  ) : (
    <FitTable fit={fit} captioned={captioned} />
  );
};

const Lead = ({ from, to }: { readonly from: BarView; readonly to: BarView }) => {
  const names = useNames();
  const plain = useSelected((state) => state.settings.plainWords);
  const before = fitsOf(from).at(-1);
  const after = fitsOf(to)[0];
  if (!before || !after) return null;
  if (from.tune.harp.key !== to.tune.harp.key) {
    return (
      <p className="moves">
        <strong>Take the {names.key(keyName(to.tune.harp.key, 'major'))} harp.</strong>
      </p>
    );
  }
  if (to.tune.chart.bars[to.bar]?.chords[0]?.band === 'rest') return <p className="moves">The band rests.</p>;
  if (before.chord.symbol === after.chord.symbol) return <p className="moves">The chord stays.</p>;
  const moves = guideMoves(before, after);
  if (plain && moves.length > 0) return <PlainMoves moves={moves} />;
  return (
    <div className="moves">
      {moves.map((move) => (
        <Move key={move.from.id} move={move} before={before} after={after} />
      ))}
    </div>
  );
};

/** More chords of a bar than these are more than can be read while it goes by, and than the page has height for. */
const AT_ONCE = 2;

/** The chords of a bar that are read: from the one being heard on, as many as there is time for. */
const readNow = (fits: readonly FitChord[], index: number): readonly FitChord[] => {
  const from = Math.max(0, Math.min(index, fits.length - AT_ONCE));
  return fits.slice(from, from + AT_ONCE);
};

const NowCard = ({ view }: { readonly view: BarView }) => {
  const held = useHeldFit();
  const fits = held === null ? fitsOf(view) : [held];
  const read = readNow(fits, usePlayingIndex());
  return (
    <article className="fit now card" aria-label="Now">
      <FitHead
        title={held === null ? `Now, ${placeText(view)}` : 'Now, as you hold it'}
        fits={fits}
        read={read}
      />
      <ScrollBox className="fit-chords">
        {read.map((fit) => (
          <div key={fit.at}>
            <Tones fit={fit} captioned={fits.length > 1} when="now" />
            {fits.length === 1 && <GapLines fit={fit} />}
          </div>
        ))}
      </ScrollBox>
    </article>
  );
};

const NextCard = ({ view, now }: { readonly view: BarView | null; readonly now: BarView }) => {
  if (view === null) {
    return (
      <article className="fit next card" aria-label="Next">
        <FitHead title="Next" fits={[]} />
        <p className="empty">The song ends here.</p>
      </article>
    );
  }
  const fits = fitsOf(view);
  const read = readNow(fits, 0);
  return (
    <article className="fit next card" aria-label="Next">
      <FitHead title={`Next, ${placeText(view)}`} fits={fits} read={read} />
      <ScrollBox className="fit-chords">
        {read.map((fit) => (
          <Tones key={fit.at} fit={fit} captioned={fits.length > 1} when="next" />
        ))}
        <Lead from={now} to={view} />
      </ScrollBox>
    </article>
  );
};

/** What to play over the current bar and the next one. */
export const WhatFits = () => {
  const now = useSelected((state) => state.now);
  const next = useSelected((state) => state.next);
  return (
    <section className="fits" aria-label="What fits">
      <NowCard view={now} />
      <NextCard view={next} now={now} />
    </section>
  );
};
