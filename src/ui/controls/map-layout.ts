import type { MarkedSound } from '../../core/fit/mark-sounds';

/** Where a sound stands on the comb: column = hole, row counted from the comb itself, above (+) or below (−). */
export interface CombPlace {
  readonly mark: MarkedSound;
  readonly hole: number;
  readonly row: number;
}

/**
 * Places sounds on the comb: above each hole its blow note, then its blow bends, then its overbend;
 * below it the draw note and its bends, deepest last.
 */
export const combPlaces = (marks: readonly MarkedSound[]): readonly CombPlace[] => {
  const holes = Math.max(...marks.map(({ sound }) => sound.hole));
  return Array.from({ length: holes }, (_, i) => i + 1).flatMap((hole) => {
    const own = marks.filter(({ sound }) => sound.hole === hole);
    const below = own
      .filter(({ sound }) => sound.breath === 'draw' && sound.technique !== 'overbend')
      .sort((a, b) => a.sound.bend - b.sound.bend);
    const blow = own
      .filter(({ sound }) => sound.breath === 'blow' && sound.technique !== 'overbend')
      .sort((a, b) => a.sound.bend - b.sound.bend);
    const over = own.filter(({ sound }) => sound.technique === 'overbend');
    return [
      ...[...blow, ...over].map((mark, i) => ({ mark, hole, row: i + 1 })),
      ...below.map((mark, i) => ({ mark, hole, row: -(i + 1) })),
    ];
  });
};

/** The range of whole pitches a map must show, as MIDI numbers. */
export const pitchSpan = (marks: readonly MarkedSound[]): { readonly low: number; readonly high: number } => {
  const pitches = marks.map(({ sound }) => sound.pitch);
  return { low: Math.min(...pitches), high: Math.max(...pitches) };
};
