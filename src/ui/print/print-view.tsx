import { type ComponentType, Suspense, useLayoutEffect, useState } from 'react';
import { flushSync } from 'react-dom';

const PRINT = 'print';

/**
 * True while the page is printed. The browser takes the page as it stands when its event returns, so the paper must
 * be there at once; until it says that it is done, the medium alone does not take the paper away, for its news may
 * be older.
 */
const usePrinting = (): boolean => {
  const [printing, setPrinting] = useState(() => window.matchMedia(PRINT).matches);
  useLayoutEffect(() => {
    const media = window.matchMedia(PRINT);
    let asked = false;
    const follow = (): void => flushSync(() => setPrinting(asked || media.matches));
    const begin = (): void => {
      asked = true;
      follow();
    };
    const end = (): void => {
      asked = false;
      follow();
    };
    window.addEventListener('beforeprint', begin);
    window.addEventListener('afterprint', end);
    media.addEventListener('change', follow);
    return () => {
      window.removeEventListener('beforeprint', begin);
      window.removeEventListener('afterprint', end);
      media.removeEventListener('change', follow);
    };
  }, []);
  return printing;
};

/** What a printer gets that was quicker than the paper. */
const NotYet = () => (
  <article className="paper" aria-label="The song on paper">
    <p>The part of the program that prints is still being fetched. Print again in a moment.</p>
  </article>
);

/** The song as paper, there only while it is printed. */
export const PrintView = ({ paper: Paper }: { readonly paper: ComponentType }) =>
  usePrinting() ? (
    <Suspense fallback={<NotYet />}>
      <Paper />
    </Suspense>
  ) : null;
