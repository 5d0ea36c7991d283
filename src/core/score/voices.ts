/** The instruments the band can play on, by part. */
export const BASS_VOICES = ['upright-bass', 'fingered-bass'] as const;
export const CHORD_VOICES = ['piano', 'electric-piano', 'organ', 'guitar'] as const;
/** What a second chord player can have. */
export const SECOND_VOICES = ['organ', 'guitar'] as const satisfies readonly ChordVoice[];
/** What the drums are played with. */
export const KITS = ['sticks', 'brushes'] as const;

export type BassVoice = (typeof BASS_VOICES)[number];
export type ChordVoice = (typeof CHORD_VOICES)[number];
export type SecondVoice = (typeof SECOND_VOICES)[number];
export type Kit = (typeof KITS)[number];
