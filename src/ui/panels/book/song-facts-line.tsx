import type { SongFacts } from '../../../core/book/song-facts';
import { clockText } from '../../../core/theory/quantities';
import { useNames } from '../../state/use-names';

/** What a song comes to, in one line: key, harp and position, feel, tempo, length. */
export const SongFactsLine = ({ facts }: { readonly facts: SongFacts }) => {
  const names = useNames();
  return (
    <p className="hint">
      {names.key(facts.key)} · {names.key(facts.harpName)}, {facts.position} · {facts.feel}, {facts.tempo} ·{' '}
      {facts.open ? 'until stopped' : clockText(facts.seconds)}
    </p>
  );
};
