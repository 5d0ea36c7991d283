import { type ReactNode, useState } from 'react';

interface Props {
  readonly title: string;
  readonly open?: boolean;
  readonly children: ReactNode;
}

/** A part of a panel whose contents are worked out once it is opened: they are sums over the whole log. */
export const LazyFold = ({ title, open = false, children }: Props) => {
  const [seen, setSeen] = useState(open);
  return (
    <details
      className="fold"
      open={open}
      onToggle={(event) => {
        if (event.currentTarget.open) setSeen(true);
      }}
    >
      <summary>
        <h3>{title}</h3>
      </summary>
      <div className="group">{seen && children}</div>
    </details>
  );
};
