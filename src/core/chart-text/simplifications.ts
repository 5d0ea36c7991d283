import type { Chart } from '../chart/chart';
import type { Chord, Degree } from '../theory/chord';
import { semitonesOf } from '../theory/degrees';
import { degreeText, ENGLISH } from '../theory/note-names';
import { listed } from '../theory/wording';

/** Something a chord of the chart asks for that the band plays only in part, or adds. */
export interface Simplification {
  /** ASCII symbol of the chord. */
  readonly symbol: string;
  /** Indices of the bars it stands in. */
  readonly bars: readonly number[];
  /** Tones of the chord the band never plays. */
  readonly leftOut: readonly Degree[];
  /** Plain words with glyphs: `C13♯11: the band plays the 3 and ♭7 with at most two of 9, ♯11 and 13 at a time.` */
  readonly sentence: string;
}

/**
 * How the band's chord part hears a chord: a third and a fifth (or what stands for them), a seventh if there is
 * one, and further tones, of which it takes two at a time, or none where there is no seventh but a sixth.
 */
interface Heard {
  readonly guides: readonly Degree[];
  readonly extras: readonly Degree[];
  readonly leftOut: readonly Degree[];
  /** Tones the band takes for granted although the chord does not name them. */
  readonly assumed: readonly string[];
}

const THIRDS = [4, 3, 5, 2];
const FIFTHS = [7, 6, 8];
const SEVENTHS = [10, 11];

const hear = (chord: Chord): Heard => {
  const degreeAt = new Map(chord.tones.map(({ degree }) => [(semitonesOf(degree) + 12) % 12, degree]));
  const first = (steps: readonly number[]): number | undefined => steps.find((step) => degreeAt.has(step));
  const third = first(THIRDS);
  const fifth = first(FIFTHS);
  const seventh = first(third === 3 && fifth === 6 ? [...SEVENTHS, 9] : SEVENTHS);
  const named = (steps: readonly (number | undefined)[]): readonly Degree[] =>
    steps.flatMap((step) => (step === undefined ? [] : (degreeAt.get(step) ?? [])));
  const rest = [...degreeAt.keys()].filter((step) => ![0, third, fifth, seventh].includes(step));
  const sixth = seventh === undefined && (fifth ?? 7) === 7 ? [9] : [];
  return {
    guides: named([third, seventh]),
    extras: seventh === undefined ? [] : named(rest),
    leftOut: seventh === undefined ? named(rest.filter((step) => !sixth.includes(step))) : [],
    assumed: [...(third === undefined ? ['3'] : []), ...(fifth === undefined ? ['5'] : [])],
  };
};

const degreesListed = (degrees: readonly Degree[]): string =>
  listed(degrees.map((degree) => (degree === 'R' ? 'root' : degreeText(degree))));

const describe = ({ guides, extras, leftOut, assumed }: Heard): readonly string[] => [
  ...(extras.length > 2
    ? [`plays the ${degreesListed(guides)} with at most two of ${degreesListed(extras)} at a time`]
    : []),
  ...(leftOut.length > 0 ? [`leaves out the ${degreesListed(leftOut)}`] : []),
  ...(assumed.length > 0 ? [`may add the ${degreesListed(assumed)}`] : []),
];

/** Chords of a chart that the band simplifies, in the order they first come; empty for most blues. */
export const simplifications = (chart: Chart): readonly Simplification[] => {
  const places = new Map<string, { readonly chord: Chord; readonly bars: Set<number> }>();
  chart.bars.forEach((bar, index) => {
    for (const { chord } of bar.chords) {
      const known = places.get(chord.symbol) ?? { chord, bars: new Set<number>() };
      known.bars.add(index);
      places.set(chord.symbol, known);
    }
  });
  return [...places.values()].flatMap(({ chord, bars }) => {
    const heard = hear(chord);
    const parts = describe(heard);
    if (parts.length === 0) return [];
    const sentence = `${ENGLISH.chord(chord)}: the band ${parts.join(' and ')}.`;
    return [{ symbol: chord.symbol, bars: [...bars], leftOut: heard.leftOut, sentence }];
  });
};
