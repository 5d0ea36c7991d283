import { useNextHarp } from '../state/use-next-harp';

/** The harp of the next chorus where the key moves: named a whole chorus ahead, and large before the change. */
export const NextHarpSign = () => {
  const harp = useNextHarp();
  if (harp === null) return null;
  return (
    <section
      className="turn next-harp"
      data-turn={harp.near ? 'answer' : 'listen'}
      aria-label="Next harp"
      aria-live="polite"
    >
      <strong>{harp.name}</strong>
      <p>from the next chorus on: song in {harp.songKey}</p>
    </section>
  );
};
