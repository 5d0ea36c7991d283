/** What is said of a try: what happened, and one thing to do next. */
import type { Sound } from '../harp/harp';
import { spokenHole } from '../harp/tab';
import type { BendTask, Exercise } from './bend-exercise';
import type { BendVerdict } from './bend-verdict';

/** What is said of a bend: what happened, and what to do next. */
export interface VerdictWords {
  /** A word or two, to be read from afar. */
  readonly short: string;
  readonly happened: string;
  readonly next: string;
}

/** Three sentences for a first bend, after lesson pages on draw bends: common practice, no more. */
export const FIRST_BEND: readonly string[] = [
  'Draw the plain note gently and let nothing but that one hole sound: a sliver of the next stops the bend.',
  'While you draw, go from “ee” to “oo” inside the mouth: the tip of the tongue low, its back rising, the jaw a little down, cool air along the roof of the mouth.',
  'Do not pull harder: the mouth bends the note, the breath only carries it, and a teacher who hears you can show in a minute what a page cannot.',
];

/** What a player does in each exercise. */
export const EXERCISE_WORDS: Readonly<Record<Exercise, { readonly name: string; readonly how: string }>> = {
  dip: {
    name: 'Any dip counts',
    how: 'Play the plain note and let it sink, however little, then let it rise.',
  },
  hold: { name: 'Hold', how: 'Get there in any way and hold it for a slow count of two.' },
  slide: { name: 'Slide', how: 'Begin on the plain note and slide into the bend in one breath.' },
  cold: { name: 'Hit it cold', how: 'Shape the mouth first, then breathe: it is there from the start.' },
  'in and out': { name: 'In and out', how: 'Plain note, bend, plain note: all in one breath.' },
};

const whole = (cents: number): string => `${Math.round(Math.abs(cents))} cents`;
const tenths = (seconds: number): string => `${seconds.toFixed(1)} s`;

/** Which way the pitch should go, for a player who cannot see the mouth. */
const towards = ({ technique }: Sound, cents: number): string => {
  if (technique === 'overbend') return cents > 0 ? 'Ease it down.' : 'Lift it a little, without more air.';
  return cents > 0
    ? 'Let it sink further: tongue a little further back, no more air.'
    : 'Let it rise a little: it is deeper than it need be.';
};

const ofStood = (
  { target, exercise, natural }: BendTask,
  verdict: Extract<BendVerdict, { readonly blue: unknown }>,
): VerdictWords => {
  const { kind, cents, held, blue } = verdict;
  if (exercise === 'dip') {
    return {
      short: 'It dips',
      happened: `The note fell ${whole((natural ?? 0) - cents)}.`,
      next: 'Do it again, slowly, and feel what the tongue did.',
    };
  }
  const way = cents < 0 ? 'flat' : 'sharp';
  const off = Math.round(cents) === 0 ? 'Right on it' : `${whole(cents)} ${way}`;
  if (kind === 'right') {
    return { short: 'Right', happened: `${off}, held ${tenths(held)}.`, next: 'Once more, to keep it.' };
  }
  if (blue !== null) {
    return {
      short: off,
      happened: `${off} of a piano, between the semitones: in place as a blue ${blue}.`,
      next: 'Keep it if you meant it; aim for the piano’s note if not.',
    };
  }
  return { short: off, happened: `${off}, held ${tenths(held)}.`, next: towards(target, cents) };
};

const MISSING: Readonly<Record<'start' | 'end' | 'cold', VerdictWords>> = {
  start: {
    short: 'Begin plain',
    happened: 'The bend came without the plain note before it.',
    next: 'Sound the plain note first, then slide.',
  },
  end: {
    short: 'Come back',
    happened: 'The bend came, and the note did not rise again.',
    next: 'Let it rise to the plain note in the same breath.',
  },
  cold: {
    short: 'It slid in',
    happened: 'The pitch came, but not at once.',
    next: 'Shape the mouth before you breathe.',
  },
};

const isPlainOf = ({ hole, breath }: Sound, sound: Sound): boolean =>
  sound.hole === hole && sound.breath === breath && sound.technique === 'natural';

/** What became of a try, in words: happened first, then one next step. */
export const verdictWords = (task: BendTask, verdict: BendVerdict): VerdictWords => {
  switch (verdict.kind) {
    case 'right':
    case 'flat':
    case 'sharp':
      return ofStood(task, verdict);
    case 'short':
      return {
        short: 'Too short',
        happened: `It was there for ${tenths(verdict.held)}.`,
        next: 'Keep the mouth as it is and let the breath go on.',
      };
    case 'dip':
      return {
        short: 'A dip',
        happened: `It fell ${whole(verdict.fall)} and did not arrive.`,
        next: 'That is the way: let it sink further, slowly, no harder.',
      };
    case 'other': {
      // Of a first bend the plain note is how everybody begins, and no other note.
      if (task.exercise === 'dip' && verdict.sounds.some((sound) => isPlainOf(task.target, sound)))
        return {
          short: 'Still plain',
          happened: 'The note stayed where it is, which is how it begins.',
          next: 'Let it sink while it sounds, however little, no harder.',
        };
      const names = verdict.sounds.map(spokenHole).join(' or ');
      return {
        short: names === '' ? 'Another note' : names,
        happened:
          names === '' ? 'Another note was heard, which this harp does not have.' : `That was ${names}.`,
        next: `Hear ${spokenHole(task.target)} once more, then aim for it.`,
      };
    }
    case 'unsteady':
      return {
        short: 'Unsteady',
        happened: 'It sounded and never settled.',
        next: 'One hole only, softer breath, and let it speak by itself.',
      };
    case 'shape':
      return MISSING[verdict.missing];
    case 'nothing':
      return {
        short: 'Nothing heard',
        happened: 'No note was heard in this turn.',
        next: 'Come nearer to the microphone, or play a plain note to see whether it hears you.',
      };
  }
};
