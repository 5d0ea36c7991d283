import type { SongFacts } from '../../../core/book/song-facts';
import { useNames } from '../../state/use-names';

/** Minutes and seconds: `3:05`. */
export const clockText = (seconds: number): string => {
  const whole = Math.round(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
};

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
