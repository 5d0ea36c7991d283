import { useEffect, useState } from 'react';
import type { BendPractice } from '../../app/bends/bend-practice';
import { useSession } from './session-context';

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
