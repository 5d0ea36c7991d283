import type { SongFacts } from '../../../core/book/song-facts';
import { prettyName } from '../../../core/theory/pitch';

/** Minutes and seconds: `3:05`. */
export const clockText = (seconds: number): string => {
  const whole = Math.round(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
};

/** What a song comes to, in one line: key, harp and position, feel, tempo, length. */
export const SongFactsLine = ({ facts }: { readonly facts: SongFacts }) => (
  <p className="hint">
    {prettyName(facts.key)} · {prettyName(facts.harpName)}, {facts.position} · {facts.feel}, {facts.tempo} ·{' '}
    {facts.open ? 'until stopped' : clockText(facts.seconds)}
  </p>
);
