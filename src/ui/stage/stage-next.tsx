import { useCallback, useRef } from 'react';
import type { FitChord } from '../../core/fit/fit';
import { type GuideMove, guideMoves, moveWord } from '../../core/fit/guide-moves';
import type { NextChord } from '../../core/song/next-chord';
import { degreeText } from '../../core/theory/note-names';
import { keyName } from '../../core/theory/pitch';
import { counted } from '../../core/theory/wording';
import { Tap } from '../controls/tap';
import { useSelected, useSession } from '../state/session-context';
import { useFrame } from '../state/use-frame';
import { useNames } from '../state/use-names';
import { useNextHarp } from '../state/use-next-harp';
import { useSectionAhead } from '../state/use-section-ahead';
import { LargeChord } from './stage-now';

const beatsText = (beats: number): string => `in ${counted(beats, 'beat')}`;

/** How long until the change, counted down as it is heard, and whole again when the band stops. */
const Until = ({ after }: { readonly after: number }) => {
  const { live } = useSession();
  const { tune, bar } = useSelected((state) => state.now);
  const playing = useSelected((state) => state.status.kind === 'playing');
  const { bars, meter } = tune.chart;
  const start = bars[bar]?.at ?? 0;
  const text = useRef<HTMLSpanElement>(null);
  const draw = useCallback(() => {
    const playhead = live.playhead();
    if (playhead === null || playhead.bar !== bar || text.current === null) return;
    const beats = Math.max(1, Math.ceil((start + after - playhead.ticks) / meter.beatTicks));
    if (text.current.textContent !== beatsText(beats)) text.current.textContent = beatsText(beats);
  }, [live, bar, start, after, meter]);
  useFrame(playing, draw);
  return (
    <span key={String(playing)} ref={text}>
      {beatsText(Math.max(1, Math.ceil(after / meter.beatTicks)))}
    </span>
  );
};

const moveLabel = ({ from, step, to }: GuideMove): string =>
  `${degreeText(from.degree)} ${moveWord(step)} ${degreeText(to.degree)}`;

const Move = ({ move, label }: { readonly move: GuideMove; readonly label: string }) => (
  <li>
    {label !== '' && <span className="stage-label">{label}</span>}
    <span className="stage-move">
      <Tap sound={move.from} /> <span aria-hidden="true">→</span>
      <span className="unseen">to</span> <Tap sound={move.to} />
    </span>
  </li>
);

/** What moves into the next chord, or the harp to take for it. */
const Lead = ({ fit, next }: { readonly fit: FitChord; readonly next: NextChord }) => {
  const harpKey = useSelected((state) => state.now.tune.harp.key);
  const names = useNames();
  const plain = useSelected((state) => state.settings.plainWords);
  if (next.tune.harp.key !== harpKey)
    return (
      <p className="stage-harp" data-near="true">
        Take the <strong>{names.key(keyName(next.tune.harp.key, 'major'))} harp</strong>
      </p>
    );
  return (
    <ul className="stage-moves">
      {guideMoves(fit, next.fit).map((move, i) => (
        <Move
          key={move.from.id}
          move={move}
          label={plain ? (i === 0 ? 'Resolves to' : '') : moveLabel(move)}
        />
      ))}
    </ul>
  );
};

/** The next chord: when it comes, what moves into it, and the next harp where the key moves. */
export const StageNext = ({ fit, next }: { readonly fit: FitChord; readonly next: NextChord | null }) => {
  const harp = useNextHarp();
  const section = useSectionAhead();
  const ends = useSelected((state) => state.next === null);
  const counting = useSelected((state) => state.now.kind === 'count-in');
  const inHand = useSelected((state) => state.now.tune.harp.key);
  // Where the next chord has another harp already, that is said beside it.
  const told = next !== null && next.tune.harp.key !== inHand;
  return (
    <article className="stage-next" aria-label="Next">
      {next === null ? (
        <p className="stage-label">{counting ? '' : ends ? 'The song ends here.' : 'The chord stays.'}</p>
      ) : (
        <>
          <p className="stage-label">
            Next, <Until key={`${next.after}`} after={next.after} />
          </p>
          <LargeChord fit={next.fit} />
          <Lead fit={fit} next={next} />
        </>
      )}
      {harp !== null && !told && (
        <p className="stage-harp" data-near={harp.near} aria-live="polite">
          Next chorus: <strong>{harp.name}</strong>
        </p>
      )}
      {harp === null && section !== null && (
        <p className="stage-harp" aria-live="polite">
          <strong>{section.what}</strong>: {section.short.position}
          {section.short.harp !== null && <span className="stage-or">, or the {section.short.harp}</span>}
        </p>
      )}
    </article>
  );
};
