import type { Dropped } from '../../../app/phrases/phrases-state';
import { useSelected, useSession } from '../../state/session-context';

/** The way back for what was taken out of the library last. */
export const BringBack = ({ kind }: { readonly kind: Dropped['kind'] }) => {
  const { commands } = useSession();
  const dropped = useSelected((state) => state.phrasebook.dropped);
  if (dropped?.kind !== kind) return null;
  return (
    <p role="status">
      “{dropped.item.name}” is taken out.{' '}
      <button
        type="button"
        className="tool"
        onClick={kind === 'phrase' ? commands.restorePhrase : commands.restoreExercise}
      >
        Bring it back
      </button>
    </p>
  );
};
