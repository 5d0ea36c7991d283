import type { ReactNode } from 'react';

interface Props {
  /** What is being done and how far it is; null at rest. */
  readonly working: ReactNode | null;
  readonly onCancel: () => void;
  readonly message: { readonly tone: 'note' | 'trouble'; readonly text: string } | null;
}

/** What is being done with a way to stop it, and how the last thing went. */
export const WorkReport = ({ working, onCancel, message }: Props) => (
  <div className="saving">
    {working !== null && (
      <>
        {working}
        <button type="button" className="tool" onClick={onCancel}>
          Cancel
        </button>
      </>
    )}
    <div role="status">{message?.tone === 'note' && <p>{message.text}</p>}</div>
    {message?.tone === 'trouble' && (
      <p role="alert" className="wrong">
        {message.text}
      </p>
    )}
  </div>
);
