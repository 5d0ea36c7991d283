import { type KeyboardEvent, memo, useEffect, useRef, useState } from 'react';
import { laterView } from '../controls/later-view';
import { createFetched } from '../state/fetched';
import { CombMap } from './comb-map';
import type { MapProps } from './map-props';

/** Where keys lead, which nobody presses before the map is drawn. */
const MAP_KEYS = createFetched(() => import('./map-keys'));

const HeardMarks = laterView(async () => (await import('../ear/heard-marks')).HeardMarks);

const KeysDrawing = laterView(async () => (await import('./keys-drawing')).KeysDrawing);
const LinePath = laterView(async () => (await import('../controls/line-path')).LinePath);

interface Props extends Omit<MapProps, 'focused'> {
  readonly kind: 'comb' | 'keys';
  /** The line through the map: the bar's sounds in playing order, and where it leads; null for none. */
  readonly line: { readonly ids: readonly string[]; readonly onward: string | null } | null;
  /** Whether hole numbers are in large print. */
  readonly largeHoles: boolean;
}

/** Where a drawing higher than its room begins: at its middle, or at the sound asked for. */
const showSound = (room: HTMLElement, id: string | null): void => {
  const pill = id === null ? null : room.querySelector(`[data-sound="${CSS.escape(id)}"]`);
  if (pill === null) return;
  const [outer, inner] = [room.getBoundingClientRect(), pill.getBoundingClientRect()];
  const seen = inner.top > outer.top + outer.height * 0.15 && inner.bottom < outer.bottom - 4;
  if (!seen) room.scrollTop += (inner.top + inner.bottom - outer.top - outer.bottom) / 2;
};

/**
 * One drawing of the harp. It takes the width and the height it is given, its letters with it, and scrolls by itself
 * where they would become too small; what is lit, or begins the line, is kept in view.
 */
export const HarpDrawing = memo(({ kind, line, largeHoles, ...given }: Props) => {
  const room = useRef<HTMLDivElement>(null);
  const map = useRef<HTMLDivElement>(null);
  const [focused, setFocused] = useState(0);
  const wanted = given.lit[0] ?? line?.ids[0] ?? null;
  useEffect(() => {
    const element = room.current;
    if (element) element.scrollTop = (element.scrollHeight - element.clientHeight) / 2;
  }, []);
  useEffect(() => {
    if (room.current) showSound(room.current, wanted);
  }, [wanted]);
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>): void => {
    if (!map.current || !(event.target instanceof HTMLElement)) return;
    const sound = MAP_KEYS.here()?.soundForKey(map.current, event.target, event.key);
    if (!sound) return;
    event.preventDefault();
    sound.focus();
    if (!event.key.startsWith('Arrow')) sound.click();
  };
  return (
    <div className="drawing" ref={room} data-kind={kind} data-large-holes={largeHoles}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the buttons inside take the keys; this only moves the focus among them */}
      <div
        className="drawn"
        ref={map}
        data-own-keys=""
        onKeyDown={onKeyDown}
        onFocus={(event) =>
          setFocused(Math.max(0, [...(map.current?.querySelectorAll('.pill') ?? [])].indexOf(event.target)))
        }
      >
        {kind === 'comb' ? (
          <CombMap {...given} focused={focused} />
        ) : (
          <KeysDrawing {...given} focused={focused} room={room} />
        )}
        {line && <LinePath drawing={map} ids={line.ids} onward={line.onward} />}
        <HeardMarks drawing={map} />
      </div>
    </div>
  );
});
