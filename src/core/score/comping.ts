import type { Chord } from '../theory/chord';
import { createRandom, pick, type Random, seedFrom } from '../theory/random';
import { chordShape } from './chord-scale';
import { COMP_BOOK, COMP_FAMILY } from './comping-patterns';
import { noteEvent } from './note';
import { type Level, type Passage, type Segment, segmentsOf } from './passage';
import type { NoteEvent } from './score';
import { fitSteps, hitSteps, readSteps, type StepBar, ticksOf } from './steps';
import type { ChordVoice } from './style';
import { COMPING_REGISTER, type Colour, nextVoicing, type Register, ROOMY_REGISTER } from './voicing';

/** How loud a chord of this instrument is struck, so that the four balance against bass and drums. */
const VELOCITY: Readonly<Record<ChordVoice, number>> = {
  piano: 72,
  'electric-piano': 72,
  organ: 66,
  guitar: 72,
};
/** Share of the beat a short stab lasts. */
const STAB: Readonly<Record<ChordVoice, number>> = {
  piano: 0.34,
  'electric-piano': 0.42,
  organ: 0.3,
  guitar: 0.26,
};

const MARK_GAIN: Readonly<Record<string, number>> = {
  s: 0.94,
  S: 1.14,
  h: 1,
  p: 1.06,
  '5': 0.9,
  '6': 0.9,
  '7': 0.94,
};

/** How richly a feel is voiced: jazz colours where they belong, triads and sevenths where the riff is plain. */
const colourOf = (passage: Passage, level: Level): Colour => {
  const family = COMP_FAMILY[passage.feel];
  if (passage.style.chords === 'guitar' && family !== 'swing') return level === 0 ? 'shell' : 'plain';
  if (family === 'swing' || family === 'slow' || family === 'ballad') return level === 0 ? 'plain' : 'rich';
  return 'plain';
};

interface Voiced {
  readonly segment: Segment;
  readonly pitches: readonly number[];
}

/** Voices every chord once, and moves within long chords now and then. */
const voiceSegments = (random: Random, passage: Passage, register: Register): readonly Voiced[] => {
  const voiced: Voiced[] = [];
  let before: readonly number[] | null = null;
  for (const segment of segmentsOf(passage)) {
    const level = passage.shapes[segment.bar]?.level ?? 1;
    const moves = segment.change || before === null || random() < 0.2 + level * 0.12;
    const pitches: readonly number[] = moves
      ? nextVoicing(random, before, segment.chord, colourOf(passage, level), register)
      : (before ?? []);
    voiced.push({ segment, pitches });
    before = pitches;
  }
  return voiced;
};

const FREE_BAR = readSteps('. . . .')[0] ?? [];

/** One rhythm for the chorus, a second that answers in the last bar of each phrase, and bars left free. */
const rhythmOfBars = (random: Random, passage: Passage): readonly StepBar[] => {
  const book = COMP_BOOK[COMP_FAMILY[passage.feel]][passage.style.chords];
  const level = passage.shapes.find((shape) => shape.chords === 'play')?.level ?? 1;
  const main = pick(random, book[level]);
  const answer = pick(random, book[level]);
  const restChance = [0.4, 0.14, 0.05][level] ?? 0;
  return passage.shapes.map((shape, bar) => {
    if (shape.chords === 'hits') return hitSteps(shape.hits, passage.grid.beats);
    if (shape.chords === 'tacet') return FREE_BAR;
    const inPhrase = bar % 4;
    const held = main.includes('h') || passage.style.chords === 'organ';
    if (inPhrase < 2 && bar > 0 && random() < restChance && !held) return FREE_BAR;
    const own = book[shape.level];
    const text = inPhrase === 3 ? answer : random() < 0.22 ? pick(random, own) : main;
    return fitSteps(readSteps(text)[0] ?? [], passage.grid.beats, 'line');
  });
};

interface Attack {
  readonly at: number;
  readonly mark: string;
  readonly bar: number;
}

const isAttack = (mark: string): boolean => mark !== '.' && mark !== '-';

