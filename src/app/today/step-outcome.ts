import { noResults } from '../../core/bends/bend-results';
import type { ChorusReport } from '../../core/takes/chorus-report';
import { asPitchClass } from '../../core/theory/units';
import type { Outcome } from '../../core/today/grade';
import type { Exercise } from '../../core/today/practice-item';
import type { PlayedChorus } from '../choruses/choruses-state';
import type { TodayReads } from './today-needs';

/** What was gathered while a step was practised. */
export interface Gathered {
  /** The state as it was when the step began. */
  readonly before: TodayReads;
  readonly reports: readonly ChorusReport[];
  readonly choruses: readonly PlayedChorus[];
}

/** Fewer tries than this say nothing. */
const FEW = 3;
const FEW_NOTES = 8;

const shareOf = (rights: readonly number[], few = FEW): number | null =>
  rights.length < few ? null : rights.reduce((sum, right) => sum + right, 0) / rights.length;

const bendShare = (sound: string, kind: string, { before }: Gathered, now: TodayReads) => {
  const { id } = noResults(kind, sound);
  const triesOf = (state: TodayReads) => state.bends.results.find((each) => each.id === id)?.tries ?? [];
  const known = new Set(triesOf(before));
  const tries = triesOf(now).filter((each) => !known.has(each));
  return { share: shareOf(tries.map(({ hit }) => (hit ? 1 : 0))), first: tries[0]?.hit === true };
};

/** In how many bars with a chord one of its tones was hit. */
const toneShare = (degree: string, roman: string, { reports }: Gathered): number | null => {
  const bars = reports.flatMap(({ heard: { hits, bars: all } }) =>
    all.flatMap((_, bar) => {
      const over = hits.filter(({ note, chord }) => note.bar === bar && chord.roman === roman);
      if (over.length === 0) return [];
      const hit = over.some(({ note, chord }) =>
        chord.tones.some(
          (tone) => tone.degree === degree && tone.pitchClass === asPitchClass(Math.round(note.pitch)),
        ),
      );
      return [hit ? 1 : 0];
    }),
  );
  return shareOf(bars);
};

/** Notes of a chord or of the scale on the map, among all that were heard. */
const scaleShare = ({ reports }: Gathered): number | null =>
  shareOf(
    reports.flatMap(({ heard: { hits } }) => hits.map(({ kind }) => (kind === 'other' ? 0 : 1))),
    FEW_NOTES,
  );

const MARK_SHARES = { clean: 1, nearly: 0.7, again: 0.3 } as const;
const CHORUS_SHARES = { clean: 1, fair: 0.7, trouble: 0.3 } as const;

/** What came of a step by the ear, and by marks given along the way; null where the player has to say. */
export const stepOutcome = (exercise: Exercise, gathered: Gathered, now: TodayReads): Outcome | null => {
  const plain = { atTempo: true, aided: false, firstTry: false };
  if (exercise.kind === 'bend') {
    const { share, first } = bendShare(exercise.sound, exercise.harpKind, gathered, now);
    // A bend is heard or shown before it is played.
    return share === null ? null : { ...plain, right: share, firstTry: first, aided: true };
  }
  if (exercise.kind === 'tone') {
    const right = toneShare(exercise.degree, exercise.roman, gathered);
    return right === null ? null : { ...plain, right, aided: true };
  }
  if (exercise.kind === 'phrase') {
    const { marks } = now.trades;
    const right = shareOf(marks.map((mark) => MARK_SHARES[mark]));
    return right === null ? null : { ...plain, right, firstTry: marks[0] === 'clean' };
  }
  if (exercise.kind === 'song') {
    const judged = gathered.choruses.flatMap(({ outcome }) =>
      outcome === null ? [] : [CHORUS_SHARES[outcome]],
    );
    const right = shareOf(judged, 1);
    return right === null
      ? null
      : { ...plain, right, atTempo: now.settings.tempo >= exercise.tempo, firstTry: judged[0] === 1 };
  }
  const right = scaleShare(gathered);
  // The map shows the scale.
  return right === null ? null : { ...plain, right, aided: true };
};
