import type { Chord, NoteName } from '../theory/chord';
import { bassNameOf } from '../theory/chords';
import { stepAndAlter } from './key-fifths';
import { chordKind } from './musicxml-kinds';
import { element, type XmlElement } from './xml';

const noteChildren = (prefix: 'root' | 'bass', name: NoteName): readonly (XmlElement | null)[] => {
  const { step, alter } = stepAndAlter(name);
  return [element(`${prefix}-step`, step), alter === 0 ? null : element(`${prefix}-alter`, alter)];
};

/** The mark that nobody plays a chord: kind `none`, whose root means nothing (MusicXML 4.0, `kind-value`). */
export const noHarmony = (offset: number): XmlElement =>
  element('harmony', [
    element('root', [element('root-step', 'C', { text: '' })]),
    element('kind', 'none', { text: 'N.C.' }),
    offset === 0 ? null : element('offset', offset),
  ]);

/**
 * A chord as MusicXML's `harmony`: root, kind, bass, degrees. The kind's text is the symbol as the chart has it, so
 * the degrees that spell it out for a program are not printed as well. `offset` is in divisions after the place in
 * the measure where it stands.
 */
export const harmonyElement = (chord: Chord, offset: number): XmlElement => {
  const { kind, changes } = chordKind(chord);
  const bass = chord.bass === chord.root ? null : bassNameOf(chord);
  const degrees = changes.map(({ value, alter, type }) =>
    element(
      'degree',
      [element('degree-value', value), element('degree-alter', alter), element('degree-type', type)],
      { 'print-object': 'no' },
    ),
  );
  return element('harmony', [
    element('root', noteChildren('root', chord.rootName)),
    element('kind', kind, { text: chord.quality }),
    bass === null ? null : element('bass', noteChildren('bass', bass)),
    ...degrees,
    offset === 0 ? null : element('offset', offset),
  ]);
};
