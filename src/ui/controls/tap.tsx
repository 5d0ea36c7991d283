import type { Sound } from '../../core/harp/harp';
import { spokenTab, tab } from '../../core/harp/tab';
import { useSelected } from '../state/session-context';
import { type Meaning, useBeside } from '../state/use-beside';

interface Props {
  readonly sound: Sound;
  /** Given where nothing else near the tab says it. */
  readonly meaning?: Meaning;
}

/** One sound as tab in the player's style; screen readers hear it in words. */
export const Tap = ({ sound, meaning }: Props) => {
  const style = useSelected((state) => state.settings.tabStyle);
  const besideOf = useBeside();
  const beside = meaning === undefined ? '' : besideOf(meaning);
  return (
    <span className="tap" data-technique={sound.technique}>
      <span aria-hidden="true">{tab(sound, style)}</span>
      <span className="unseen">{spokenTab(sound)}</span>
      {beside !== '' && <small className="beside">{beside}</small>}
    </span>
  );
};
