import type { Playhead } from '../../core/arranger/playhead';
import type { Section } from '../../core/arranger/program';
import type { ChorusNote } from '../../core/practice/heard-chorus';
import { type ChorusReport, chorusNote, reportOnChorus } from '../../core/takes/chorus-report';
import type { Slice } from '../slice';
import type { EarReads } from './ear-state';
import type { PlacedNote } from './place-notes';

/** Collects the notes of each chorus and judges them when it is over. */
export interface ChorusCollector {
  take(placed: PlacedNote): void;
  /** Told of the playhead once a bar, null when nothing plays; returns the report of a chorus that is over. */
  follow(position: Playhead | null): ChorusReport | null;
  forget(): void;
}

/** An empty collector. */
export const createChorusCollector = (store: Pick<Slice<EarReads>, 'getState'>): ChorusCollector => {
  let section: Section | null = null;
  let notes = new Map<number, ChorusNote>();
  const finish = (): ChorusReport | null => {
    const over = section;
    const played = [...notes.values()];
    section = null;
    notes = new Map();
    if (over === null) return null;
    const { settings, now } = store.getState();
    return reportOnChorus(over, played, { settings, harp: now.tune.harp });
  };
  return {
    take: (placed) => {
      const heard = placed.playhead?.section;
      if (heard?.kind !== 'chorus' || heard.chorus !== section?.chorus) return;
      const note = chorusNote(placed);
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
