import { useBandTurn } from '../state/use-band-turn';
import { TurnRing } from './turn-ring';

const WORDS = {
  drums: { title: 'Drums', text: 'They trade with the band: leave them their bars.' },
  silent: { title: 'Keep time', text: 'The band is silent on purpose and comes back.' },
} as const;

/** Says when the plan gives the drums a turn, or silences the band: so that nobody thinks the sound broke. */
export const BandTurnSign = () => {
  const turn = useBandTurn();
  if (turn === null) return null;
  const { title, text } = WORDS[turn.kind];
  return (
    <section className="turn band-turn" data-turn="rest" aria-label="The band" aria-live="polite">
      <TurnRing span={turn.span} />
      <div>
        <strong>{title}</strong>
        <p>{text}</p>
      </div>
    </section>
  );
};
