import { useCallback, useEffect, useMemo, useState } from 'react';
import type { Sound } from '../../core/harp/harp';
import { useHere } from './fetched';
import { PRACTICE_WORK } from './practice-context';
import { useSelected, useSession } from './session-context';
import { useFrame } from './use-frame';
import { useTradingTurn } from './use-turn';

const NONE: readonly Sound[] = [];

/** The note of a call to play now: as the harp voice plays it, and at the same place of the answer. */
export const useCallNote = (): readonly Sound[] => {
  const { live } = useSession();
  const turn = useTradingTurn();
  const playing = useSelected((state) => state.status.kind === 'playing' && state.now.formBar !== null);
  const { harp, chart } = useSelected((state) => state.now.tune);
  const phrase = turn?.call?.phrase;
  const work = useHere(PRACTICE_WORK);
  const notes = useMemo(
    () => (phrase === undefined || work === null ? [] : work.onHarp(phrase, harp).notes),
    [phrase, harp, work],
  );
  const start = turn === null ? undefined : chart.bars[turn.span.from]?.at;
  const [sounds, setSounds] = useState(NONE);
  const follow = useCallback(() => {
    const playhead = live.playhead();
    if (playhead === null || start === undefined) return;
    const at = playhead.ticks - start;
    const note = notes.find((each) => at >= each.at && at < each.at + each.length);
    setSounds(note?.sounds ?? NONE);
  }, [live, notes, start]);
  const running = playing && notes.length > 0;
  useFrame(running, follow);
  useEffect(() => {
    if (!running) setSounds(NONE);
  }, [running]);
  return running ? sounds : NONE;
};
