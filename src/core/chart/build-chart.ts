import type { Chord, NoteName } from '../theory/chord';
import { type KeyMode, keyName, pitchClassOf } from '../theory/pitch';
import { asPitchClass, asTicks, type PitchClass, type Ticks } from '../theory/units';
import type { Bar, BarKey, Chart, ChordSpan, Meter, MeterName } from './chart';
import { FORMS, type Form, type FormId, formBars } from './forms';
import { romanChord, romanOf } from './roman';
import { sectionKey } from './tonics';

/** Quarter beats of 480 ticks; in compound meters dotted quarters of 720. */
export const METERS: Readonly<Record<MeterName, Meter>> = {
  '4/4': { name: '4/4', beats: 4, beatTicks: asTicks(480) },
  '3/4': { name: '3/4', beats: 3, beatTicks: asTicks(480) },
  '12/8': { name: '12/8', beats: 4, beatTicks: asTicks(720) },
  '6/8': { name: '6/8', beats: 2, beatTicks: asTicks(720) },
};

/** The length of one bar in ticks: 1920 in 4/4, 2880 in 12/8. */
export const barTicks = (meter: Meter): Ticks => asTicks(meter.beats * meter.beatTicks);

/**
 * Shares a bar among its chords: on beats, the earlier chords taking what does not divide (2 + 1 in 3/4); where
 * there are more chords than beats, in equal parts. Throws RangeError unless there is at least one chord.
 */
export const splitBar = (meter: Meter, chords: number): readonly Ticks[] => {
  if (!Number.isInteger(chords) || chords < 1)
    throw new RangeError(`A bar needs 1 chord or more, got ${chords}`);
  const units = chords <= meter.beats ? meter.beats : barTicks(meter);
  const unitTicks = barTicks(meter) / units;
  const starts = Array.from({ length: chords + 1 }, (_, i) => Math.ceil((units * i) / chords) * unitTicks);
  return starts.slice(1).map((end, i) => asTicks(end - (starts[i] ?? 0)));
};

/** What a chart of a built-in form needs. */
export interface ChartSpec {
  readonly form: FormId;
  readonly key: PitchClass;
  readonly meter: MeterName;
  /** Another spelling of the key, such as `Gb` for `F#`; must name the same pitch. */
  readonly tonic?: NoteName;
}

/** What a chart from chords already read needs. */
export interface ChordChartSpec {
  readonly title: string;
  readonly mode: KeyMode;
  readonly tonic: NoteName;
  readonly meter: Meter;
  /** The chords of each bar, sharing it evenly on beats. */
  readonly bars: readonly (readonly Chord[])[];
}

const layBar = (chords: readonly Chord[], meter: Meter, index: number): Bar => {
  const length = barTicks(meter);
  const at = asTicks(index * length);
  const lengths = splitBar(meter, chords.length);
  let start: number = at;
  const spans = chords.map((chord, i): ChordSpan => {
    const span = { chord, at: asTicks(start), length: lengths[i] ?? asTicks(0) };
    start += span.length;
    return span;
  });
  return { at, length, chords: spans };
};

/** Lays chords out in bars, end to end from tick 0. Throws RangeError on a bar without a chord. */
export const layChart = ({ title, mode, tonic, meter, bars }: ChordChartSpec): Chart => ({
  title,
  key: pitchClassOf(tonic),
  mode,
  tonic,
  meter,
  bars: bars.map((chords, index) => layBar(chords, meter, index)),
  length: asTicks(bars.length * barTicks(meter)),
});

/** Place and key of a bar in a form of several strains; null in a form of one. */
const strainAt = (
  { sections = [], mode }: Form,
  home: NoteName,
  index: number,
): Pick<Bar, 'place' | 'key'> | null => {
  let from = 0;
  for (const { name, bars, key } of sections) {
    if (index < from + bars) {
      const place = { section: name, bar: index - from };
      if (key === undefined) return { place };
      return { place, key: sectionKey({ tonic: romanChord(key, home).rootName, mode }, home) };
    }
    from += bars;
  }
  return null;
};

/** A chord of another key as the numeral it is in the home key; a triad is `I` there as in charts that are typed. */
const inKey = (chord: Chord, tonic: NoteName, home: NoteName): Chord =>
  tonic === home && chord.quality !== '' ? chord : romanChord(romanOf(chord, home), home);

/**
 * One chorus of a form in a key. Plain numerals sound as sevenths (dominant, or minor for lower case), as all
 * chords of a blues do (Open Music Theory, "Blues Harmony"). Throws RangeError when `tonic` is not the key.
 *
 * @example
 * const chart = buildChart({ form: 'quick-change', key: 7, meter: '4/4' });
 * chart.bars.length // 12
 * chart.bars[1].chords[0].chord.symbol // 'C7'
 */
export const buildChart = ({ form: id, key, meter, tonic }: ChartSpec): Chart => {
  const form = FORMS[id];
  const spelled = tonic ?? keyName(key, form.mode);
  if (pitchClassOf(spelled) !== key) throw new RangeError(`${spelled} is not a spelling of key ${key}`);
  const laid = layChart({
    title: form.name,
    mode: form.mode,
    tonic: spelled,
    meter: METERS[meter],
    bars: formBars(form).map((bar, index) => {
      const { tonic } = strainAt(form, spelled, index)?.key ?? { tonic: spelled };
      return bar.map((roman) => inKey(romanChord(roman, tonic, { sevenths: true }), tonic, spelled));
    }),
  });
  return { ...laid, bars: laid.bars.map((bar, index) => ({ ...bar, ...strainAt(form, spelled, index) })) };
};

const moveChord = (chord: Chord, from: NoteName, to: NoteName): Chord =>
  romanChord(chord.roman === '' ? romanOf(chord, from) : chord.roman, to);

/** A section's key as far from the chart's as before. */
const moveKey = ({ tonic, mode }: BarKey, from: NoteName, to: NoteName): BarKey => {
  const moved = asPitchClass(pitchClassOf(tonic) - pitchClassOf(from) + pitchClassOf(to));
  return sectionKey({ tonic: keyName(moved, mode), mode }, to);
};

/** A chart with every chord of it changed, in its bars and before them. */
export const withChords = (chart: Chart, change: (chord: Chord) => Chord): Chart => {
  const changed = (bar: Bar): Bar => ({
    ...bar,
    chords: bar.chords.map((span) => ({ ...span, chord: change(span.chord) })),
  });
  return {
    ...chart,
    bars: chart.bars.map(changed),
    ...(chart.pickUp && { pickUp: changed(chart.pickUp) }),
  };
};

/** The same chart on another spelled tonic: every chord keeps its numeral. */
export const respell = (chart: Chart, tonic: NoteName): Chart => {
  const moved = withChords(chart, (chord) => moveChord(chord, chart.tonic, tonic));
  return {
    ...moved,
    key: pitchClassOf(tonic),
    tonic,
    bars: moved.bars.map((bar) =>
      bar.key === undefined ? bar : { ...bar, key: moveKey(bar.key, chart.tonic, tonic) },
    ),
  };
};

/** The chart moved by whole semitones (up or down), spelled as usual in the new key. */
export const transpose = (chart: Chart, semitones: number): Chart =>
  respell(chart, keyName(asPitchClass(chart.key + semitones), chart.mode));
