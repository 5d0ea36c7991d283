/** What the worker that encodes plain samples does with each order. */
import { encodePcm, type WavFormat } from '../../core/formats/wav';
import { createDraws, type Draws } from '../../core/theory/random';
import { messageOf } from '../../core/theory/thrown';
import type { Encoded } from './encoding-line';

/** How samples are written. */
export interface PcmForm {
  readonly bits: WavFormat['bits'];
  /** Seed of the noise that is added before 16 bits are rounded. */
  readonly seed: number;
}

/** Asks for the bytes of the next samples of one file. */
export interface PcmOrder {
  readonly form: PcmForm;
  readonly left: Float32Array;
  readonly right: Float32Array;
}

/** Answers the orders of one file one after another: its noise goes on from each to the next. None throws. */
export const createPcmAnswers = (): ((order: PcmOrder) => Encoded) => {
  let draws: Draws | null = null;
  return ({ form, left, right }) => {
    try {
      if (form.bits === 16) draws ??= createDraws(form.seed);
      return { kind: 'frames', bytes: encodePcm([left, right], form.bits, draws) };
    } catch (error) {
      return { kind: 'failed', reason: messageOf(error) };
    }
  };
};
