import type { Harp, Sound } from '../harp/harp';
import { effortOf, isFloor, registerOf } from '../harp/reach';
import type { Ticks } from '../theory/units';
import type { LineKind, LineSlot, Pace } from './line-slots';
import type { LineTaste } from './line-tastes';

/**
 * What makes one line harder or rougher than another. Every part is a number times a weight; the weights are the
 * player's taste. The parts and their sizes are judgements of the trade (common practice, no source):
 *
 * - holes: the mouth travels; each hole further is one more chance to miss.
 * - turns: blow to draw or back interrupts the air; free after a breath.
 * - technique: the effort of bends and overbends, half a point more where one must be hit from elsewhere instead of
 *   being reached on the hole and breath that already sound, and a little for every note of the top octave, whose
 *   short reeds want a smaller mouth and where blow and draw change places.
 * - leaps: semitones between neighbours, because a smooth line moves by step.
 * - intonation: how far the note may be off, and for how long it is held: a natural note by its reed's tuning, a
 *   bend with the reed's floor to lean on less than one in mid air, an overbend like the latter.
 * - air: lungs fill by drawing and empty by blowing; what goes beyond a comfortable breath counts by the beat.
 * - shape: what the kind of line asks for: no note twice over one chord, no needless change of direction, no chord
 *   tone left out on the way.
 */
export interface LineCost {
  readonly holes: number;
  readonly turns: number;
  readonly technique: number;
  readonly leaps: number;
  readonly intonation: number;
  readonly air: number;
  readonly shape: number;
  /** Places left empty because nothing in reach gives a wanted tone. */
  readonly missing: number;
  readonly total: number;
}

/** What each thing a player dislikes costs a line. */
export interface LineWeights {
  /** Per hole. */
  readonly hole: number;
  /** Per change of breath. */
  readonly turn: number;
  /** Per point of effort. */
  readonly technique: number;
  /** Per semitone. */
  readonly leap: number;
  /** Per point of risk held for a whole bar. */
  readonly intonation: number;
  /** Per note and beat of air beyond comfort. */
  readonly air: number;
}

export const LINE_WEIGHTS: Readonly<Record<LineTaste, LineWeights>> = {
  gentle: { hole: 1, turn: 0.8, technique: 3, leap: 0.15, intonation: 3, air: 0.5 },
  even: { hole: 0.7, turn: 0.6, technique: 1.2, leap: 0.3, intonation: 1.5, air: 0.3 },
  bold: { hole: 0.4, turn: 0.4, technique: 0.3, leap: 0.5, intonation: 0.4, air: 0.2 },
};

/** What a kind of line asks of its shape. */
export interface LineShape {
  /** For the same pitch twice over the same chord. */
  readonly again: number;
  /** For turning from rising to falling or back. */
  readonly swerve: number;
  /** For each tone of the chord passed over. */
  readonly skip: number;
}

/** Guide tones may hold; a moving line must move; an arpeggio climbs through every tone and then falls. */
export const lineShape = (kind: LineKind, pace: Pace): LineShape => {
  if (kind === 'guide tones') return { again: 0, swerve: 0, skip: 0 };
  if (kind === 'arpeggio') return { again: 14, swerve: 4, skip: 4 };
  return pace === 1 ? { again: 4, swerve: 0, skip: 0 } : { again: 8, swerve: 1.5, skip: 0.5 };
};

/** Beats of playing on one breath that are comfortable either way: two bars of four (common practice, no source). */
export const COMFORTABLE_BEATS = 8;

/** For a place left empty; dearer than any note and the way to it and from it. */
const MISSING = 1000;

const ATTACKED = 0.5;
const TOP_OCTAVE = 0.4;
const RISK = { floor: 0.4, open: 0.9, centsOfOne: 50 } as const;

/** A sound with what is known of it whatever comes before. */
export interface PricedSound {
  readonly sound: Sound;
  readonly effort: number;
  /** 0 for a reed in tune, about 1 for a note that hangs in the air. */
  readonly risk: number;
}

const riskOf = (sound: Sound, harp: Harp): number => {
  if (sound.technique === 'natural') return Math.abs(sound.cents) / RISK.centsOfOne;
  return sound.technique === 'bend' && isFloor(sound, harp) ? RISK.floor : RISK.open;
};

/** Effort and risk of a sound; they depend on the whole harp, never on what else the player can reach. */
export const priceSound = (sound: Sound, harp: Harp): PricedSound => ({
  sound,
  effort: effortOf(sound, harp) + (registerOf(sound.pitch, harp) === 'high' ? TOP_OCTAVE : 0),
  risk: riskOf(sound, harp),
});

