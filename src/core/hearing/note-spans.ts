import { elementAt } from '../theory/element-at';
import { midiOf } from '../theory/temperament';
import { asHz } from '../theory/units';
import type { PitchFrame } from './pitch-frame';

/** One reading of the pitch within a note. */
export interface Reading {
  /** Seconds. */
  readonly time: number;
  /** Hundredths of semitones on the scale of MIDI numbers: 6900 is 440 Hz. */
  readonly cents: number;
  /** dB re full scale. */
  readonly level: number;
}

/** How a note goes on from the one before: after an attack of its own, by a leap, or by a glide within one breath. */
export type Joined = 'attack' | 'leap' | 'glide';

/** A stretch that is one note. */
export interface Span {
  readonly id: number;
  readonly from: number;
  /** Null while it sounds. */
  readonly to: number | null;
  readonly readings: readonly Reading[];
  /** Where the pitch has settled, cents as in readings; null when it never did. */
  readonly anchor: number | null;
  readonly joined: Joined;
}

/** When a pitch (Hz) first read at a time was attacked; null when nothing rose there, as in the tail of a room. */
export type FindAttack = (frequency: number, first: number) => number | null;

/** Turns frames into spans. */
export interface SpanFinder {
  /** Takes the next frame; returns spans that are now sure to have begun (`to` null) or have ended. */
  frame(frame: PitchFrame): readonly Span[];
  /** The reed in hand was sounded again at a time; returns as `frame` does. */
  reattack(time: number): readonly Span[];
  /** The pitch that stands now, Hz; null while it moves or nothing sounds. */
  steady(): number | null;
  /** How far the pitch has swung in the last moments of the note, cents: what trembles in pitch trembles in level. */
  swing(): number;
  /** Ends what still sounds. */
  end(): readonly Span[];
}

/** A pitch stands where it stays within so many cents for so many seconds; less time is enough after a leap. */
const STANDS = { cents: 25, seconds: 0.04, afterLeap: 0.022 } as const;
/** Another note is at least so many cents away. */
const ANOTHER = 60;
/** A glide from a pitch that stood shorter than this is the scoop of one note, not a note before it. */
const SCOOP_SECONDS = 0.14;
/** Cents between neighbouring readings that no glide makes. */
const LEAP = 70;
/** Silence that ends a note. */
const GAP_SECONDS = 0.022;
const SHORTEST = 0.03;
/** Seconds before now between which a swing of pitch is looked for; the last moments may be the new attack's. */
const SWING = { from: 0.17, to: 0.02 } as const;
/** A reed cannot be sounded again sooner than this. */
const REFRACTORY = 0.06;
/** The settled pitch follows readings this near, by this share each: a drooping note is still the same. */
const FOLLOW = { within: 20, share: 0.01 } as const;
/** Readings looked back at for where a glide began. */
const GLIDE_READINGS = 60;

const centsOf = (hz: number): number => 100 * midiOf(asHz(hz));
const hzOf = (cents: number): number => 440 * 2 ** ((cents - 6900) / 1200);

/** Middle value; not a number for an empty list. */
export const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
};

interface Draft {
  readonly from: number;
  /** True when silence lies before it, so that its attack is to be looked for. */
  readonly fresh: boolean;
  readings: Reading[];
  anchor: number | null;
  /** Index of the reading with which the pitch left the anchor. */
  left: number | null;
  id: number | null;
  readonly joined: Joined;
}

const anew = (from: number, readings: Reading[]): Draft => ({
  from,
  fresh: true,
  readings,
  anchor: null,
  left: null,
  id: null,
  joined: 'attack',
});

/** The last stretch of readings, from an index on, as its median where it stands; null where it moves. */
const standing = (readings: readonly Reading[], from: number, seconds: number): number | null => {
  const last = readings.at(-1);
  if (last === undefined) return null;
  let [low, high] = [last.cents, last.cents];
  for (let i = readings.length - 1; i >= from; i -= 1) {
    const { time, cents } = elementAt(readings, i);
    low = Math.min(low, cents);
    high = Math.max(high, cents);
    if (high - low > STANDS.cents) return null;
    if (last.time - time >= seconds) return median(readings.slice(i).map((each) => each.cents));
  }
  return null;
};

const crossing = (readings: readonly Reading[], from: number, low: number, high: number): number => {
  const half = (low + high) / 2;
  const found = readings.findIndex(
    ({ cents }, i) => i >= from && (high > low ? cents >= half : cents <= half),
  );
  return found < 0 ? from : found;
};

const leapt = (readings: readonly Reading[], i: number): boolean =>
  i > 0 && Math.abs(elementAt(readings, i).cents - elementAt(readings, i - 1).cents) > LEAP;

