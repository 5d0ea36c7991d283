/**
 * Where in a form one is, apart from ticks and seconds, so that the same position can be found again after the
 * key, tempo, form or plan has changed.
 */
import type { Program, Section } from '../../core/arranger/program';
import { elementAt } from '../../core/theory/element-at';
import { barIndexAt } from './timeline';

/** Finds a section of a program by its order; `fromBar` is where the first chorus is entered. */
export type SectionSource = (program: Program, index: number, fromBar: number) => Section | null;

/** A position in the form as a section has it: bar index, the bar's number in the whole chorus, and the part of the bar gone by. */
export interface FormPosition {
  readonly index: number;
  readonly number: number | null;
  /** 0 ≤ fraction < 1. */
  readonly fraction: number;
}

/** Bar and fraction of it (0 up to, never, 1) that a tick of a section falls on; ticks outside it count to its ends. */
export const formPositionAt = (section: Section, ticks: number): FormPosition => {
  const index = barIndexAt(section, ticks);
  const bar = elementAt(section.chart.bars, index);
  const fraction = Math.min(Math.max((ticks - bar.at) / bar.length, 0), 1 - 1e-9);
  return { index, number: section.barNumbers[index] ?? null, fraction };
};

/** Index of the bar with a number, or the bar with the nearest number; -1 when the section has no numbered bar. */
export const barIndexOfNumber = (section: Section, number: number): number => {
  let best = -1;
  let bestDistance = Number.POSITIVE_INFINITY;
  section.barNumbers.forEach((candidate, index) => {
    if (candidate === null) return;
    const distance = Math.abs(candidate - number);
    if (distance < bestDistance) {
      best = index;
      bestDistance = distance;
    }
  });
  return best;
};

/** True when the section holds the bar of that number. */
const hasBarNumber = (section: Section, number: number): boolean => section.barNumbers.includes(number);

const indexInSection = (section: Section, position: FormPosition): number => {
  const last = section.chart.bars.length - 1;
  if (position.number === null) return Math.min(position.index, last);
  if (hasBarNumber(section, position.number)) return barIndexOfNumber(section, position.number);
  const numbered = section.barNumbers.filter((number) => number !== null);
  if (numbered.length === 0) return Math.min(position.index, last);
  const bars = Math.max(...numbered) + 1;
  return barIndexOfNumber(section, position.number % bars);
};

/** The tick of a section at a position: same bar number and fraction; in a shorter form, the bar number modulo its bars. */
export const ticksOfFormPosition = (section: Section, position: FormPosition): number => {
  const bar = elementAt(section.chart.bars, indexInSection(section, position));
  return bar.at + position.fraction * bar.length;
};

/** How far apart two programs' numbering can be: a count-in, an intro and a count between choruses. */
const REACH = [0, 1, -1, 2, -2, 3, -3];

const nearby = (source: SectionSource, program: Program, old: Section, fromBar: number) =>
  REACH.map((step) => old.index + step)
    .filter((index) => index >= 0)
    .map((index) => () => source(program, index, fromBar));

const lastChorus = (source: SectionSource, program: Program, old: Section, fromBar: number) => {
  for (let index = old.index; index >= 0; index -= 1) {
    const section = source(program, index, fromBar);
    if (section?.kind === 'chorus') return section;
  }
  return null;
};

/**
 * The section of a changed program that stands where `old` stood: same kind and chorus. A count-in or intro that
 * is gone gives way to what follows it; a chorus beyond the new end becomes the last chorus. Null when the music
 * is over.
 */
export const sectionInstead = (
  source: SectionSource,
  program: Program,
  old: Section,
  fromBar: number,
): Section | null => {
  for (const candidate of nearby(source, program, old, fromBar)) {
    const section = candidate();
    if (section && section.kind === old.kind && section.chorus === old.chorus) return section;
  }
  if (old.kind === 'ending') return null;
  if (old.kind === 'chorus') return lastChorus(source, program, old, fromBar);
  for (const candidate of nearby(source, program, old, fromBar)) {
    const section = candidate();
    if (section && section.kind === 'chorus' && section.chorus === old.chorus) return section;
  }
  return source(program, 0, fromBar);
};

/**
 * The section of a changed program that takes the place of the bar being heard: as `sectionInstead`, and whole where
 * the first chorus would be entered only after that bar.
 */
export const sectionInPlaceOf = (
  source: SectionSource,
  program: Program,
  { section: old, number }: { readonly section: Section; readonly number: number | null },
  fromBar: number,
): Section | null => {
  const section = sectionInstead(source, program, old, fromBar);
  const misses = section?.kind === 'chorus' && number !== null && !hasBarNumber(section, number);
  return section !== null && misses ? source(program, section.index, 0) : section;
};

/** The chorus at or before a section, with a bar of the form in it; null when there is none. */
export const chorusWith = (
  source: SectionSource,
  program: Program,
  { bar, from, fromBar }: { readonly bar: number; readonly from: Section; readonly fromBar: number },
): Section | null => {
  for (let index = from.index; index >= 0; index -= 1) {
    const section = index === from.index ? from : source(program, index, fromBar);
    if (section?.kind !== 'chorus') continue;
    return hasBarNumber(section, bar) ? section : source(program, index, 0);
  }
  return null;
};

/** True when two sections sound alike to the last event. */
export const soundsAlike = (one: Section, other: Section): boolean =>
  one.score.length === other.score.length &&
  JSON.stringify(one.tempo) === JSON.stringify(other.tempo) &&
  one.chart.meter.name === other.chart.meter.name &&
  JSON.stringify(one.score.events) === JSON.stringify(other.score.events);
