/** Sums of both sides, each in as few passes over the samples as do it. */
import type { Sides } from '../../core/signal/stereo-convolver';
import { type Rounding, roundedOff } from '../mixer/channel-strips';

/** What the parts add up to: both sides, and what is sent to the room. */
export interface MixSums {
  readonly left: Float32Array;
  readonly right: Float32Array;
  readonly send: Float32Array;
}

/** Samples in mono and how loud they are on each side. */
export interface Spread {
  readonly samples: Float32Array;
  readonly toLeft: number;
  readonly toRight: number;
}

/** Writes three of them to both sides, over what is there or, with 1 for `kept`, beside it. */
const spreadThree = (
  [left, right]: Sides,
  [one, two, three]: readonly [Spread, Spread, Spread],
  kept: 0 | 1,
): void => {
  const [a, b, c] = [one.samples, two.samples, three.samples];
  const [aLeft, bLeft, cLeft] = [one.toLeft, two.toLeft, three.toLeft];
  const [aRight, bRight, cRight] = [one.toRight, two.toRight, three.toRight];
  // Taken out of an array they would cost as much again.
  for (let i = 0; i < left.length; i += 1) {
    const x = a[i] ?? 0;
    const y = b[i] ?? 0;
    const z = c[i] ?? 0;
    left[i] = kept * (left[i] ?? 0) + aLeft * x + bLeft * y + cLeft * z;
    right[i] = kept * (right[i] ?? 0) + aRight * x + bRight * y + cRight * z;
  }
};

/** Writes mono samples to both sides, none of them shorter than these; silence where there are none. */
export const spread = (sides: Sides, all: readonly Spread[]): void => {
  const nothing = { samples: sides[0], toLeft: 0, toRight: 0 };
  if (all.length === 0) for (const side of sides) side.fill(0);
  for (let at = 0; at < all.length; at += 3) {
    const [one = nothing, two = nothing, three = nothing] = all.slice(at, at + 3);
    spreadThree(sides, [one, two, three], at === 0 ? 0 : 1);
  }
};

/** Rounds peaks off, in place. */
export const roundOff = (samples: Float32Array, rounding: Rounding): void => {
  const { from } = rounding;
  for (let i = 0; i < samples.length; i += 1) {
    const amplitude = samples[i] ?? 0;
    if (amplitude > from || amplitude < -from) samples[i] = roundedOff(amplitude, rounding);
  }
};

/** Gains of one side to each sum. */
export interface ToSums {
  readonly left: number;
  readonly right: number;
  readonly send: number;
}

/** Adds both sides to the sums. */
export const addSides = (
  { left, right, send }: MixSums,
  [one, other]: Sides,
  from: readonly [ToSums, ToSums],
): void => {
  const [{ left: oneLeft, right: oneRight, send: oneSend }, to] = from;
  const [otherLeft, otherRight, otherSend] = [to.left, to.right, to.send];
  for (let i = 0; i < left.length; i += 1) {
    const x = one[i] ?? 0;
    const y = other[i] ?? 0;
    left[i] = (left[i] ?? 0) + oneLeft * x + otherLeft * y;
    right[i] = (right[i] ?? 0) + oneRight * x + otherRight * y;
    send[i] = (send[i] ?? 0) + oneSend * x + otherSend * y;
  }
};
