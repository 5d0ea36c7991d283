import { useEffect, useRef, useState } from 'react';
import { TURN_WORDS } from '../../core/practice/trade-modes';
import { announcementOf, type HeardBar } from '../../core/song/announcement';
import type { BarView } from '../../core/song/bar-view';
import { usePractice } from '../state/practice-context';
import { useSelected } from '../state/session-context';
import { useNames } from '../state/use-names';

/** A choice made within a bar is told with the next one, so that nothing is said faster than the bars go by. */
const isSameBar = (before: HeardBar | null, { bar, chorus, kind }: BarView): boolean =>
  before !== null && before.view.bar === bar && before.view.chorus === chorus && before.view.kind === kind;

/** Tells screen readers what is new in the bar that begins, where the player asked for it: at most once a bar. */
export const Announcer = () => {
  const wish = useSelected((state) => state.settings.announcements);
  const playing = useSelected((state) => state.status.kind === 'playing' && state.warmUp === null);
  const now = useSelected((state) => state.now);
  const { trading } = usePractice();
  const names = useNames();
  const turn = now.formBar === null ? undefined : trading?.turns[now.formBar];
  const before = useRef<HeardBar | null>(null);
  const [text, setText] = useState('');
  useEffect(() => {
    if (!playing) {
      before.current = null;
      return setText('');
    }
    if (now.kind === 'rest' || isSameBar(before.current, now)) return;
    const heard: HeardBar = { view: now, turn: turn === undefined ? null : TURN_WORDS[turn] };
    const said = announcementOf(wish, heard, before.current, names);
    before.current = heard;
    if (said !== '') setText(said);
  }, [playing, now, wish, turn, names]);
  const taken = useSelected((state) => state.taken);
  return (
    <>
      <p className="unseen" role="status" aria-label="Undo">
        {taken}
      </p>
      <p className="unseen" role="status" aria-label="Announcements">
        {wish === 'off' ? '' : text}
      </p>
    </>
  );
};
