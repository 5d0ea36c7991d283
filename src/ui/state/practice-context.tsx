import { createContext, type ReactNode, useContext, useMemo } from 'react';
import type { Line } from '../../core/lines/lines';
import type { Trading } from '../../core/practice/trading';
import { createFetched, useHere } from './fetched';
import { useSelected } from './session-context';

interface Practice {
  /** The line through the whole chorus being heard, in its key. */
  readonly line: Line | null;
  /** Who plays when in the chorus being heard. */
  readonly trading: Trading | null;
  /** What was thrown when they could not be worked out. */
  readonly failed?: { readonly error: unknown };
}

/** What works lines and calls out. */
export const PRACTICE_WORK = createFetched(() => import('./practice-work'));

const NOTHING: Practice = { line: null, trading: null };
const PracticeContext = createContext<Practice>(NOTHING);

/** Works the line and the calls out once for everything on the page that shows them. */
export const PracticeProvider = ({ children }: { readonly children: ReactNode }) => {
  const settings = useSelected((state) => state.settings);
  const form = useSelected((state) => state.form);
  const harp = useSelected((state) => state.now.tune.harp);
  const chorus = useSelected((state) => state.now.chorus);
  const run = useSelected((state) => state.tradeRun);
  const warming = useSelected((state) => state.warmUp !== null);
  const work = useHere(PRACTICE_WORK);
  const practice = useMemo((): Practice => {
    if (warming || work === null) return NOTHING;
    try {
      return {
        line: work.lineFor(settings, form, harp),
        trading: work.tradingFor(settings, { chart: form, harp, chorus }, run),
      };
    } catch (error) {
      return { ...NOTHING, failed: { error } };
    }
  }, [settings, form, harp, chorus, run, warming, work]);
  return <PracticeContext value={practice}>{children}</PracticeContext>;
};

/** The line and the calls of the chorus being heard. */
export const usePractice = (): Practice => useContext(PracticeContext);

/** Fails, to be caught and said, where the line or the calls could not be worked out; nothing otherwise. */
export const PracticeSign = () => {
  const { failed } = usePractice();
  if (failed) throw failed.error;
  return null;
};
