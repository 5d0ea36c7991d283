import { useCallback, useRef } from 'react';
import type { BarRange } from '../../core/chart/chart';
import { useSelected, useSession } from '../state/session-context';
import { isStill, useFrame } from '../state/use-frame';

/** A ring that empties while a turn goes by, with the beats that are left in it. Written as it is heard. */
export const TurnRing = ({ span }: { readonly span: BarRange }) => {
  const { live } = useSession();
  const playing = useSelected((state) => state.status.kind === 'playing');
  const { bars, meter } = useSelected((state) => state.now.tune.chart);
  const ring = useRef<SVGCircleElement>(null);
  const number = useRef<SVGTextElement>(null);
  const from = bars[span.from]?.at ?? 0;
  const last = bars[span.to];
  const until = last === undefined ? from : last.at + last.length;
  const beatsIn = (ticks: number): number => Math.ceil(ticks / meter.beatTicks);
  const draw = useCallback(() => {
    const playhead = live.playhead();
    if (playhead === null || ring.current === null || number.current === null) return;
    const left = Math.min(until - from, Math.max(0, until - playhead.ticks));
    const beats = Math.ceil(left / meter.beatTicks);
    const shown = isStill() ? beats * meter.beatTicks : left;
    ring.current.style.strokeDashoffset = String(1 - shown / (until - from || 1));
    if (number.current.textContent !== String(beats)) number.current.textContent = String(beats);
  }, [live, from, until, meter]);
  useFrame(playing, draw);
  return (
    <svg className="ring" viewBox="0 0 100 100" aria-hidden="true">
      <circle className="ring-way" cx="50" cy="50" r="42" />
      <circle className="ring-left" cx="50" cy="50" r="42" pathLength="1" ref={ring} />
      <text x="50" y="50" ref={number}>
        {beatsIn(until - from)}
      </text>
    </svg>
  );
};
