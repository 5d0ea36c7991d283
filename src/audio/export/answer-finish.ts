import type { Sides } from '../../core/signal/stereo-convolver';
import type { Finished, FinishOrder } from './finish-messages';
import { createFinisher, type Finisher } from './finisher';

/** Finishes one file as it is ordered to. Throws an Error when it is not opened first. */
export const createFinishAnswers = (): ((order: FinishOrder) => Finished | null) => {
  let finisher: Finisher | null = null;
  const finished = ([left, right]: Sides): Finished => ({ left, right });
  return (order) => {
    if (order.kind === 'open') {
      finisher = createFinisher(order.options);
      return null;
    }
    if (finisher === null) throw new Error('there is no file to finish');
    return finished(order.kind === 'piece' ? finisher.add(order.piece) : finisher.rest());
  };
};
