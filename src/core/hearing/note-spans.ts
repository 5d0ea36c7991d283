import { elementAt } from '../theory/element-at';
import { midiOf } from '../theory/temperament';
import { asHz } from '../theory/units';
import {
  createDraftReporter,
  type Draft,
  type DraftReporter,
  type FindAttack,
  hzOfReading,
  type Joined,
  newDraft,
  type Span,
} from './note-draft';
import type { PitchFrame } from './pitch-frame';
import { crossing, hasDip, leapt, standing } from './readings';

/** Turns frames into spans. */
export interface SpanFinder {
  /** Takes the next frame; returns spans that are now sure to have begun (`to` null) or have ended. */
  frame(frame: PitchFrame): readonly Span[];
  /** The reed in hand was sounded again at a time; returns as `frame` does. */
  reattack(time: number): readonly Span[];
  /** The pitch that stands now, Hz; null while it moves or nothing sounds. */
  steady(): number | null;
  /** Whether a pitch is heard, be it that it moves. */
  sounding(): boolean;
  /** Ends what still sounds. */
  end(): readonly Span[];
}

/** A pitch stands where it stays for so many seconds; less time is enough after a leap. */
const STANDS = { seconds: 0.04, afterLeap: 0.022 } as const;
/** Another note is at least so many cents away. */
const ANOTHER = 60;
/** A glide from a pitch that stood shorter than this is the scoop of one note, not a note before it. */
const SCOOP_SECONDS = 0.14;
/** So deep a dip of the level around a change of pitch is a new attack, not a glide: dB, and readings before it. */
const DIP = { depth: 6, before: 12 } as const;
/** Silence that ends a note. */
const GAP_SECONDS = 0.022;
/** A reed cannot be sounded again sooner than this. */
const REFRACTORY = 0.06;
/** The settled pitch follows readings this near, by this share each: a drooping note is still the same. */
const FOLLOW = { within: 20, share: 0.01 } as const;

/** The draft that goes on, and what is now sure of it and the one before. */
interface Step {
  readonly draft: Draft;
  readonly spans: readonly Span[];
}

const goesOn = (draft: Draft): Step => ({ draft, spans: [] });

/** Looks whether the first pitch of a draft stands. */
const settle = (draft: Draft, reporter: DraftReporter): Step => {
  const stood = standing(draft.readings, 0, STANDS.seconds);
  if (stood === null) return goesOn(draft);
  const known = reporter.begun(draft, stood);
  if (known === null) {
    // What stood had no attack, as the tail of a room; one may yet come.
    draft.readings = draft.readings.slice(-Math.ceil(draft.readings.length / 2));
    return goesOn(draft);
  }
  const settled = { ...known, anchor: stood };
  return { draft: settled, spans: [reporter.report(settled, null)] };
};

/** Where the pitch came half-way to where it now stands. */
interface Turn {
  readonly at: number;
  readonly anchor: number;
  readonly joined: Joined;
}

/** Ends the draft at a turn; the rest is another note. */
const split = (draft: Draft, { at, anchor, joined }: Turn, reporter: DraftReporter): Step => {
  const readings = draft.readings.slice(at);
  const from = elementAt(readings, 0).time;
  const ended = reporter.close({ ...draft, readings: draft.readings.slice(0, at) }, from);
  const next: Draft = { ...newDraft(from, readings), anchor, joined, fresh: false };
  return { draft: next, spans: [...ended, reporter.report(next, null)] };
};

/** Looks what the latest reading says of the draft. */
const follow = (draft: Draft, reporter: DraftReporter): Step => {
  const { readings, anchor } = draft;
  if (anchor === null) return settle(draft, reporter);
  const last = readings.length - 1;
  const { cents } = elementAt(readings, last);
  if (Math.abs(cents - anchor) < ANOTHER) {
    draft.left = null;
    if (Math.abs(cents - anchor) < FOLLOW.within) draft.anchor = anchor + FOLLOW.share * (cents - anchor);
    return goesOn(draft);
  }
  draft.left ??= last;
  const byLeap = leapt(readings, draft.left);
  const stood = standing(readings, draft.left, byLeap ? STANDS.afterLeap : STANDS.seconds);
  if (stood === null || Math.abs(stood - anchor) < ANOTHER) return goesOn(draft);
  const at = crossing(readings, [anchor, stood]);
  if (byLeap || elementAt(readings, at).time - draft.from >= SCOOP_SECONDS)
    return split(draft, { at, anchor: stood, joined: byLeap ? 'leap' : 'glide' }, reporter);
  if (hasDip(readings, [Math.max(0, draft.left - DIP.before), last], DIP.depth))
    return split(draft, { at, anchor: stood, joined: 'attack' }, reporter);
  draft.anchor = stood;
  draft.left = null;
  return goesOn(draft);
};

/** Cuts readings into spans as they come. One for each stream. @param attackOf finds where in them a note begins. */
export const createSpanFinder = (attackOf: FindAttack): SpanFinder => {
  const reporter = createDraftReporter(attackOf);
  let draft: Draft | null = null;

  const end = (): readonly Span[] => {
    const ended = draft === null ? [] : reporter.close(draft, draft.readings.at(-1)?.time ?? draft.from);
    draft = null;
    return ended;
  };

  return {
    frame({ centre, frequency, level }) {
      const last = draft?.readings.at(-1)?.time;
      const ended = last !== undefined && centre - last > GAP_SECONDS ? end() : [];
      if (frequency <= 0) return ended;
      const one = draft ?? newDraft(centre, []);
      draft = one;
      if (one.readings.length > 0 && last !== undefined && centre <= last) return ended;
      one.readings.push({ time: centre, cents: 100 * midiOf(asHz(frequency)), level });
      const step = follow(one, reporter);
      draft = step.draft;
      return [...ended, ...step.spans];
    },
    reattack(time) {
      if (draft === null || time - draft.from < REFRACTORY) return [];
      const readings = draft.readings.filter((reading) => reading.time > time);
      const ended = reporter.close(draft, time);
      draft = { ...newDraft(time, readings), fresh: false };
      return ended;
    },
    steady: () => {
      const last = draft?.readings.at(-1);
      if (last === undefined || draft?.anchor === null || draft?.left !== null) return null;
      return hzOfReading(last.cents);
    },
    sounding: () => draft !== null,
    end,
  };
};
