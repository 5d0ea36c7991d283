import type { Bar, BarKey, Chart, ChordSpan } from '../chart/chart';
import { keyAt } from '../chart/key-at';
import { PROGRAMS } from '../midi/midi-programs';
import { greatestDivisor } from '../theory/divisor';
import { type Bpm, TICKS_PER_QUARTER, type Ticks } from '../theory/units';
import { keyFifths } from './key-fifths';
import { quarterTempo } from './midi-timeline';
import { harmonyElement, noHarmony } from './musicxml-harmony';
import { element, renderXml, type XmlElement } from './xml';

/** What is printed on a lead sheet. */
export interface LeadSheet {
  readonly chart: Chart;
  /** Beats a minute; the beat is the meter's. */
  readonly tempo: Bpm;
  /** Words above the first bar, such as the name of the feel. */
  readonly feel: string;
  /** How off-beat pairs are played, or null when straight. */
  readonly swing: { readonly ratio: number; readonly unit: 'eighth' | '16th' } | null;
  /** A sentence about the harp, above the first bar. */
  readonly harp?: string;
  /** Text below the staff, such as tab, at ticks from the start of the chart. */
  readonly tab?: readonly { readonly at: Ticks; readonly text: string }[];
}

const DOCUMENT_TYPE =
  '<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">';
const BARS_A_LINE = 4;
const PART = 'P1';
const INSTRUMENT = 'P1-I1';

/**
 * A long : short ratio as two whole numbers in lowest terms, as the schema wants them (1.3 is 13 : 10), to the
 * nearest hundredth. Throws RangeError unless the ratio is at least 1.
 */
export const swingFraction = (ratio: number): readonly [first: number, second: number] => {
  if (!(ratio >= 1)) throw new RangeError(`A swing ratio must be at least 1, got ${ratio}`);
  const hundredths = Math.round(ratio * 100);
  const divisor = greatestDivisor(hundredths, 100);
  return [hundredths / divisor, 100 / divisor];
};

const words = (text: string): XmlElement => element('direction-type', [element('words', text)]);

const isCompound = ({ meter }: Chart): boolean => meter.beatTicks !== TICKS_PER_QUARTER;

const metronome = ({ chart, tempo }: LeadSheet): XmlElement =>
  element('direction-type', [
    element('metronome', [
      element('beat-unit', 'quarter'),
      isCompound(chart) ? element('beat-unit-dot') : null,
      element('per-minute', Math.round(tempo * 100) / 100),
    ]),
  ]);

const swingElement = ({ swing }: LeadSheet): XmlElement | null => {
  if (swing === null || swing.ratio === 1) return null;
  const [first, second] = swingFraction(swing.ratio);
  return element('swing', [
    element('first', first),
    element('second', second),
    element('swing-type', swing.unit),
  ]);
};

/** Feel, tempo and swing, as read and as played; then the harp. */
const openingDirections = (sheet: LeadSheet): readonly XmlElement[] => {
  const quarters = quarterTempo(sheet.tempo, sheet.chart.meter.beatTicks);
  const sound = element('sound', [swingElement(sheet)], { tempo: Math.round(quarters * 100) / 100 });
  return [
    element('direction', [words(sheet.feel), metronome(sheet), sound], { placement: 'above' }),
    ...(sheet.harp === undefined ? [] : [element('direction', [words(sheet.harp)], { placement: 'above' })]),
  ];
};

const keyElement = ({ tonic, mode }: BarKey): XmlElement =>
  element('key', [element('fifths', keyFifths(tonic, mode)), element('mode', mode)]);

/** Key, meter, clef, and slashes instead of rests for programs that draw them. */
const attributesElement = (chart: Chart): XmlElement => {
  const [beats = '4', unit = '4'] = chart.meter.name.split('/');
  return element('attributes', [
    element('divisions', TICKS_PER_QUARTER),
    keyElement(keyAt(chart, 0)),
    element('time', [element('beats', beats), element('beat-type', unit)]),
    element('clef', [element('sign', 'G'), element('line', 2)]),
    element('measure-style', [element('slash', [], { type: 'start', 'use-stems': 'no' })]),
  ]);
};

/** The key of a bar, where that is another than the bar's before. */
const keyChange = (chart: Chart, index: number): XmlElement | null => {
  const [before, now] = [keyAt(chart, Math.max(0, index - 1)), keyAt(chart, index)];
  return before.tonic === now.tonic && before.mode === now.mode
    ? null
    : element('attributes', [keyElement(now)]);
};

/** A stretch of a bar with the chords that begin in it. */
interface Stretch {
  readonly at: number;
  readonly length: number;
  readonly chords: readonly ChordSpan[];
}

/** A stretch for each chord where all begin on beats; otherwise the bar as one, its chords at offsets. */
const stretchesOf = (bar: Bar, beatTicks: number): readonly Stretch[] => {
  const onBeats = bar.chords.every(({ at }) => (at - bar.at) % beatTicks === 0);
  return onBeats && bar.chords.length > 1
    ? bar.chords.map((span) => ({ at: span.at, length: span.length, chords: [span] }))
    : [{ at: bar.at, length: bar.length, chords: bar.chords }];
};

