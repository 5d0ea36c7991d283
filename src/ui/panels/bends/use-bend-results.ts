import { useMemo } from 'react';
import { type BendResults, harpKind } from '../../../core/bends/bend-results';
import { useSelected } from '../../state/session-context';

/** What is kept of each sound of the harp in hand, by its id. */
export const useBendResults = (): ReadonlyMap<string, BendResults> => {
  const harp = useSelected((state) => state.tune.harp);
  const results = useSelected((state) => state.bends.results);
  return useMemo(() => {
    const kind = harpKind(harp);
    return new Map(results.filter((each) => each.kind === kind).map((each) => [each.name, each]));
  }, [harp, results]);
};
