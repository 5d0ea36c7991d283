import type { FontVoice } from '../../audio/soundfont/font-messages';
import type { Style } from '../../core/players/style';
import { PART_NAMES } from '../../core/score/part-names';
import { BASS_VOICES, CHORD_VOICES, KITS } from '../../core/score/voices';
import { type OwnSoundPart, RECORDED_PARTS, type RecordedPart } from '../../core/settings/mix';
import type { Settings } from '../../core/settings/settings';

/** Where a part's sounds come from. */
export type SoundKind = 'recorded' | 'computed' | 'own';

const isRecordedPart = (part: OwnSoundPart): part is RecordedPart =>
  RECORDED_PARTS.some((each) => each === part);

type Chosen = Pick<Settings, 'ownSounds' | 'computedVoices'>;

/** Where a part's sounds are to come from, by the settings. */
export const soundKindOf = (part: OwnSoundPart, { ownSounds, computedVoices }: Chosen): SoundKind => {
  if (ownSounds.includes(part)) return 'own';
  return isRecordedPart(part) && !computedVoices.includes(part) ? 'recorded' : 'computed';
};

/** The settings with a part's sounds from elsewhere; what a part cannot have becomes the computed voice. */
export const withSoundKind = (part: OwnSoundPart, kind: SoundKind, chosen: Chosen): Chosen => {
  const computed = chosen.computedVoices.filter((each) => each !== part);
  const own = chosen.ownSounds.filter((each) => each !== part);
  return {
    ownSounds: kind === 'own' ? [...own, part] : own,
    computedVoices: kind === 'computed' && isRecordedPart(part) ? [...computed, part] : computed,
  };
};

/** The parts with the voices that can play them, in the order they are shown. */
export const OWN_SOUND_CHOICES: readonly {
  readonly part: OwnSoundPart;
  readonly name: string;
  readonly voices: readonly FontVoice[];
}[] = [
  { part: 'drums', name: PART_NAMES.drums, voices: KITS },
  { part: 'bass', name: PART_NAMES.bass, voices: BASS_VOICES },
  { part: 'chords', name: PART_NAMES.chords, voices: CHORD_VOICES },
  { part: 'lead', name: 'Harp', voices: ['harmonica'] },
];

/** Parts that a file with these voices can play. */
export const partsOf = (voices: readonly FontVoice[]): readonly OwnSoundPart[] =>
  OWN_SOUND_CHOICES.filter((each) => each.voices.some((voice) => voices.includes(voice))).map(
    ({ part }) => part,
  );

/** The voice a part has by the band's style, which the file should have. */
export const voiceOfPart = (part: OwnSoundPart, { kit, bass, chords }: Style): FontVoice => {
  switch (part) {
    case 'drums':
      return kit;
    case 'bass':
      return bass;
    case 'chords':
      return chords;
    case 'lead':
      return 'harmonica';
  }
};
