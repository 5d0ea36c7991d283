import type { FontVoice } from '../../audio/soundfont/font-messages';
import type { Style } from '../../core/players/style';
import { BASS_VOICES, CHORD_VOICES, KITS } from '../../core/score/voices';
import type { OwnSoundPart } from '../../core/settings/mix';

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

/** The player's own sounds, as the page shows them. */
export interface SoundFontState {
  readonly ownSounds: OwnSoundsState;
}

export const NO_OWN_SOUNDS: OwnSoundsState = { file: null, opening: null, trouble: null };

/** The parts with the voices that can play them, in the order they are shown. */
export const OWN_SOUND_CHOICES: readonly {
  readonly part: OwnSoundPart;
  readonly name: string;
  readonly voices: readonly FontVoice[];
}[] = [
  { part: 'drums', name: 'Drums', voices: KITS },
  { part: 'bass', name: 'Bass', voices: BASS_VOICES },
  { part: 'chords', name: 'Chords', voices: CHORD_VOICES },
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
