import { type KeyboardEvent, useState } from 'react';
import { soundId } from '../../core/harp/tab';
import { asMidi } from '../../core/theory/units';
import { useSelected, useSession } from '../state/session-context';
import { usePlayingChord } from '../state/use-heard-chord';
import { useLineOfBar } from '../state/use-line-of-bar';
import { useScaleLayer } from '../state/use-scale-layer';
import { HarpDrawing } from './harp-drawing';
import { MapHead } from './map-head';
import { PickedLine } from './picked-line';
import { ScaleLine } from './scale-line';
import { useMapView } from './use-map-view';

/** The pitch picked, and the sound or piano key it was picked by: pressing that again lets it go. */
interface Picked {
  readonly pitch: number;
  readonly by: string;
}

/** What the whole harp gives over the chord being heard, drawn as a comb, against a piano, or both ways. */
export const HarpMap = () => {
  const { commands } = useSession();
  const { drawing, technique, largeHoles } = useSelected((state) => state.settings);
  const harp = useSelected((state) => state.now.tune.harp);
  const view = useMapView();
  const scale = useScaleLayer(usePlayingChord());
  const line = useLineOfBar();
  const [picked, setPicked] = useState<Picked | null>(null);
  const pick = (pitch: number, by: string): void =>
    setPicked((before) => (before?.by === by && before.pitch === pitch ? null : { pitch, by }));
  const letGo = (event: KeyboardEvent<HTMLDivElement>): void => {
    if (event.key !== 'Escape' || picked === null) return;
    event.preventDefault();
    setPicked(null);
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
            line={line}
            lit={null}
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
      {picked !== null && <PickedLine pitch={picked.pitch} spell={view.spell} marks={view.marks} />}
      {picked === null && scale !== null && (
        <ScaleLine scale={scale} harp={harp} technique={technique} blues={drawing !== 'keys'} />
      )}
    </section>
  );
};
