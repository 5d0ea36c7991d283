import { type BandTurn, bandTurn } from '../../core/arranger/arc';
import { useSelected } from '../state/session-context';

const WORDS: Readonly<Record<Exclude<BandTurn, 'band'>, { readonly title: string; readonly text: string }>> =
  {
    drums: { title: 'Drums', text: 'They trade with the band: leave them their bars.' },
    silent: { title: 'Keep time', text: 'The band is silent on purpose and comes back.' },
  };

/** Says when the plan gives the drums a turn, or silences the band: so that nobody thinks the sound broke. */
export const BandTurnSign = () => {
  const playing = useSelected((state) => state.status.kind === 'playing' && state.warmUp === null);
  const chosen = useSelected((state) => state.settings.plan);
  const lastChorus = useSelected((state) => state.lastChorus);
  const plan = lastChorus === null ? chosen : { ...chosen, choruses: lastChorus + 1 };
  const now = useSelected((state) => state.now);
  const bars = useSelected((state) => state.tune.chart.bars.length);
  if (!playing || now.kind !== 'chorus' || now.formBar === null) return null;
  const { from, to } = plan.repeat ?? { from: 0, to: bars - 1 };
  const turn = bandTurn(plan, now.chorus, now.formBar - from, to - from + 1);
  if (turn === 'band') return null;
  const { title, text } = WORDS[turn];
  return (
    <section className="turn" data-turn="rest" aria-label="The band" aria-live="polite">
      <strong>{title}</strong>
      <p>{text}</p>
    </section>
  );
};
