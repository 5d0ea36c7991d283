import { type KeyboardEvent, useMemo, useRef, useState } from 'react';
import { type MarkedSound, markSounds } from '../../core/fit/mark-sounds';
import { expectedCents } from '../../core/harp/intonation';
import { soundId } from '../../core/harp/tab';
import { spellOver } from '../../core/theory/spelling';
import { asMidi } from '../../core/theory/units';
import { LinePath } from '../controls/line-path';
import { soundForKey } from '../controls/map-keys';
import { soundName } from '../controls/sound-name';
import { useSelected, useSession } from '../state/session-context';
import { usePlayingChord } from '../state/use-heard-chord';
import { useLineOfBar } from '../state/use-line-of-bar';
import { useScaleLayer } from '../state/use-scale-layer';
import { CombMap } from './comb-map';
import { KeysMap } from './keys-map';
import { MapHead } from './map-head';
import { PickedLine } from './picked-line';
import { ScaleLine } from './scale-line';

/** The pitch picked, and the sound or piano key it was picked by: pressing that again lets it go. */
interface Picked {
  readonly pitch: number;
  readonly by: string;
}

/** What the whole harp gives over the chord being heard, drawn as a comb or against a piano. */
export const HarpMap = () => {
  const { commands } = useSession();
  const { drawing, technique, showCents, reference } = useSelected((state) => state.settings);
  const { harp, chart } = useSelected((state) => state.now.tune);
  const chord = usePlayingChord();
  const scale = useScaleLayer(chord);
  const line = useLineOfBar();
  const map = useRef<HTMLDivElement>(null);
  const [focused, setFocused] = useState(0);
  const [picked, setPicked] = useState<Picked | null>(null);
  const { tonic } = chart;
  const marks = useMemo(
    () => markSounds({ harp, chord, tonic, scale, technique }),
    [harp, chord, tonic, scale, technique],
  );
  const spell = spellOver(chord, tonic);
  const centsOf = ({ sound }: MarkedSound): number | null =>
    showCents && sound.technique === 'natural' ? expectedCents(sound, reference) : null;
  const pick = (pitch: number, by: string): void =>
    setPicked((before) => (before?.by === by && before.pitch === pitch ? null : { pitch, by }));
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>): void => {
    if (event.key === 'Escape' && picked !== null) {
      event.preventDefault();
      setPicked(null);
      return;
    }
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
          nameOf={(mark) => soundName(mark, tonic)}
          spell={spell}
          centsOf={centsOf}
          focused={focused}
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
        {line && <LinePath key={drawing} drawing={map} ids={line.ids} onward={line.onward} />}
      </div>
      {picked !== null && <PickedLine pitch={picked.pitch} spell={spell} marks={marks} />}
      {picked === null && scale !== null && (
        <ScaleLine scale={scale} harp={harp} technique={technique} blues={drawing === 'comb'} />
      )}
    </section>
  );
};
