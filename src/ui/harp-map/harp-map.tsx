import { type KeyboardEvent, useId, useMemo, useState } from 'react';
import { soundId } from '../../core/harp/tab';
import { asMidi } from '../../core/theory/units';
import { laterView } from '../controls/later-view';
import { createFetched, useHere } from '../state/fetched';
import { useSelected, useSession } from '../state/session-context';
import { useLineOfBar } from '../state/use-line-of-bar';
import { useLitSounds } from '../state/use-lit-sounds';
import { usePlayingChord } from '../state/use-playing-chord';
import { useScaleLayer } from '../state/use-scale-layer';
import { HarpDrawing } from './harp-drawing';
import { LookUpField } from './look-up-field';
import { MapHead } from './map-head';
import { ScaleLine } from './scale-line';
import { useMapView } from './use-map-view';

const PickedLine = laterView(async () => (await import('./picked-line')).PickedLine);

const LOOK_UP = createFetched(() => import('../../core/song/look-up'));
const LookedUp = laterView(async () => (await import('./looked-up')).LookedUp);

/** The pitch picked, and the sound or piano key it was picked by: pressing that again lets it go. */
interface Picked {
  readonly pitch: number;
  readonly by: string;
}

/** What the whole harp gives over the chord being heard or one looked up, as a comb, against a piano, or both ways. */
export const HarpMap = () => {
  const { commands } = useSession();
  const { drawing, technique, largeHoles } = useSelected((state) => state.settings);
  const { harp, chart } = useSelected((state) => state.now.tune);
  const [text, setText] = useState('');
  const [picked, setPicked] = useState<Picked | null>(null);
  const wrongId = useId();
  const reader = useHere(LOOK_UP);
  const lookUp = useMemo(() => reader?.readLookUp(text, chart.tonic) ?? null, [reader, text, chart.tonic]);
  const unread = lookUp?.kind === 'unread' ? lookUp : null;
  const found = lookUp === null || lookUp.kind === 'unread' ? null : lookUp;
  const view = useMapView(found);
  const scale = useScaleLayer(usePlayingChord());
  const line = useLineOfBar();
  const asked = useLitSounds();
  const pick = (pitch: number, by: string): void =>
    setPicked((before) => (before?.by === by && before.pitch === pitch ? null : { pitch, by }));
  const leave = (): void => setText('');
  const letGo = (event: KeyboardEvent<HTMLDivElement>): void => {
    if (event.key !== 'Escape' || (picked === null && text === '')) return;
    event.preventDefault();
    if (picked === null) leave();
    else setPicked(null);
  };
  const kinds = drawing === 'both' ? (['comb', 'keys'] as const) : [drawing];
  return (
    <section className="map card" aria-label="Harp map">
      <MapHead />
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the buttons inside take the keys; Escape lets go what they picked */}
      <div className="drawings" data-drawing={drawing} onKeyDown={letGo}>
        {kinds.map((kind) => (
          <HarpDrawing
            key={kind}
            kind={kind}
            {...view}
            line={found === null ? line : null}
            lit={asked}
            largeHoles={largeHoles}
            picked={picked?.pitch ?? null}
            onListen={({ sound }) => {
              pick(sound.pitch, soundId(sound));
              commands.listen(sound);
            }}
            onPitch={(pitch) => {
              pick(pitch, 'piano');
              commands.listenTo(asMidi(pitch));
            }}
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
        {picked !== null && <PickedLine pitch={picked.pitch} spell={view.spell} marks={view.marks} />}
        {picked === null && lookUp === null && scale !== null && (
          <ScaleLine scale={scale} harp={harp} technique={technique} blues={drawing !== 'keys'} />
        )}
      </div>
    </section>
  );
};
