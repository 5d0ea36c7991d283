import { useCallback, useRef } from 'react';
import type { FitChord } from '../../core/fit/fit';
import { CountNumber, useCounting } from '../chart/count-in-sign';
import { ChordText, namesStyle } from '../controls/chord-text';
import { useSelected, useSession } from '../state/session-context';
import { useFrame } from '../state/use-frame';
import { useNames } from '../state/use-names';

/** The beats of the bar, filled as they are heard; with every start and stop they are empty again. */
const BeatDashes = () => {
  const { live } = useSession();
  const beats = useSelected((state) => state.now.tune.chart.meter.beats);
  const playing = useSelected((state) => state.status.kind === 'playing');
  const list = useRef<HTMLSpanElement>(null);
  const draw = useCallback(() => {
    const beat = live.playhead()?.beat ?? -1;
    for (const [i, dash] of [...(list.current?.children ?? [])].entries()) {
      const on = String(i <= beat);
      if (dash.getAttribute('data-on') !== on) dash.setAttribute('data-on', on);
    }
  }, [live]);
  useFrame(playing, draw);
  return (
    <span className="stage-beats" key={String(playing)} ref={list} aria-hidden="true">
      {Array.from({ length: beats }, (_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: beats have no identity but their place
        <i key={i} />
      ))}
    </span>
  );
};

/** A chord as large as its column allows. */
export const LargeChord = ({ fit }: { readonly fit: FitChord }) => {
  const names = useNames();
  return (
    <span className="stage-chord" {...namesStyle([fit], names)}>
      <ChordText chord={fit.chord} />
    </span>
  );
};

/** The chord now; while the band counts in, the number in its place and the chord beneath. */
export const StageNow = ({ fit }: { readonly fit: FitChord }) => {
  const counting = useCounting();
  return (
    <div className="stage-now" data-counting={counting}>
      {counting && (
        <>
          <span className="stage-label">Count-in</span>
          <CountNumber />
        </>
      )}
      <LargeChord fit={fit} />
      <BeatDashes />
    </div>
  );
};
