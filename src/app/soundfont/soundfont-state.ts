import type { FontVoice } from '../../audio/soundfont/font-messages';
import type { Style } from '../../core/players/style';
import { PART_NAMES } from '../../core/score/part-names';
import { BASS_VOICES, CHORD_VOICES, KITS } from '../../core/score/voices';
import { type OwnSoundPart, RECORDED_PARTS, type RecordedPart } from '../../core/settings/mix';
import type { Settings } from '../../core/settings/settings';

/** The player's own file of sounds. */
export interface OwnFile {
  readonly name: string;
  readonly bytes: number;
  /** Whether the browser keeps it for the next visit. */
  readonly kept: boolean;
  /** What it plays; `null` while it only lies there, since no part uses it. */
  readonly opened: { readonly source: number; readonly voices: readonly FontVoice[] } | null;
}

export interface OwnSoundsState {
  readonly file: OwnFile | null;
  /** Name of the file that is being read. */
  readonly opening: string | null;
  /** What went wrong and what to do, in a sentence or two. */
  readonly trouble: string | null;
}

/** How the recorded instruments stand. */
export interface RecordedState {
  /** `missing`: they could not be fetched or played in this visit. */
  readonly kind: 'none' | 'coming' | 'there' | 'missing';
  /** The number of their file, once it is open. */
  readonly opened: number | null;
  /** The same from when the band plays on them: never begun in mid-song. */
  readonly taken: number | null;
}

/** The player's own sounds, as the page shows them. */
export interface SoundFontState {
  readonly ownSounds: OwnSoundsState;
}

/** Where a part's sounds come from. */
export type SoundKind = 'recorded' | 'computed' | 'own';

export const NO_OWN_SOUNDS: OwnSoundsState = { file: null, opening: null, trouble: null };
export const NO_RECORDED: RecordedState = { kind: 'none', opened: null, taken: null };

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
