import type { ComponentType, ReactNode } from 'react';
import { createFetched, useHere } from '../state/fetched';

/**
 * A component that nothing needs before the page is drawn: fetched with everything else at rest, its place empty until
 * it is here.
 *
 * @example
 * const LevelMeter = laterView(async () => (await import('./level-meter')).LevelMeter);
 */
export const laterView = <Given extends object>(
  load: () => Promise<ComponentType<Given>>,
): ((given: Given) => ReactNode) => {
  const fetched = createFetched(load);
  return (given) => {
    const Show = useHere(fetched);
    return Show === null ? null : <Show {...given} />;
  };
};
