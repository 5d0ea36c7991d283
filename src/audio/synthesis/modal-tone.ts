/**
 * The tone of an instrument whose notes die away, as what can be measured on a recording: how strong each partial
 * is 100 ms after the onset and how far it has fallen 400 ms later, at a few keys; keys between are interpolated.
 */
import { type Anchor, between, betweenAll, dulledAbove, spanAt } from './anchors';

/** Measurements of one key. Levels in dB, times in seconds, frequencies in Hz. */
export interface ToneAnchor extends Anchor {
  /** Partials 1, 2, 3 … 100 ms after the onset, re the strongest. */
  readonly levels: readonly number[];
  /** What each partial loses from 100 to 500 ms. */
  readonly falls: readonly number[];
  /** Momentary loudness at velocity 80 re the reference of all voices, LU. */
  readonly loudness: number;
  /** Time the slow second stage takes to lose 60 dB. */
  readonly lateT60: number;
  /** Where the slow stage starts: dB re the partial at 100 ms. */
  readonly lateLevel: number;
  /** dB per octave above the last tabulated partial. */
  readonly rolloff: number;
  /** B of f(k) = k f(1) sqrt((1 + B k²) / (1 + B)). */
  readonly inharmonicity: number;
  /** Time constant of the onset of partial 1, and of high partials. */
  readonly rise: number;
  readonly riseHigh: number;
  /** Noise of the stroke: level re the strongest partial, upper edge, time to −60 dB. */
  readonly knockLevel: number;
  readonly knockHigh: number;
  readonly knockT60: number;
  /** Noise under the note: level re the strongest partial, upper edge, time to −60 dB. */
  readonly rustleLevel: number;
  readonly rustleHigh: number;
  readonly rustleT60: number;
}

/** The figures of a struck or plucked note at any key, read between the anchors. */
export type Tone = Omit<ToneAnchor, 'midi'>;

/** The tone of a key between the anchors; outside them the nearest, duller above. */
export const toneAt = (anchors: readonly ToneAnchor[], midi: number): Tone => {
  const span = spanAt(anchors, midi);
  const one = (read: (anchor: ToneAnchor) => number): number => between(span, read);
  return {
    levels: dulledAbove(
      betweenAll(span, (anchor) => anchor.levels),
      anchors,
      midi,
    ),
    falls: betweenAll(span, (anchor) => anchor.falls),
    loudness: one((anchor) => anchor.loudness),
    lateT60: one((anchor) => anchor.lateT60),
    lateLevel: one((anchor) => anchor.lateLevel),
    rolloff: one((anchor) => anchor.rolloff),
    inharmonicity: one((anchor) => anchor.inharmonicity),
    rise: one((anchor) => anchor.rise),
    riseHigh: one((anchor) => anchor.riseHigh),
    knockLevel: one((anchor) => anchor.knockLevel),
    knockHigh: one((anchor) => anchor.knockHigh),
    knockT60: one((anchor) => anchor.knockT60),
    rustleLevel: one((anchor) => anchor.rustleLevel),
    rustleHigh: one((anchor) => anchor.rustleHigh),
    rustleT60: one((anchor) => anchor.rustleT60),
  };
};
