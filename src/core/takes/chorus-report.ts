import type { Playhead } from '../arranger/playhead';
import type { Section } from '../arranger/program';
import { secondsPerTickAt } from '../arranger/section-time';
import { feelOf } from '../feels/feels';
import type { Harp } from '../harp/harp';
import type { HeardNote } from '../hearing/heard-note';
import { chorusAdvice } from '../practice/chorus-advice';
import { type ChorusNote, type HeardChorus, judgeChorus } from '../practice/heard-chorus';
import { createGrid } from '../score/grid';
import { swingRatio } from '../score/swing';
import type { Settings } from '../settings/settings';
import { SCALE_IDS, scaleOf } from '../theory/scales';
import { asSeconds } from '../theory/units';

/** What was heard of a chorus, with the sentence about it. */
export interface ChorusReport {
  /** From 0. */
  readonly chorus: number;
  readonly heard: HeardChorus;
  /** The form it was a chorus of. */
  readonly formId: string;
  /** For each bar of it, its index in the whole chorus. */
  readonly numbers: readonly (number | null)[];
  readonly advice: string;
}

/** What a chorus was played with. */
export interface ChorusChoices {
  readonly settings: Settings;
  readonly harp: Harp;
}

/** Notes that still sound count as this long, in seconds. */
const SOUNDING = 0.5;

/** A heard note by its place in the bars of its section; null where the band did not play. */
export const chorusNote = ({
  note,
  playhead,
}: {
  readonly note: HeardNote;
  readonly playhead: Playhead | null;
}): ChorusNote | null => {
  if (playhead === null) return null;
  const { section, bar, ticks } = playhead;
  return {
    bar,
    ticks: ticks - (section.chart.bars[bar]?.at ?? 0),
    pitch: note.pitch,
    sound: note.sound,
    offset: note.steady ? note.offset : null,
    length: asSeconds(note.to === null ? SOUNDING : note.to - note.from),
    secondsPerTick: secondsPerTickAt(section, ticks),
    attacked: note.joined !== 'glide',
  };
};

/** Judges what was heard in a chorus. */
export const reportOnChorus = (
  section: Section,
  notes: readonly ChorusNote[],
  { settings, harp }: ChorusChoices,
): ChorusReport => {
  const { chart, chorus, barNumbers: numbers } = section;
  const { feel, swing } = settings.style;
  const tempo = section.tempo[0]?.bpm ?? settings.tempo;
  const ratio = swingRatio(feelOf(feel), { swing, tempo, part: 'lead' });
  const id = SCALE_IDS.find((each) => each === settings.layer);
  const heard = judgeChorus(notes, {
    chart,
    grid: createGrid(chart.meter, ratio),
    scale: id === undefined ? null : scaleOf(id, chart.tonic),
  });
  const played = { chart, harp, technique: settings.technique, numbers };
  return { chorus, heard, numbers, formId: settings.formId, advice: chorusAdvice(heard, played) };
};
