import { useCallback, useState } from 'react';
import type { MarkedSound } from '../../core/fit/mark-sounds';
import { soundId } from '../../core/harp/tab';
import { asMidi } from '../../core/theory/units';
import { useSession } from '../state/session-context';
import type { MapProps } from './map-props';

interface Picking extends Pick<MapProps, 'picked' | 'onListen' | 'onPitch'> {
  readonly letGo: () => void;
}

/** The pitch picked, by a sound or a piano key, which is heard: pressing that again lets it go. */
export const usePicked = (): Picking => {
  const { commands } = useSession();
  const [picked, setPicked] = useState<{ readonly pitch: number; readonly by: string } | null>(null);
  const pick = useCallback(
    (pitch: number, by: string): void =>
      setPicked((before) => (before?.by === by && before.pitch === pitch ? null : { pitch, by })),
    [],
  );
  const onListen = useCallback(
    ({ sound }: MarkedSound): void => {
      pick(sound.pitch, soundId(sound));
      commands.listen(sound);
    },
    [pick, commands],
  );
  const onPitch = useCallback(
    (pitch: number): void => {
      pick(pitch, 'piano');
      commands.listenTo(asMidi(pitch));
    },
    [pick, commands],
  );
  return { picked: picked?.pitch ?? null, onListen, onPitch, letGo: () => setPicked(null) };
};
