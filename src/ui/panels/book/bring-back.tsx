import { useSelected, useSession } from '../../state/session-context';

/** The way back for what was taken out of the book last. */
export const BringBack = ({ kind }: { readonly kind: 'song' | 'set' }) => {
  const { commands } = useSession();
  const dropped = useSelected((state) => state.book.dropped);
  if (dropped?.kind !== kind) return null;
  const { name } = dropped.kind === 'song' ? dropped.song : dropped.set;
  return (
    <p role="status">
      “{name}” is out of the book.{' '}
      <button type="button" className="tool" onClick={commands.restoreDropped}>
        Bring it back
      </button>
    </p>
  );
};
