import { useEffect, useMemo, useState } from 'react';
import type { BendPractice } from '../../../app/bends/bend-practice';
import { type BendResults, harpKind } from '../../../core/bends/bend-results';
import { useSelected, useSession } from '../../state/session-context';

/** Bend practice, once it is here: null before; what is practised ends with the page that showed it. */
export const useBendPractice = (): BendPractice | null => {
  const { commands } = useSession();
  const [practice, setPractice] = useState<BendPractice | null>(null);
  useEffect(() => {
    let here = true;
    let opened: BendPractice | null = null;
    void commands.openBends().then((found) => {
      opened = found;
      if (here) setPractice(found);
    });
    return () => {
      here = false;
      opened?.stop();
    };
  }, [commands]);
  return practice;
};

/** What is kept of each sound of the harp in hand, by its id. */
export const useBendResults = (): ReadonlyMap<string, BendResults> => {
  const harp = useSelected((state) => state.tune.harp);
  const results = useSelected((state) => state.bends.results);
  return useMemo(() => {
    const kind = harpKind(harp);
    return new Map(results.filter((each) => each.kind === kind).map((each) => [each.name, each]));
  }, [harp, results]);
};
