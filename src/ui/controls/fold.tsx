import type { ReactNode } from 'react';

interface Props {
  readonly title: string;
  readonly open?: boolean;
  readonly children: ReactNode;
}

/** A part of a panel that opens when it is wanted. */
export const Fold = ({ title, open = false, children }: Props) => (
  <details className="fold" open={open}>
    <summary>
      <h3>{title}</h3>
    </summary>
    <div className="group">{children}</div>
  </details>
);
