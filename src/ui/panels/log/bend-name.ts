import { spokenHole } from '../../../core/harp/tab';

/** A sound's id in words: `4 draw bent a semitone`. */
export const bendName = (id: string): string => {
  const [, hole = '', over, breath, bends = ''] = /^(\d+)(O?)([BD])('*)$/.exec(id) ?? [];
  return spokenHole({
    hole: Number(hole),
    breath: breath === 'B' ? 'blow' : 'draw',
    technique: over === 'O' ? 'overbend' : 'bend',
    bend: bends.length,
  });
};
