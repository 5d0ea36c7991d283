import { HarpDrawing } from '../harp-map/harp-drawing';
import { useMapView } from '../harp-map/use-map-view';
import { useSelected } from '../state/session-context';
import { useLineOfBar } from '../state/use-line-of-bar';
import { useLitSounds } from '../state/use-lit-sounds';
import { useNarrow } from '../state/use-narrow';

/** The drawing that was chosen on the stand; of two, and on a small screen, the comb, which fits the width. */
export const useStageDrawing = (): 'comb' | 'keys' => {
  const drawing = useSelected((state) => state.settings.drawing);
  const small = useNarrow();
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
