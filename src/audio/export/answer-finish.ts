import type { FinishOrder } from './finish-messages';
import type { Finished } from './finisher';
import { createFinisher, type Finisher } from './finisher';

/**
 * Carries out the orders of one file: null says that it is opened, and nothing is answered to what is only told. Throws an
 * Error when it is not opened first.
 */
export const createFinishAnswers = (): ((order: FinishOrder) => Finished | null | undefined) => {
  let finisher: Finisher | null = null;
  return (order) => {
    if (order.kind === 'open') {
      finisher = createFinisher(order.options);
      return null;
    }
    if (finisher === null) throw new Error('there is no file to finish');
    switch (order.kind) {
      case 'sound':
        finisher.know(order.id, order.sound);
        return undefined;
      case 'forget':
        finisher.forget(order.id);
        return undefined;
      case 'stretch':
        return finisher.next(order.notes, order.frames);
      case 'rest':
        return finisher.rest();
    }
  };
};
