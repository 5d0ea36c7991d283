import type { Sound } from '../../core/harp/harp';
import { spokenTab, tab } from '../../core/harp/tab';
import { useSelected } from '../state/session-context';

/** One sound as tab in the player's style; screen readers hear it in words. */
export const Tap = ({ sound }: { readonly sound: Sound }) => {
  const style = useSelected((state) => state.settings.tabStyle);
  return (
    <span className="tap" data-technique={sound.technique}>
      <span aria-hidden="true">{tab(sound, style)}</span>
      <span className="unseen">{spokenTab(sound)}</span>
    </span>
  );
};