/** Cuts readings into spans as they come. One for each stream. @param attackOf finds where in them a note begins. */
export const createSpanFinder = (attackOf: FindAttack): SpanFinder => {
  let draft: Draft | null = null;
  let ids = 0;

  const report = (one: Draft, to: number | null): Span => {
    one.id ??= ids++;
    const { id, from, readings, anchor, joined } = one;
    return { id, from, to, readings, anchor, joined };
  };

  /** Where a draft begins once its pitch is known; null when nothing was attacked. */
  const begun = (one: Draft, cents: number): Draft | null => {
    if (!one.fresh) return one;
    const from = attackOf(hzOf(cents), elementAt(one.readings, 0).time);
    return from === null ? null : { ...one, from, fresh: false };
  };

  /** Ends the draft; what is too short, or has no attack, was no note. */
  const close = (one: Draft, to: number): readonly Span[] => {
    const readings = one.readings.filter(({ time }) => time <= to);
    if (one.id !== null) return [report({ ...one, readings }, to)];
    const first = readings[0];
    if (first === undefined || to - first.time < SHORTEST) return [];
    const known = begun({ ...one, readings }, median(readings.map(({ cents }) => cents)));
    return known === null ? [] : [report(known, to)];
  };

  const settle = (one: Draft): readonly Span[] => {
    const stood = standing(one.readings, 0, STANDS.seconds);
    if (stood === null) return [];
    const known = begun(one, stood);
    if (known === null) {
      // What stood had no attack, as the tail of a room; one may yet come.
      one.readings = one.readings.slice(-Math.ceil(one.readings.length / 2));
      return [];
    }
    draft = { ...known, anchor: stood };
    return [report(draft, null)];
  };

  /** Ends the draft where the pitch came half-way to where it now stands; the rest is another note. */
  const split = (one: Draft, at: number, anchor: number, joined: Joined): readonly Span[] => {
    const readings = one.readings.slice(at);
    const from = elementAt(readings, 0).time;
    const ended = close({ ...one, readings: one.readings.slice(0, at) }, from);
    const next: Draft = { ...anew(from, readings), anchor, joined, fresh: false };
    draft = next;
    return [...ended, report(next, null)];
  };

  const follow = (one: Draft): readonly Span[] => {
    const { readings, anchor } = one;
    if (anchor === null) return settle(one);
    const last = readings.length - 1;
    const { cents } = elementAt(readings, last);
    if (Math.abs(cents - anchor) < ANOTHER) {
      one.left = null;
      if (Math.abs(cents - anchor) < FOLLOW.within) one.anchor = anchor + FOLLOW.share * (cents - anchor);
      return [];
    }
    one.left ??= last;
    const byLeap = leapt(readings, one.left);
    const stood = standing(readings, one.left, byLeap ? STANDS.afterLeap : STANDS.seconds);
    if (stood === null || Math.abs(stood - anchor) < ANOTHER) return [];
    const at = crossing(readings, Math.max(1, one.left - GLIDE_READINGS), anchor, stood);
    if (byLeap || elementAt(readings, at).time - one.from >= SCOOP_SECONDS)
      return split(one, at, stood, byLeap ? 'leap' : 'glide');
    one.anchor = stood;
    one.left = null;
    return [];
  };

  return {
    frame({ centre, frequency, level }) {
      const out: Span[] = [];
      const last = draft?.readings.at(-1)?.time;
      if (draft !== null && last !== undefined && centre - last > GAP_SECONDS) {
        out.push(...close(draft, last));
        draft = null;
      }
      if (frequency <= 0) return out;
      draft ??= anew(centre, []);
      if (draft.readings.length > 0 && last !== undefined && centre <= last) return out;
      draft.readings.push({ time: centre, cents: centsOf(frequency), level });
      return [...out, ...follow(draft)];
    },
    reattack(time) {
      if (draft === null || time - draft.from < REFRACTORY) return [];
      const readings = draft.readings.filter((reading) => reading.time > time);
      const ended = close(draft, time);
      draft = { ...anew(time, readings), fresh: false };
      return ended;
    },
    steady: () => {
      const last = draft?.readings.at(-1);
      if (last === undefined || draft?.anchor === null || draft?.left !== null) return null;
      return hzOf(last.cents);
    },
    swing() {
      const readings = draft?.readings ?? [];
      const now = readings.at(-1)?.time ?? 0;
      const past = readings.flatMap(({ time, cents }) =>
        time > now - SWING.from && time < now - SWING.to ? [cents] : [],
      );
      return past.length === 0 ? 0 : Math.max(...past) - Math.min(...past);
    },
    end() {
      if (draft === null) return [];
      const ended = close(draft, draft.readings.at(-1)?.time ?? draft.from);
      draft = null;
      return ended;
    },
  };
};
