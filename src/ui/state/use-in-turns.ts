import { useEffect, useState } from 'react';

/**
 * What pieces of work come to, each done in a task of its own, so that the page answers between them; null until all
 * are done. A piece that throws fails as if it had been done while the component was drawn.
 *
 * @param work the pieces; another list begins anew, so it must stay the same while it means the same.
 */
export const useInTurns = <Made>(work: readonly (() => Made)[]): readonly Made[] | null => {
  const [done, setDone] = useState<{ readonly work: typeof work; readonly made: readonly Made[] } | null>(
    null,
  );
  useEffect(() => {
    const made: Made[] = [];
    let turn = setTimeout(function next() {
      const piece = work[made.length];
      if (piece === undefined) return setDone({ work, made });
      try {
        made.push(piece());
      } catch (error) {
        return setDone(() => {
          throw error;
        });
      }
      turn = setTimeout(next);
    });
    return () => clearTimeout(turn);
  }, [work]);
  return done?.work === work ? done.made : null;
};
