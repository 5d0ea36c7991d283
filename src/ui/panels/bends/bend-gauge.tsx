import { type CSSProperties, useCallback, useRef } from 'react';
import type { BendTask } from '../../../core/bends/bend-exercise';
import { floorOf } from '../../../core/bends/bend-targets';
import { tab } from '../../../core/harp/tab';
import { centsBetween } from '../../../core/theory/temperament';
import { asHz } from '../../../core/theory/units';
import { useSelected, useSession } from '../../state/session-context';
import { useFrame } from '../../state/use-frame';

/** Cents that are seen beyond the lowest and highest mark. */
const BEYOND = { bend: 60, overbend: 150 } as const;
/** A pitch that was lost stays in sight so long, in ms, that gaps do not flicker. */
const STAYS = 200;

/** A place on the gauge: 0 at its lower end, 1 at its upper. */
const placeOf = (cents: number, low: number, high: number): number => (cents - low) / (high - low);

interface Mark {
  readonly kind: 'natural' | 'floor' | 'step';
  readonly cents: number;
  readonly text: string;
}

const useMarks = (task: BendTask): readonly Mark[] => {
  const { harp } = useSelected((state) => state.tune);
  const style = useSelected((state) => state.settings.tabStyle);
  const { target, sounds } = task;
  if (target.technique === 'overbend') return [];
  const floor = floorOf(target, harp);
  return sounds.flatMap(({ sound, cents }): readonly Mark[] => {
    const { hole, breath, technique, bend } = sound;
    if (hole !== target.hole || breath !== target.breath || sound === target) return [];
    if (technique === 'natural') return [{ kind: 'natural', cents, text: `${tab(sound, style)} plain` }];
    if (technique !== 'bend') return [];
    const deepest = floor?.bend === bend;
    return [
      { kind: deepest ? 'floor' : 'step', cents, text: `${tab(sound, style)}${deepest ? ' floor' : ''}` },
    ];
  });
};

interface Props {
  readonly task: BendTask;
  /** Whether there is something to be heard. */
  readonly live: boolean;
  /** Where the last try stood, in cents from the target; null where it did not. */
  readonly stood: number | null;
}

/**
 * The way of a bend, from its natural note down to its floor, with the target as wide as what counts as right; a bar
 * moves where the pitch is. Drawn past React, once a frame; the verdict says the same in words.
 */
export const BendGauge = ({ task, live, stood }: Props) => {
  const { live: ears } = useSession();
  const style = useSelected((state) => state.settings.tabStyle);
  const needle = useRef<HTMLSpanElement>(null);
  const lost = useRef(0);
  const marks = useMarks(task);
  const beyond = BEYOND[task.target.technique === 'overbend' ? 'overbend' : 'bend'];
  const all = [...marks.map(({ cents }) => cents), task.tolerance, -task.tolerance];
  const low = Math.min(...all) - beyond;
  const high = Math.max(...all) + beyond;
  const { hz } = task;
  const draw = useCallback(() => {
    const bar = needle.current;
    if (bar === null) return;
    const frequency = ears.ear.frame()?.frequency ?? 0;
    const now = performance.now();
    if (frequency > 0) {
      lost.current = now;
      const at = placeOf(centsBetween(hz, asHz(frequency)), low, high);
      bar.style.bottom = `${100 * Math.min(1, Math.max(0, at))}%`;
    }
    bar.hidden = now - lost.current > STAYS;
  }, [ears, hz, low, high]);
  useFrame(live, draw);
  const at = (cents: number): CSSProperties => ({ bottom: `${100 * placeOf(cents, low, high)}%` });
  return (
    <div className="bend-gauge" aria-hidden="true">
      {marks.map(({ kind, cents, text }) => (
        <span key={text} className="bend-mark" data-kind={kind} style={at(cents)}>
          <i>{text}</i>
        </span>
      ))}
      <span
        className="bend-zone"
        style={{
          ...at(-task.tolerance),
          height: `${(100 * 2 * task.tolerance) / (high - low)}%`,
        }}
      />
      <span className="bend-mark" data-kind="target" style={at(0)}>
        <i>{tab(task.target, style)}</i>
      </span>
      {stood !== null && <span className="bend-stood" style={at(stood)} />}
      <span className="bend-needle" ref={needle} hidden />
    </div>
  );
};
