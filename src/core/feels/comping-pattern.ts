import type { ChordVoice } from '../score/voices';
import type { ByLevel } from './level';

/**
 * A chord rhythm in a four-beat bar, one mark a step: s short stab, S accented stab, h held until the next mark,
 * p pushed: a short stab of the next chord before its time, n neighbour chord (4 6 over the root, back at the next
 * stroke), c slide from a half step below the next stroke, 5 6 7 two-note shuffle figure root with fifth, sixth,
 * seventh, . rest.
 */
type CompingPattern = string;

/** How chords are played. */
export interface Comping {
  /** Bars to choose from, by instrument. */
  readonly bars: Readonly<Record<ChordVoice, ByLevel<readonly CompingPattern[]>>>;
  /** Bars of a turnaround, whose chords change with the beats. */
  readonly turnarounds: readonly CompingPattern[];
  /** The usual extensions where they belong, plain sevenths where the riff is plain. */
  readonly colour: 'plain' | 'rich';
  /** A guitar voices chords as keys do; elsewhere it keeps to shells and plain sevenths. */
  readonly fullGuitar: boolean;
}
