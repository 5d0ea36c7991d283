import type { ReactNode } from 'react';
import { useSelected } from '../state/session-context';
import { Boundary } from './boundary';

interface Props {
  readonly part: string;
  readonly onFailed?: () => void;
  readonly children: ReactNode;
}

/** A boundary that tries again with the next bar and with every choice: what failed may have been in this one alone. */
export const Guarded = ({ part, onFailed, children }: Props) => {
  const now = useSelected((state) => state.now);
  return (
    <Boundary part={part} tryAgainOn={now} onFailed={onFailed}>
      {children}
    </Boundary>
  );
};
