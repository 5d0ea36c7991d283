import { useMemo } from 'react';
import { type MarkedSound, markSounds } from '../../core/fit/mark-sounds';
import { expectedCents } from '../../core/harp/intonation';
import type { LookUp } from '../../core/song/look-up';
import { plainName, type Spell, spellOver } from '../../core/theory/spelling';
import { soundName } from '../controls/sound-name';
import { useSelected } from '../state/session-context';
import { usePlayingChord } from '../state/use-playing-chord';
import { useScaleLayer } from '../state/use-scale-layer';
import { useTonic } from '../state/use-tonic';
import type { MapView } from './map-props';

/** What was looked up and could be read. */
export type FoundLookUp = Exclude<LookUp, { readonly kind: 'unread' }>;

const tonicOf = (found: FoundLookUp): string =>
  found.kind === 'chord' ? found.chord.rootName : found.scale.tonic;

/** Its tones as the map's chord tones, its scale as the layer beneath; blue notes belong to the song's key. */
const marksOf = (found: FoundLookUp, marked: Omit<Parameters<typeof markSounds>[0], 'chord' | 'scale'>) =>
  markSounds({ ...marked, chord: found, scale: found.kind === 'chord' ? found.scale : null }).map((mark) => ({
    ...mark,
    blueTone: null,
  }));

const spellFor = (found: FoundLookUp): Spell => {
  if (found.kind === 'chord') return spellOver(found.chord, found.chord.rootName);
  const { tones, tonic } = found.scale;
  return (pitchClass) =>
    tones.find((tone) => tone.pitchClass === pitchClass)?.name ?? plainName(pitchClass, tonic);
};

/**
 * What the harp in hand gives over the chord being heard, or over what was looked up, as the drawings of the harp
 * take it.
 */
export const useMapView = (found: FoundLookUp | null = null): MapView => {
  const {
    technique,
    showCents,
    reference,
    mirrored,
    plainWords: plain,
  } = useSelected((state) => state.settings);
  const harp = useSelected((state) => state.now.tune.harp);
  const home = useTonic();
  const playing = usePlayingChord();
  const layer = useScaleLayer(playing);
  return useMemo(() => {
    const centsOf = ({ sound }: MarkedSound): number | null =>
      showCents && sound.technique === 'natural' ? expectedCents(sound, reference) : null;
    const tonic = found === null ? home : tonicOf(found);
    const marked = { harp, tonic, technique };
    return {
      marks:
        found === null ? markSounds({ ...marked, chord: playing, scale: layer }) : marksOf(found, marked),
      nameOf: (mark) => soundName(mark, tonic),
      spell: found === null ? spellOver(playing, tonic) : spellFor(found),
      centsOf,
      degreesOf: found?.kind ?? 'chord',
      plain,
      mirrored,
    };
  }, [found, harp, playing, home, layer, technique, showCents, reference, mirrored, plain]);
};
