import type { ReactNode } from 'react';
import { useSelected } from '../state/session-context';
import { Boundary } from './boundary';

/** A boundary that tries again with the next bar and with every choice: what failed may have been in this one alone. */
export const Guarded = ({ part, children }: { readonly part: string; readonly children: ReactNode }) => {
  const now = useSelected((state) => state.now);
  return (
    <Boundary part={part} tryAgainOn={now}>
      {children}
    </Boundary>
  );
};
