import type { ReactNode } from 'react';

/** One line of a legend: a sign and what it says. */
export const Sign = ({ sign, children }: { readonly sign: ReactNode; readonly children: ReactNode }) => (
  <div>
    <dt>{sign}</dt>
    <dd>{children}</dd>
  </div>
);
