import { splitBar } from '../chart/build-chart';
import type { Bar, Chart, Meter } from '../chart/chart';
import { chordAt } from '../chart/chord-at';
import type { Chord, ChordTone } from '../theory/chord';
import { guideTones } from '../theory/chords';
import { asTicks, type Ticks } from '../theory/units';

/** What a line is made of: thirds and sevenths, any chord tones, or chord tones one after the other up and down. */
export const LINE_KINDS = ['guide tones', 'chord tones', 'arpeggio'] as const;
export type LineKind = (typeof LINE_KINDS)[number];

/** Notes a bar of a chord-tone line; four means one on every beat, whatever the meter. */
export const PACES = [1, 2, 4] as const;
/** Notes a bar. */
export type Pace = (typeof PACES)[number];

/** A place of a line that wants one note. */
export interface LineSlot {
  readonly at: Ticks;
  readonly length: Ticks;
  readonly chord: Chord;
  /** The tones that may stand here. */
  readonly tones: readonly ChordTone[];
  /** True where the player has time to breathe before the note. */
  readonly breathes: boolean;
}

/** Blues is sung and played in lines of four bars, with a breath between (Open Music Theory, "The blues progression"). */
const BARS_A_LINE = 4;

const tonesOf = (chord: Chord, kind: LineKind): readonly ChordTone[] => {
  const guides = kind === 'guide tones' ? guideTones(chord) : [];
  return guides.length > 0 ? guides : chord.tones;
};

const startsOf = (bar: Bar, meter: Meter, notes: number): readonly number[] => {
  const starts = new Set<number>(bar.chords.map(({ at }) => at));
  let at: number = bar.at;
  for (const length of splitBar(meter, notes)) {
    starts.add(at);
    at += length;
  }
  return [...starts].sort((a, b) => a - b);
};

/**
 * Where the notes of a line stand: a guide-tone line has one for every chord and bar, a chord-tone line `pace` a bar
 * and one for every chord, an arpeggio one on every beat.
 */
export const lineSlots = (chart: Chart, kind: LineKind, pace: Pace = 1): readonly LineSlot[] => {
  const { beats } = chart.meter;
  const notes = kind === 'arpeggio' ? beats : kind === 'guide tones' ? 1 : Math.min(pace, beats);
  return chart.bars.flatMap((bar, index) => {
    const starts = startsOf(bar, chart.meter, notes);
    return starts.flatMap((at, i): readonly LineSlot[] => {
      const chord = chordAt(bar.chords, at)?.chord;
      const end = starts[i + 1] ?? bar.at + bar.length;
      return chord === undefined
        ? []
        : [
            {
              at: asTicks(at),
              length: asTicks(end - at),
              chord,
              tones: tonesOf(chord, kind),
              breathes: i === 0 && index % BARS_A_LINE === 0,
            },
          ];
    });
  });
};
