import { useCallback, useRef } from 'react';
import type { LevelVerdict } from '../../core/hearing/level-verdict';
import { useSelected, useSession } from '../state/session-context';
import { useFrame } from '../state/use-frame';

/** What the meter says in words. */
const LEVEL_TEXTS: Readonly<Record<LevelVerdict, string>> = {
  nothing: 'nothing arrives',
  waiting: 'play a note',
  quiet: 'too quiet',
  good: 'good',
  clipping: 'clipping',
};

/** The stretch of levels that is drawn, dB re full scale. */
const RANGE = { low: -60, high: 0 } as const;

/** How loud the microphone is: a bar that moves with every note, and a word that seldom changes. */
export const LevelMeter = () => {
  const { live } = useSession();
  const verdict = useSelected((state) => state.ear.level);
  const meter = useRef<HTMLDivElement>(null);
  const draw = useCallback(() => {
    const peak = Math.max(RANGE.low, Math.min(RANGE.high, live.ear.level()?.peak ?? RANGE.low));
    meter.current?.style.setProperty('--level', ((peak - RANGE.low) / (RANGE.high - RANGE.low)).toFixed(3));
  }, [live]);
  useFrame(verdict !== null, draw);
  if (verdict === null) return null;
  return (
    // biome-ignore lint/a11y/useSemanticElements: the browser's own meter could not move without saying so every time
    <div
      className="level"
      ref={meter}
      role="meter"
      aria-label="Level of the microphone"
      aria-valuemin={RANGE.low}
      aria-valuemax={RANGE.high}
      aria-valuenow={Math.round(Math.max(RANGE.low, live.ear.level()?.peak ?? RANGE.low))}
      aria-valuetext={LEVEL_TEXTS[verdict]}
      data-verdict={verdict}
    >
      <span className="level-bar" aria-hidden="true" />
      <span className="level-text">{LEVEL_TEXTS[verdict]}</span>
    </div>
  );
};
