import { type KeyboardEvent, useMemo, useRef, useState } from 'react';
import { expectedCents } from '../core/harp/intonation';
import { type MarkedSound, markSounds } from '../core/harp/mark-sounds';
import type { NoteName } from '../core/theory/chord';
import { spellInKey } from '../core/theory/pitch';
import { asMidi, asPitchClass } from '../core/theory/units';
import { CombMap } from './comb-map';
import { KeysMap } from './keys-map';
import { LinePath } from './line-path';
import { MapHead } from './map-head';
import { soundForKey } from './map-keys';
import { PickedLine } from './picked-line';
import { ScaleLine } from './scale-line';
import { useSelected, useSession } from './session-context';
import { useHeardChord } from './use-heard-chord';
import { useLineOfBar } from './use-line-of-bar';
import { useScaleLayer } from './use-scale-layer';

/** What the whole harp gives over the chord being heard, drawn as a comb or against a piano. */
export const HarpMap = () => {
  const { commands } = useSession();
  const { drawing, technique, showCents, reference } = useSelected((state) => state.settings);
  const { harp, chart } = useSelected((state) => state.now.tune);
  const chord = useHeardChord();
  const scale = useScaleLayer(chord);
  const line = useLineOfBar();
  const map = useRef<HTMLDivElement>(null);
  const [focused, setFocused] = useState(0);
  const [picked, setPicked] = useState<number | null>(null);
  const { tonic } = chart;
  const marks = useMemo(
    () => markSounds({ harp, chord, tonic, scale, technique }),
    [harp, chord, tonic, scale, technique],
  );
  const nameOf = ({ sound, chordTone, scaleTone }: MarkedSound): NoteName =>
    chordTone?.name ?? scaleTone?.name ?? spellInKey(asPitchClass(sound.pitch), chart.tonic);
  const centsOf = ({ sound }: MarkedSound): number | null =>
    showCents && sound.technique === 'natural' ? expectedCents(sound, reference) : null;
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>): void => {
    if (!map.current || !(event.target instanceof HTMLElement)) return;
    const sound = soundForKey(map.current, event.target, event.key);
    if (!sound) return;
    event.preventDefault();
    sound.focus();
    if (!event.key.startsWith('Arrow')) sound.click();
  };
  const Drawn = drawing === 'comb' ? CombMap : KeysMap;
  return (
    <section className="map card" aria-label="Harp map">
      <MapHead />
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the buttons inside take the keys; this only moves the focus among them */}
      <div
        className="drawing"
        ref={map}
        data-own-keys=""
        onKeyDown={onKeyDown}
        onFocus={(event) =>
          setFocused(Math.max(0, [...(map.current?.querySelectorAll('.pill') ?? [])].indexOf(event.target)))
        }
      >
        <Drawn
          marks={marks}
          nameOf={nameOf}
          centsOf={centsOf}
          focused={focused}
          picked={picked}
          onListen={({ sound }) => {
            setPicked(sound.pitch);
            commands.listen(sound);
          }}
          onPitch={(pitch) => {
            setPicked(pitch);
            commands.listenTo(asMidi(pitch));
          }}
        />
        {line && <LinePath drawing={map} ids={line.ids} onward={line.onward} />}
      </div>
      {picked !== null && <PickedLine pitch={picked} tonic={chart.tonic} marks={marks} />}
      {picked === null && scale !== null && <ScaleLine scale={scale} harp={harp} technique={technique} />}
    </section>
  );
};
