import type { Sound } from '../harp/harp';
import { soundId } from '../harp/tab';
import { median } from '../theory/statistics';
import { GRAZED } from './align';
import type { Judgement, NoteVerdict } from './judge';

/** What is worth saying of a judgement, with what it rests on. */
export type Fault =
  | { readonly kind: 'silent' }
  | { readonly kind: 'tempo'; readonly rate: number }
  | { readonly kind: 'start'; readonly seconds: number }
  | { readonly kind: 'missed'; readonly notes: readonly NoteVerdict[] }
  | { readonly kind: 'other'; readonly notes: readonly NoteVerdict[] }
  | { readonly kind: 'off'; readonly sound: Sound; readonly cents: number; readonly count: number }
  | { readonly kind: 'extra'; readonly count: number; readonly grazed: boolean }
  | { readonly kind: 'lean'; readonly seconds: number }
  | { readonly kind: 'early' | 'late'; readonly notes: readonly NoteVerdict[] }
  | { readonly kind: 'short'; readonly notes: readonly NoteVerdict[] };

interface Weighed {
  readonly fault: Fault;
  readonly weight: number;
}

/**
 * What a fault weighs, by the note: listeners mind wrong notes more than notes out of time (doi 10.5334/tismir.57); the
 * figures are ours.
 */
const WEIGHT = { missed: 1, other: 0.9, off: 0.6, extra: 0.5, time: 0.45, lean: 0.2, short: 0.2 } as const;
/** A lean is worth a word from so many seconds: ensembles differ by as much (Acoust. Sci. Tech. 22(3), 2001, p. 239). */
const LEANS = 0.035;

/** Notes that are off, by what was to be played; the farthest off and most frequent first. */
const offFaults = (notes: readonly NoteVerdict[]): readonly Weighed[] => {
  const bySound = new Map<string, NoteVerdict[]>();
  for (const note of notes.filter(({ pitch }) => pitch === 'flat' || pitch === 'sharp')) {
    const id = `${soundId(note.asked.sound)} ${note.pitch}`;
    bySound.set(id, [...(bySound.get(id) ?? []), note]);
  }
  return [...bySound.values()].flatMap((those) => {
    const [first] = those;
    if (first === undefined) return [];
    const cents = median(those.map((each) => each.cents));
    const weight = those.length * WEIGHT.off * (0.7 + Math.min(1, Math.abs(cents) / 100));
    return [{ fault: { kind: 'off', sound: first.asked.sound, cents, count: those.length }, weight }];
  });
};

const timeFaults = ({ notes, rate, start, lean }: Judgement): readonly Weighed[] => {
  const all = notes.filter(({ played }) => played !== null).length;
  if (rate !== 1) return [{ fault: { kind: 'tempo', rate }, weight: all * WEIGHT.time }];
  const stray = (kind: 'early' | 'late'): Weighed => {
    const those = notes.filter(({ played, time }) => played !== null && time === kind);
    return { fault: { kind, notes: those }, weight: those.length * WEIGHT.time };
  };
  return [
    { fault: { kind: 'start', seconds: start }, weight: start === 0 ? 0 : all * WEIGHT.time },
    { fault: { kind: 'lean', seconds: lean }, weight: Math.abs(lean) < LEANS ? 0 : all * WEIGHT.lean },
    stray('late'),
    stray('early'),
  ];
};

/** What was not as asked, the most useful to know first; nothing of a phrase that was. */
export const faultsOf = (judgement: Judgement): readonly Fault[] => {
  const { notes, extras } = judgement;
  if (notes.length > 0 && notes.every(({ played }) => played === null) && extras.length === 0)
    return [{ kind: 'silent' }];
  const where = (kind: NoteVerdict['pitch']): readonly NoteVerdict[] =>
    notes.filter(({ pitch }) => pitch === kind);
  const short = notes.filter((note) => note.short);
  const grazed = extras.length > 0 && extras.every(({ length }) => length < GRAZED);
  const weighed: readonly Weighed[] = [
    { fault: { kind: 'missed', notes: where('missed') }, weight: where('missed').length * WEIGHT.missed },
    { fault: { kind: 'other', notes: where('other') }, weight: where('other').length * WEIGHT.other },
    ...offFaults(notes),
    { fault: { kind: 'extra', count: extras.length, grazed }, weight: extras.length * WEIGHT.extra },
    ...timeFaults(judgement),
    { fault: { kind: 'short', notes: short }, weight: short.length * WEIGHT.short },
  ];
  return weighed
    .filter(({ weight }) => weight > 0)
    .sort((a, b) => b.weight - a.weight)
    .map(({ fault }) => fault);
};
