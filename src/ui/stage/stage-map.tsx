import { useSyncExternalStore } from 'react';
import { HarpDrawing } from '../harp-map/harp-drawing';
import { useMapView } from '../harp-map/use-map-view';
import { useSelected } from '../state/session-context';
import { useLineOfBar } from '../state/use-line-of-bar';
import { useLitSounds } from '../state/use-lit-sounds';

/** Screens too small for the rows of a piano to be told apart. */
const SMALL = '(max-width: 699px), (max-height: 560px)';

const subscribe = (listener: () => void): (() => void) => {
  const query = window.matchMedia(SMALL);
  query.addEventListener('change', listener);
  return () => query.removeEventListener('change', listener);
};

/** The drawing that was chosen on the stand; of two, and on a small screen, the comb, which fits the width. */
export const useStageDrawing = (): 'comb' | 'keys' => {
  const drawing = useSelected((state) => state.settings.drawing);
  const small = useSyncExternalStore(subscribe, () => window.matchMedia(SMALL).matches);
  return drawing === 'keys' && !small ? 'keys' : 'comb';
};

const nothing = (): void => {};

/** The harp, for the eye alone. */
export const StageMap = () => {
  const largeHoles = useSelected((state) => state.settings.largeHoles);
  const kind = useStageDrawing();
  return (
    <HarpDrawing
      key={kind}
      kind={kind}
      {...useMapView()}
      line={useLineOfBar()}
      lit={useLitSounds()}
      largeHoles={largeHoles}
      picked={null}
      onListen={nothing}
      onPitch={nothing}
    />
  );
};
