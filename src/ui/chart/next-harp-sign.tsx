import { useNextHarp } from '../state/use-next-harp';
import { type SectionSaid, useSectionAhead } from '../state/use-section-ahead';

/** The section that comes in another key, and how it lies on the harp. */
const SectionSign = ({ section: { what, how } }: { readonly section: SectionSaid }) => (
  <section className="turn next-harp" data-turn="listen" aria-label="Next section" aria-live="polite">
    <strong>{what}</strong>
    <p>{how}</p>
  </section>
);

/** A section that comes in another key, named a line ahead; or the harp of the next chorus where the key moves: named a whole chorus ahead, and large before the change. */
export const NextHarpSign = () => {
  const harp = useNextHarp();
  const section = useSectionAhead();
  if (harp === null && section !== null) return <SectionSign section={section} />;
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
