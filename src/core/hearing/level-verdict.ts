/** What a player should know about the level of the microphone. */
export type LevelVerdict =
  /** Not a sound arrives: a microphone in a quiet room hears at least itself. */
  | 'nothing'
  /** Nothing as loud as a harp yet. */
  | 'waiting'
  | 'quiet'
  | 'good'
  | 'clipping';

/** Peaks by which levels are judged, dB re full scale (common practice, no source). */
const EDGES = { nothing: -110, harp: -46, quiet: -32, clipping: -0.5 } as const;
/** Seconds a peak stays in mind: some notes. */
const MEMORY = 4;
/** Dead silence for so long means that nothing arrives. */
const DEAD = 1.5;

/** Says of the level of a microphone whether it is right. */
export interface LevelJudge {
  /** Takes the peak, in dB re full scale, of the latest stretch, of so many seconds. */
  take(peak: number, seconds: number): LevelVerdict;
}

/** A judge of one stream. */
export const createLevelJudge = (): LevelJudge => {
  let peaks: { readonly peak: number; readonly at: number }[] = [];
  let now = 0;
  let lastAlive = 0;
  return {
    take: (peak, seconds) => {
      now += seconds;
      if (peak > EDGES.nothing) lastAlive = now;
      if (now - lastAlive >= DEAD) return 'nothing';
      peaks = [...peaks.filter(({ at }) => at > now - MEMORY), { peak, at: now }];
      const top = Math.max(...peaks.map((each) => each.peak));
      if (top >= EDGES.clipping) return 'clipping';
      if (top >= EDGES.quiet) return 'good';
      return top >= EDGES.harp ? 'quiet' : 'waiting';
    },
  };
};
