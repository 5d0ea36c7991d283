/** What a word of a bar is by its shape. `beats` counts the beats written after a chord: 2 in `C7//`. */
export type WordKind =
  | { readonly kind: 'beats'; readonly beats: number }
  | { readonly kind: 'same bar' }
  | { readonly kind: 'no chord'; readonly beats: number }
  | { readonly kind: 'bass'; readonly bass: string; readonly beats: number }
  | { readonly kind: 'chord'; readonly chord: string; readonly beats: number; readonly stop: boolean };

const SAME_BAR = /^[%𝄎]$/u;
const BEATS = /^[/.·]+$/;
const TRAILING_BEATS = /^(.*[^/.·])([/.·]+)$/;
const BASS = /^\(*\/([A-G](?:[#♯]{0,2}|[b♭]{0,2}))\)*$/;
const NO_CHORD = /^\(*n\.?c\.?\)*(\/*)$/i;
const STOP = /^(.*[^!])!$/;

/** Tells the words of a bar apart: `/` and `.` are beats, `%` the bar before, `/B` a new bass, `N.C.` a rest of the band,
 * the rest chords, with `!` behind one that is struck once. */
export const wordKind = (text: string): WordKind => {
  if (SAME_BAR.test(text)) return { kind: 'same bar' };
  if (BEATS.test(text)) return { kind: 'beats', beats: text.length };
  const rest = NO_CHORD.exec(text);
  if (rest !== null) return { kind: 'no chord', beats: rest[1]?.length ?? 0 };
  const [, head = text, trail = ''] = TRAILING_BEATS.exec(text) ?? [];
  const bass = BASS.exec(head)?.[1];
  if (bass !== undefined) return { kind: 'bass', bass, beats: trail.length };
  const stopped = STOP.exec(head)?.[1];
  return { kind: 'chord', chord: stopped ?? head, beats: trail.length, stop: stopped !== undefined };
};
