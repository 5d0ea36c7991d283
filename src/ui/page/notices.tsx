import { useLayoutEffect, useRef } from 'react';
import { laterView } from '../controls/later-view';
import { useSelected, useSession } from '../state/session-context';

const NewVersion = laterView(async () => (await import('./new-version')).NewVersion);

const HeldChoices = laterView(async () => (await import('./held-choices')).HeldChoices);

const LinkedSong = laterView(async () => (await import('./linked-song')).LinkedSong);

/** Sentences for the player, each until it is closed or no longer true. */
export const Notices = () => {
  const { commands } = useSession();
  const notices = useSelected((state) => state.notices);
  const list = useRef<HTMLDivElement>(null);
  // The stand gives way for them: laid out in their own task, not with what comes after.
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever there are others
  useLayoutEffect(() => void list.current?.getBoundingClientRect(), [notices]);
  return (
    <div className="notices" role="status" ref={list}>
      {notices.map(({ id, tone, text }) => (
        <div key={id} className="notice" data-tone={tone}>
          <p>{text}</p>
          <button type="button" className="tool" onClick={() => commands.dismiss(id)}>
            Got it
          </button>
        </div>
      ))}
      <LinkedSong />
      <HeldChoices />
      <NewVersion />
    </div>
  );
};
