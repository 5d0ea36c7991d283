import './stage.css';
import { type ReactNode, useEffect, useRef } from 'react';
import { nextChord } from '../../core/song/next-chord';
import { SetSign } from '../chart/set-sign';
import { namesStyle } from '../controls/chord-text';
import { Guarded } from '../controls/guarded';
import { useSelected, useSession } from '../state/session-context';
import { useBack } from '../state/use-back';
import { useHeldFit } from '../state/use-held-fit';
import { useNames } from '../state/use-names';
import { usePlayingIndex } from '../state/use-playing-chord';
import { StageBar } from './stage-bar';
import { StageHeard } from './stage-heard';
import { StageMap, useStageDrawing } from './stage-map';
import { StageNext } from './stage-next';
import { StageNow } from './stage-now';
import { StagePlain } from './stage-plain';
import { StageSign } from './stage-sign';
import { StageTones } from './stage-tones';

/** The chord now with its tones, and the next one. */
const StageChords = () => {
  const now = useSelected((state) => state.now);
  const next = useSelected((state) => state.next);
  const index = usePlayingIndex();
  const plain = useSelected((state) => state.settings.plainWords);
  const held = useHeldFit();
  const names = useNames();
  const fit = held ?? now.tune.fit.bars[now.bar]?.chords[index];
  if (fit === undefined) throw new RangeError(`Bar ${now.bar} of the chart holds no chord`);
  return (
    <>
      <article className="stage-this" aria-label="Now" {...namesStyle([fit], names)}>
        <StageNow fit={fit} />
        {plain ? <StagePlain fit={fit} /> : <StageTones fit={fit} />}
      </article>
      <StageNext fit={fit} next={nextChord({ now, next }, index)} />
    </>
  );
};

/**
 * The view for playing: what is needed with a harp in the mouth, readable at two metres. The map is for the eye alone
 * here, so that Space plays and stops and a brush of the sleeve sounds nothing. @param children what else is to be said.
 */
export const Stage = ({ children }: { readonly children: ReactNode }) => {
  const { commands } = useSession();
  const drawing = useStageDrawing();
  const view = useRef<HTMLElement>(null);
  useEffect(() => view.current?.focus(), []);
  useBack(commands.leaveStage);
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.key === 'Escape' && !event.defaultPrevented) commands.leaveStage();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [commands]);
  return (
    <section className="stage" aria-label="Stage" tabIndex={-1} ref={view} data-drawing={drawing}>
      <Guarded part="The bar of Stage">
        <StageBar />
      </Guarded>
      <Guarded part="The set">
        <SetSign />
      </Guarded>
      {children}
      <Guarded part="What was heard">
        <StageHeard />
      </Guarded>
      <div className="stage-body">
        <StageSign />
        <Guarded part="The chords">
          <StageChords />
        </Guarded>
        <div className="stage-map" inert>
          <Guarded part="The map of the harp">
            <StageMap />
          </Guarded>
        </div>
      </div>
    </section>
  );
};
