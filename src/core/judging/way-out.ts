import type { Sound } from '../harp/harp';

/** What to try where a sound is off: one thing to do, never more force. @param cents above it positive. */
export const wayOut = ({ technique }: Pick<Sound, 'technique'>, cents: number): string => {
  if (technique === 'natural') return cents < 0 ? 'breathe more gently there' : 'relax the mouth there';
  if (technique === 'overbend') return cents < 0 ? 'push it up a little' : 'ease it down a little';
  return cents > 0 ? 'let it sink further' : 'stop it a little earlier';
};
