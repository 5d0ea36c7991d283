/** What a word of a bar is by its shape. `beats` counts the beats written after a chord: 2 in `C7//`. */
export type WordKind =
  | { readonly kind: 'beats'; readonly beats: number }
  | { readonly kind: 'same bar' }
  | { readonly kind: 'no chord' }
  | { readonly kind: 'bass'; readonly bass: string; readonly beats: number }
  | { readonly kind: 'chord'; readonly chord: string; readonly beats: number };

const SAME_BAR = /^[%𝄎]$/u;
const BEATS = /^[/.·]+$/;
const TRAILING_BEATS = /^(.*[^/.·])([/.·]+)$/;
const BASS = /^\(*\/([A-G](?:[#♯]{0,2}|[b♭]{0,2}))\)*$/;
const NO_CHORD = /^\(*n\.?c\.?\)*$/i;

/** Tells the words of a bar apart: `/` and `.` are beats, `%` the bar before, `/B` a new bass, the rest chords. */
export const wordKind = (text: string): WordKind => {
  if (SAME_BAR.test(text)) return { kind: 'same bar' };
  if (BEATS.test(text)) return { kind: 'beats', beats: text.length };
  if (NO_CHORD.test(text)) return { kind: 'no chord' };
  const [, head = text, trail = ''] = TRAILING_BEATS.exec(text) ?? [];
  const bass = BASS.exec(head)?.[1];
  return bass === undefined
    ? { kind: 'chord', chord: head, beats: trail.length }
    : { kind: 'bass', bass, beats: trail.length };
};
