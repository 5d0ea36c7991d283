import type { Playhead } from '../../core/arranger/playhead';
import type { Section } from '../../core/arranger/program';
import { feelOf } from '../../core/feels/feels';
import { chorusAdvice } from '../../core/practice/chorus-advice';
import { type ChorusNote, judgeChorus } from '../../core/practice/heard-chorus';
import { createGrid } from '../../core/score/grid';
import { swingRatio } from '../../core/score/swing';
import { SCALE_IDS, scaleOf } from '../../core/theory/scales';
import { asSeconds } from '../../core/theory/units';
import type { Slice } from '../slice';
import type { ChorusReport } from './chorus-report';
import type { EarReads } from './ear-state';
import type { PlacedNote } from './place-notes';

/** Collects the notes of each chorus and judges them when it is over. */
export interface ChorusCollector {
  take(placed: PlacedNote): void;
  /** Told of the playhead once a bar, null when nothing plays; returns the report of a chorus that is over. */
  follow(position: Playhead | null): ChorusReport | null;
  forget(): void;
}

/** Notes that still sound count as this long, in seconds. */
const SOUNDING = 0.5;

const secondsPerTick = ({ tempo, chart }: Section, ticks: number): number => {
  const bpm = tempo.findLast(({ at }) => at <= ticks)?.bpm ?? tempo[0]?.bpm ?? 100;
  return 60 / (bpm * chart.meter.beatTicks);
};

/** A note by its place in the section's own bars. */
const noteIn = ({ note, playhead }: PlacedNote): ChorusNote | null => {
  if (playhead === null) return null;
  const { section, bar, ticks } = playhead;
  return {
    bar,
    ticks: ticks - (section.chart.bars[bar]?.at ?? 0),
    pitch: note.pitch,
    sound: note.sound,
    offset: note.steady ? note.offset : null,
    length: asSeconds(note.to === null ? SOUNDING : note.to - note.from),
    secondsPerTick: secondsPerTick(section, ticks),
    attacked: note.joined !== 'glide',
  };
};

const reportOf = (section: Section, notes: readonly ChorusNote[], state: EarReads): ChorusReport => {
  const { settings, now } = state;
  const { chart, chorus } = section;
  const { feel, swing } = settings.style;
  const tempo = section.tempo[0]?.bpm ?? settings.tempo;
  const ratio = swingRatio(feelOf(feel), { swing, tempo, part: 'lead' });
  const id = SCALE_IDS.find((each) => each === settings.layer);
  const heard = judgeChorus(notes, {
    chart,
    grid: createGrid(chart.meter, ratio),
    scale: id === undefined ? null : scaleOf(id, chart.tonic),
  });
  const numbers = section.barNumbers;
  const played = { chart, harp: now.tune.harp, technique: settings.technique, numbers };
  return { chorus, heard, numbers, formId: settings.formId, advice: chorusAdvice(heard, played) };
};

/** An empty collector. */
export const createChorusCollector = (store: Pick<Slice<EarReads>, 'getState'>): ChorusCollector => {
  let section: Section | null = null;
  let notes = new Map<number, ChorusNote>();
  const finish = (): ChorusReport | null => {
    const over = section;
    const played = [...notes.values()];
    section = null;
    notes = new Map();
    return over === null ? null : reportOf(over, played, store.getState());
  };
  return {
    take: (placed) => {
      const heard = placed.playhead?.section;
      if (heard?.kind !== 'chorus' || heard.chorus !== section?.chorus) return;
      const note = noteIn(placed);
      if (note !== null) notes.set(placed.note.id, note);
    },
    follow: (position) => {
      const next = position?.section.kind === 'chorus' ? position.section : null;
      if (next !== null && next.chorus === section?.chorus) {
        // A change while it plays makes the section anew: the chorus is the same.
        section = next;
        return null;
      }
      const report = finish();
      section = next;
      return report;
    },
    forget: () => {
      section = null;
      notes = new Map();
    },
  };
};
