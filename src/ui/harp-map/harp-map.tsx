import { type KeyboardEvent, useId, useMemo, useRef, useState } from 'react';
import { laterView } from '../controls/later-view';
import { createFetched, useHere } from '../state/fetched';
import { useSelected } from '../state/session-context';
import { useLineOfBar } from '../state/use-line-of-bar';
import { useLitSounds } from '../state/use-lit-sounds';
import { usePlayingChord } from '../state/use-playing-chord';
import { useScaleLayer } from '../state/use-scale-layer';
import { HarpDrawing } from './harp-drawing';
import { LookUpField } from './look-up-field';
import { MapHead } from './map-head';
import { ScaleLine } from './scale-line';
import { useMapView } from './use-map-view';
import { useNextTask } from './use-next-task';
import { usePicked } from './use-picked';

const PickedLine = laterView(async () => (await import('./picked-line')).PickedLine);

const LOOK_UP = createFetched(() => import('../../core/song/look-up'));
const LookedUp = laterView(async () => (await import('./looked-up')).LookedUp);

/** What the whole harp gives over the chord being heard or one looked up, as a comb, against a piano, or both ways. */
export const HarpMap = () => {
  const { drawing, technique, largeHoles } = useSelected((state) => state.settings);
  const { harp, chart } = useSelected((state) => state.now.tune);
  const [text, setText] = useState('');
  const { picked, onListen, onPitch, letGo: letPickedGo } = usePicked();
  const wrongId = useId();
  const reader = useHere(LOOK_UP);
  const lookUp = useMemo(() => reader?.readLookUp(text, chart.tonic) ?? null, [reader, text, chart.tonic]);
  const unread = lookUp?.kind === 'unread' ? lookUp : null;
  const found = lookUp === null || lookUp.kind === 'unread' ? null : lookUp;
  const view = useMapView(found);
  const scale = useScaleLayer(usePlayingChord());
  const line = useLineOfBar();
  const asked = useLitSounds();
  const place = useRef<HTMLElement>(null);
  const drawn = useNextTask(
    useMemo(() => ({ view, line: found === null ? line : null }), [view, line, found]),
    place,
  );
  const leave = (): void => setText('');
  const letGo = (event: KeyboardEvent<HTMLDivElement>): void => {
    if (event.key !== 'Escape' || (picked === null && text === '')) return;
    event.preventDefault();
    if (picked === null) leave();
    else letPickedGo();
  };
  const kinds = drawing === 'both' ? (['comb', 'keys'] as const) : [drawing];
  return (
    <section className="map card" aria-label="Harp map" ref={place}>
      <MapHead />
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the buttons inside take the keys; Escape lets go what they picked */}
      <div className="drawings" data-drawing={drawing} onKeyDown={letGo}>
        {kinds.map((kind) => (
          <HarpDrawing
            key={kind}
            kind={kind}
            {...drawn.view}
            line={drawn.line}
            lit={asked}
            largeHoles={largeHoles}
            picked={picked}
            onListen={onListen}
            onPitch={onPitch}
          />
        ))}
      </div>
      {found !== null && <LookedUp found={found} marks={view.marks} onLeave={leave} />}
      <div className="map-foot">
        <LookUpField text={text} wrong={unread && wrongId} onType={setText} onLeave={leave} />
        {unread !== null && (
          <p className="wrong" id={wrongId} role="status">
            {unread.sentence}
          </p>
        )}
        {picked !== null && <PickedLine pitch={picked} spell={view.spell} marks={view.marks} />}
        {picked === null && lookUp === null && scale !== null && (
          <ScaleLine scale={scale} harp={harp} technique={technique} blues={drawing !== 'keys'} />
        )}
      </div>
    </section>
  );
};
