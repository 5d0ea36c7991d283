import { useMemo } from 'react';
import { type MarkedSound, markSounds } from '../../core/fit/mark-sounds';
import { expectedCents } from '../../core/harp/intonation';
import { spellOver } from '../../core/theory/spelling';
import { soundName } from '../controls/sound-name';
import { useSelected } from '../state/session-context';
import { usePlayingChord } from '../state/use-heard-chord';
import { useScaleLayer } from '../state/use-scale-layer';
import type { MapView } from './map-props';

/** What the harp in hand gives over the chord being heard, as the drawings of the harp take it. */
export const useMapView = (): MapView => {
  const { technique, showCents, reference, mirrored } = useSelected((state) => state.settings);
  const { harp, chart } = useSelected((state) => state.now.tune);
  const chord = usePlayingChord();
  const scale = useScaleLayer(chord);
  const { tonic } = chart;
  return useMemo(() => {
    const centsOf = ({ sound }: MarkedSound): number | null =>
      showCents && sound.technique === 'natural' ? expectedCents(sound, reference) : null;
    return {
      marks: markSounds({ harp, chord, tonic, scale, technique }),
      nameOf: (mark) => soundName(mark, tonic),
      spell: spellOver(chord, tonic),
      centsOf,
      degreesOf: 'chord',
      mirrored,
    };
  }, [harp, chord, tonic, scale, technique, showCents, reference, mirrored]);
};
