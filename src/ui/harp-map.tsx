import { type KeyboardEvent, useMemo, useRef, useState } from 'react';
import { expectedCents } from '../core/harp/intonation';
import { type MarkedSound, markSounds } from '../core/harp/mark-sounds';
import { soundId } from '../core/harp/tab';
import type { Drawing } from '../core/settings/settings';
import type { NoteName } from '../core/theory/chord';
import { spellInKey } from '../core/theory/pitch';
import { SCALE_IDS, scaleName, scaleOf } from '../core/theory/scales';
import { asPitchClass } from '../core/theory/units';
import { Choice } from './choice';
import { CombMap } from './comb-map';
import { KeysMap } from './keys-map';
import { LinePath } from './line-path';
import { usePractice } from './practice-context';
import { ScaleLine } from './scale-line';
import { useSelected, useSession } from './session-context';
import { useHeardChord } from './use-heard-chord';

const DRAWINGS: readonly { readonly id: Drawing; readonly text: string }[] = [
  { id: 'comb', text: 'Comb' },
  { id: 'keys', text: 'Keys' },
];

const LAYERS = [
  { value: 'none', text: 'Chord tones only' },
  ...SCALE_IDS.map((id) => ({ value: id as string, text: scaleName(id) })),
];

const TECHNIQUES = [
  { field: 'drawBends', text: 'Draw bends' },
  { field: 'blowBends', text: 'Blow bends' },
  { field: 'overbends', text: 'Overbends' },
] as const;

const MapHead = () => {
  const { commands } = useSession();
  const { drawing, technique, layer } = useSelected((state) => state.settings);
  return (
    <header>
      <h2 className="unseen">Harp map</h2>
      <fieldset className="segments" aria-label="Drawing">
        {DRAWINGS.map(({ id, text }) => (
          <button
            key={id}
            type="button"
            aria-pressed={drawing === id}
            onClick={() => commands.choose({ drawing: id })}
          >
            {text}
          </button>
        ))}
      </fieldset>
      <fieldset className="segments" aria-label="Techniques you use">
        {TECHNIQUES.map(({ field, text }) => (
          <button
            key={field}
            type="button"
            aria-pressed={technique[field]}
            onClick={() => commands.choose({ technique: { ...technique, [field]: !technique[field] } })}
          >
            {text}
          </button>
        ))}
      </fieldset>
      <Choice
        label="Scale"
        value={layer}
        options={LAYERS}
        onChoose={(value) => commands.choose({ layer: value })}
      />
    </header>
  );
};

/** Moves the focus among the sounds of the map by arrow keys: to the nearest one in that direction. */
const nearestSound = (map: HTMLElement, from: Element, key: string): HTMLElement | null => {
  const here = from.getBoundingClientRect();
  const across = key === 'ArrowLeft' || key === 'ArrowRight';
  const sign = key === 'ArrowRight' || key === 'ArrowDown' ? 1 : -1;
  const ranked = [...map.querySelectorAll<HTMLElement>('.pill')].flatMap((pill) => {
    const there = pill.getBoundingClientRect();
    const x = (there.left + there.width / 2 - here.left - here.width / 2) * sign;
    const y = (there.top + there.height / 2 - here.top - here.height / 2) * sign;
    const [along, aside] = across ? [x, Math.abs(y)] : [y, Math.abs(x)];
    return along > 2 ? [{ pill, cost: along + aside * 3 }] : [];
  });
  return ranked.sort((a, b) => a.cost - b.cost)[0]?.pill ?? null;
};

/** What the whole harp gives over the chord being heard, drawn as a comb or against a piano. */
export const HarpMap = () => {
  const { commands } = useSession();
  const { drawing, technique, layer, showCents, reference } = useSelected((state) => state.settings);
  const { harp, chart } = useSelected((state) => state.now.tune);
  const { line } = usePractice();
  const now = useSelected((state) => state.now.formBar);
  const next = useSelected((state) => state.next?.formBar ?? null);
  const whole = useSelected((state) => state.tune.chart);
  const idsOfBar = (index: number | null): readonly string[] => {
    const bar = index === null ? undefined : whole.bars[index];
    if (!bar || !line) return [];
    return line.notes
      .filter(({ at }) => at >= bar.at && at < bar.at + bar.length)
      .map(({ sound }) => soundId(sound));
  };
  const chord = useHeardChord();
  const map = useRef<HTMLDivElement>(null);
  const [focused, setFocused] = useState(0);
  const scale = useMemo(() => {
    const id = SCALE_IDS.find((each) => each === layer);
    return id === undefined ? null : scaleOf(id, chart.tonic);
  }, [layer, chart.tonic]);
  const marks = useMemo(() => markSounds({ harp, chord, scale, technique }), [harp, chord, scale, technique]);
  const nameOf = ({ sound, chordTone, scaleTone }: MarkedSound): NoteName =>
    chordTone?.name ?? scaleTone?.name ?? spellInKey(asPitchClass(sound.pitch), chart.tonic);
  const centsOf = ({ sound }: MarkedSound): number | null =>
    showCents && sound.technique === 'natural' ? expectedCents(sound, reference) : null;
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>): void => {
    if (!event.key.startsWith('Arrow') || !map.current || !(event.target instanceof HTMLElement)) return;
    event.preventDefault();
    nearestSound(map.current, event.target, event.key)?.focus();
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
          setFocused([...(map.current?.querySelectorAll('.pill') ?? [])].indexOf(event.target))
        }
      >
        <Drawn
          marks={marks}
          nameOf={nameOf}
          centsOf={centsOf}
          focused={Math.max(0, focused)}
          onListen={({ sound }) => commands.listen(sound)}
        />
        {line && <LinePath drawing={map} ids={idsOfBar(now)} onward={idsOfBar(next)[0] ?? null} />}
      </div>
      {scale !== null && <ScaleLine scale={scale} harp={harp} technique={technique} />}
    </section>
  );
};