const rest = (
  duration: number,
  attributes: XmlElement['attributes'],
  type: readonly XmlElement[],
): XmlElement =>
  element('note', [
    element('rest', [], attributes),
    element('duration', duration),
    element('voice', 1),
    ...type,
  ]);

const restsOf = (stretch: Stretch, bar: Bar, chart: Chart): readonly XmlElement[] => {
  if (stretch.length === bar.length) return [rest(bar.length, { measure: 'yes' }, [])];
  const { beatTicks } = chart.meter;
  const type = [element('type', 'quarter'), ...(isCompound(chart) ? [element('dot')] : [])];
  return Array.from({ length: stretch.length / beatTicks }, () => rest(beatTicks, {}, type));
};

const tabDirections = ({ tab = [] }: LeadSheet, { at, length }: Stretch): readonly XmlElement[] =>
  tab
    .filter((item) => item.at >= at && item.at < at + length)
    .map((item) =>
      element('direction', [words(item.text), item.at === at ? null : element('offset', item.at - at)], {
        placement: 'below',
      }),
    );

const stretchElements = (sheet: LeadSheet, bar: Bar, stretch: Stretch): readonly XmlElement[] => [
  ...tabDirections(sheet, stretch),
  ...stretch.chords.map((span) => {
    const offset = span.at - stretch.at;
    return span.band === 'rest' ? noHarmony(offset) : harmonyElement(span.chord, offset);
  }),
  ...restsOf(stretch, bar, sheet.chart),
];

/** The name of a section that begins. */
const rehearsal = (name: string): XmlElement =>
  element('direction', [element('direction-type', [element('rehearsal', name)])], { placement: 'above' });

/** The pick-up as a measure that is not counted (`implicit`), with what stands at the beginning of a score. */
const pickUpElement = (sheet: LeadSheet, pickUp: Bar): XmlElement => {
  const { chart } = sheet;
  const { beatTicks } = chart.meter;
  const type = [element('type', 'quarter'), ...(isCompound(chart) ? [element('dot')] : [])];
  return element(
    'measure',
    [
      attributesElement(chart),
      ...openingDirections(sheet),
      ...pickUp.chords.flatMap((span) => [
        span.band === 'rest' ? noHarmony(0) : harmonyElement(span.chord, 0),
        ...Array.from({ length: span.length / beatTicks }, () => rest(beatTicks, {}, type)),
      ]),
    ],
    { number: 0, implicit: 'yes' },
  );
};

const measureElement = (sheet: LeadSheet, bar: Bar, index: number): XmlElement => {
  const { chart } = sheet;
  const isFirst = index === 0;
  const isLast = index === chart.bars.length - 1;
  return element(
    'measure',
    [
      !isFirst && index % BARS_A_LINE === 0 ? element('print', [], { 'new-system': 'yes' }) : null,
      ...(isFirst && chart.pickUp === undefined
        ? [attributesElement(chart), ...openingDirections(sheet)]
        : []),
      keyChange(chart, index),
      bar.place?.bar === 0 ? rehearsal(bar.place.section) : null,
      ...stretchesOf(bar, chart.meter.beatTicks).flatMap((stretch) => stretchElements(sheet, bar, stretch)),
      isLast ? element('barline', [element('bar-style', 'light-heavy')], { location: 'right' }) : null,
    ],
    { number: index + 1 },
  );
};

const partList = (): XmlElement =>
  element('part-list', [
    element(
      'score-part',
      [
        element('part-name', 'Harmonica'),
        element(
          'score-instrument',
          [element('instrument-name', 'Harmonica'), element('instrument-sound', 'wind.reed.harmonica')],
          { id: INSTRUMENT },
        ),
        element(
          'midi-instrument',
          [element('midi-channel', 1), element('midi-program', PROGRAMS.harmonica + 1)],
          { id: INSTRUMENT },
        ),
      ],
      { id: PART },
    ),
  ]);

/**
 * A lead sheet as MusicXML 4.0 (the schema of 2021): title, key, meter, tempo, swing, one measure a bar with its
 * chord symbols over whole-bar or beat rests drawn as slashes, tab as text below. Divisions are ticks.
 * Throws RangeError on a chart without bars, which the format does not allow, and on a swing ratio below 1.
 */
export const writeMusicXml = (sheet: LeadSheet): string => {
  const { chart } = sheet;
  if (chart.bars.length === 0) throw new RangeError('A lead sheet needs at least one bar');
  const score = element(
    'score-partwise',
    [
      element('work', [element('work-title', chart.title)]),
      element('identification', [element('encoding', [element('software', 'Combshed')])]),
      partList(),
      element(
        'part',
        [
          ...(chart.pickUp === undefined ? [] : [pickUpElement(sheet, chart.pickUp)]),
          ...chart.bars.map((bar, index) => measureElement(sheet, bar, index)),
        ],
        { id: PART },
      ),
    ],
    { version: '4.0' },
  );
  return renderXml(score, DOCUMENT_TYPE);
};