/** What the cost of a line depends on beside its notes. */
export interface CostContext {
  readonly weights: LineWeights;
  readonly shape: LineShape;
  readonly beatTicks: Ticks;
  readonly comfortableBeats: number;
}

const FREE: LineCost = {
  holes: 0,
  turns: 0,
  technique: 0,
  leaps: 0,
  intonation: 0,
  air: 0,
  shape: 0,
  missing: 0,
  total: 0,
};

const summed = (cost: Partial<LineCost>): LineCost => {
  const total = Object.values(cost).reduce((sum, part) => sum + part, 0);
  return { ...FREE, ...cost, total };
};

/** Adds up two costs, part by part. */
export const addCosts = (a: LineCost, b: LineCost): LineCost => ({
  holes: a.holes + b.holes,
  turns: a.turns + b.turns,
  technique: a.technique + b.technique,
  leaps: a.leaps + b.leaps,
  intonation: a.intonation + b.intonation,
  air: a.air + b.air,
  shape: a.shape + b.shape,
  missing: a.missing + b.missing,
  total: a.total + b.total,
});

/** The cost of nothing. */
export const NO_COST: LineCost = FREE;

/** Chord tones strictly between two pitches. */
const passedOver = (from: number, to: number, slot: LineSlot): number => {
  const classes = new Set<number>(slot.chord.tones.map(({ pitchClass }) => pitchClass));
  let count = 0;
  for (let pitch = Math.min(from, to) + 1; pitch < Math.max(from, to); pitch += 1) {
    if (classes.has(((Math.round(pitch) % 12) + 12) % 12)) count += 1;
  }
  return count;
};

/** A note as the cost sees it: a sound at a place. */
export interface PlacedSound {
  readonly slot: LineSlot;
  readonly priced: PricedSound;
}

/** What a note costs after another (or after silence), its air and the turn of the tune's direction apart. */
export const stepCost = (before: PlacedSound | null, next: PlacedSound, context: CostContext): LineCost => {
  const { weights, shape, beatTicks } = context;
  const { slot, priced } = next;
  const { sound, effort, risk } = priced;
  const from = before?.priced.sound;
  const beats = Math.min(4, slot.length / beatTicks);
  const prepared = from !== undefined && from.hole === sound.hole && from.breath === sound.breath;
  const attacked = sound.technique === 'natural' || prepared ? 0 : ATTACKED;
  const own = {
    technique: weights.technique * (effort + attacked),
    intonation: weights.intonation * risk * (beats / 4),
  };
  if (before === null || from === undefined) return summed(own);
  const again = from.pitch === sound.pitch && before.slot.chord.symbol === slot.chord.symbol;
  return summed({
    ...own,
    holes: weights.hole * Math.abs(sound.hole - from.hole),
    turns: from.breath === sound.breath || slot.breathes ? 0 : weights.turn,
    leaps: weights.leap * Math.abs(sound.pitch - from.pitch),
    shape:
      (again ? shape.again : 0) +
      (shape.skip === 0 ? 0 : shape.skip * passedOver(from.pitch, sound.pitch, slot)),
  });
};

/** The cost of leaving a place empty. */
export const missingCost = (): LineCost => summed({ missing: MISSING });

/** Which way a tune is going; `null` while it has not moved. */
export type Direction = 'up' | 'down' | null;

/** The direction after a step; the same pitch goes on as before. */
export const directionAfter = (direction: Direction, from: number, to: number): Direction =>
  to === from ? direction : to > from ? 'up' : 'down';

/** What a change of direction costs by the shape that is asked for; going on in one, or beginning, costs nothing. */
export const swerveCost = (before: Direction, after: Direction, { shape }: CostContext): LineCost =>
  summed({ shape: before !== null && after !== before ? shape.swerve : 0 });

/** A note's length in beats of air, counted in halves so that sums stay exact. */
const airBeats = (slot: LineSlot, { beatTicks }: CostContext): number =>
  Math.max(1, Math.round((2 * slot.length) / beatTicks)) / 2;

/**
 * Air in beats: 0 at ease, positive full, negative empty. Beyond twice the comfortable breath there is no more to
 * fill or empty; the player lets air by.
 */
export const airAfter = (air: number, { slot, priced }: PlacedSound, context: CostContext): number => {
  const most = 2 * context.comfortableBeats;
  const start = slot.breathes ? 0 : air;
  const taken = (priced.sound.breath === 'draw' ? 1 : -1) * airBeats(slot, context);
  return Math.max(-most, Math.min(most, start + taken));
};

/** What the air after a note costs. */
export const airCost = (air: number, { weights, comfortableBeats }: CostContext): LineCost =>
  summed({ air: weights.air * Math.max(0, Math.abs(air) - comfortableBeats) });
