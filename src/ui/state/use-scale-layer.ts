import { useMemo } from 'react';
import { positionAt, positionOf } from '../../core/harp/positions';
import type { Chord, NoteName } from '../../core/theory/chord';
import { pitchClassOf } from '../../core/theory/pitch';
import { chordScale, SCALE_IDS, type Scale, scaleOf } from '../../core/theory/scales';
import { useSelected } from './session-context';
import { useTonic } from './use-tonic';

const layerOf = (layer: string, position: number, tonic: NoteName, chord: Chord): Scale | null => {
  if (layer === 'chord') return chordScale(chord);
  const id = layer === 'position' ? positionAt(position).mode : SCALE_IDS.find((each) => each === layer);
  return id === undefined || id === null ? null : scaleOf(id, tonic);
};

/** The scale shown under the chord tones: of the key, of the position, or of the chord being heard. */
export const useScaleLayer = (chord: Chord): Scale | null => {
  const layer = useSelected((state) => state.settings.layer);
  const tonic = useTonic();
  const harp = useSelected((state) => state.now.tune.harp.key);
  const position = positionOf(harp, pitchClassOf(tonic));
  return useMemo(() => layerOf(layer, position, tonic, chord), [layer, position, tonic, chord]);
};