/** Attacks in time order; a change of chord that no attack meets within its first beats gets one of its own. */
const attacksOf = (
  passage: Passage,
  rhythm: readonly StepBar[],
  voiced: readonly Voiced[],
): readonly Attack[] => {
  const attacks: Attack[] = passage.chart.bars.flatMap((bar, index) =>
    (rhythm[index] ?? [])
      .filter((step) => isAttack(step.mark))
      .map((step) => ({
        at: bar.at + ticksOf(passage.grid, step),
        mark: step.mark === 'x' ? 'S' : step.mark,
        bar: index,
      })),
  );
  let holding = false;
  const added: Attack[] = [];
  for (const { segment } of voiced) {
    const own = attacks.filter(({ at }) => at > segment.at - 1 && at < segment.at + segment.length - 1);
    const shape = passage.shapes[segment.bar];
    const meets = own.some(({ at }) => at < segment.at + 1);
    if (segment.change && !meets && shape?.chords === 'play') {
      if (holding) added.push({ at: segment.at, mark: 'h', bar: segment.bar });
      else if (own.length === 0) added.push({ at: segment.at, mark: 's', bar: segment.bar });
    }
    const latest = own.at(-1);
    if (latest !== undefined) holding = latest.mark === 'h';
    else if (shape?.chords !== 'play') holding = false;
  }
  return [...attacks, ...added].sort((a, b) => a.at - b.at);
};

/** Root with fifth, sixth or seventh, the shuffle figure of the left hand or the low strings. */
const dyad = (chord: Chord, mark: string, register: Register): readonly number[] => {
  const shape = chordShape(chord);
  const root = register.low + ((((chord.root - register.low) % 12) + 12) % 12);
  const upper =
    mark === '5'
      ? shape.fifth
      : mark === '6'
        ? shape.minor
          ? (shape.seventh ?? 9)
          : 9
        : (shape.seventh ?? 9);
  return root + upper <= register.high
    ? [root, root + upper]
    : [root - 12 + upper, root].filter((p) => p >= register.low);
};

const pitchesFor = (
  passage: Passage,
  voiced: readonly Voiced[],
  attack: Attack,
  register: Register,
  following: readonly number[],
): readonly number[] => {
  const index = voiced.findLastIndex(({ segment }) => segment.at <= attack.at + 1);
  const here = voiced[index];
  if (here === undefined) return [];
  if (attack.mark === 'p') {
    const next = voiced[index + 1];
    const close = here.segment.at + here.segment.length - attack.at < passage.grid.beatTicks;
    return close ? (next?.pitches ?? following) : here.pitches;
  }
  return '567'.includes(attack.mark) ? dyad(here.segment.chord, attack.mark, register) : here.pitches;
};

const endOfHold = (passage: Passage, attack: Attack, next: Attack | undefined): number => {
  const until = next?.at ?? passage.chart.length;
  const silent = passage.chart.bars.find(
    (bar, i) => bar.at > attack.at && passage.shapes[i]?.chords !== 'play',
  );
  return Math.min(until, silent?.at ?? passage.chart.length);
};

/** The chord part of a passage: voiced in C3–C5 (lower when asked to leave room), each instrument in its own way. */
export const playChords = (passage: Passage): readonly NoteEvent[] => {
  const random = createRandom(seedFrom(passage.seed, 'chords'));
  const register = passage.style.leaveRoom ? ROOMY_REGISTER : COMPING_REGISTER;
  const voiced = voiceSegments(random, passage, register);
  const last = voiced.at(-1);
  const following =
    passage.next === null || last === undefined
      ? []
      : nextVoicing(random, last.pitches, passage.next, colourOf(passage, 1), register);
  const attacks = attacksOf(passage, rhythmOfBars(random, passage), voiced);
  const { chords } = passage.style;
  const stab = passage.grid.beatTicks * STAB[chords];
  return attacks.flatMap((attack, i) => {
    const next = attacks[i + 1];
    const room = endOfHold(passage, attack, next) - attack.at;
    const length = attack.mark === 'h' ? room * 0.96 : Math.min(room, stab);
    const gain = (passage.shapes[attack.bar]?.gain ?? 1) * (MARK_GAIN[attack.mark] ?? 1);
    const stroke = VELOCITY[chords] * gain + (random() - 0.5) * 7;
    return pitchesFor(passage, voiced, attack, register, following).map((pitch, voice, all) =>
      noteEvent('chords', {
        at: attack.at,
        length,
        pitch,
        velocity: stroke + (voice === all.length - 1 ? 4 : 0) + (random() - 0.5) * 4,
      }),
    );
  });
};
