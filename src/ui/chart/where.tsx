import type { Bar, BarRange } from '../../core/chart/chart';
import { barSign } from '../../core/song/bar-place';
import type { BarView } from '../../core/song/bar-view';
import { useSelected, useSession } from '../state/session-context';

const PLACES: Readonly<Record<Exclude<BarView['kind'], 'chorus'>, string>> = {
  rest: 'Starting',
  'count-in': 'Count-in',
  intro: 'Intro',
  ending: 'Ending',
};

/** The song's last bars before its last chorus, in which that is said. */
const CUE_BARS = 4;
const CUE = 'Last chorus next';

/** Which chorus is heard, and that the last has come, or comes next. */
const chorusText = ({ chorus, formBar, tune }: BarView, choruses: number | null): string => {
  const left = choruses === null ? null : choruses - 1 - chorus;
  if (left === 0) return 'Last chorus';
  const near = formBar !== null && formBar >= tune.chart.bars.length - CUE_BARS;
  return left === 1 && near ? CUE : `Chorus ${chorus + 1}`;
};

const barsText = ({ from, to }: BarRange, bars: readonly Bar[]): string => {
  const first = barSign(bars[from], from);
  return from === to ? `of bar ${first}` : `of bars ${first} to ${barSign(bars[to], to)}`;
};

/** Where in the song the band is, its tempo where that is not the one chosen, and the wish for an ending. */
export const Where = () => {
  const { commands } = useSession();
  const playing = useSelected((state) => state.status.kind === 'playing' || state.status.kind === 'paused');
  const now = useSelected((state) => state.now);
  const bars = useSelected((state) => state.tune.chart.bars);
  const target = useSelected((state) => state.settings.tempo);
  const { repeat, choruses } = useSelected((state) => state.settings.plan);
  const lastTime = useSelected((state) => state.lastChorus !== null);
  const warming = useSelected((state) => state.warmUp !== null);
  if (!playing || warming) return null;
  const { kind, tempo } = now;
  const place =
    repeat === null ? chorusText(now, lastTime ? now.chorus + 1 : choruses) : `Pass ${now.chorus + 1}`;
  return (
    <div className="where">
      <strong data-cue={kind === 'chorus' && place === CUE}>
        {kind === 'chorus' ? place : PLACES[kind]}
        {kind === 'chorus' && repeat !== null && <span className="more"> {barsText(repeat, bars)}</span>}
        {tempo !== null && Math.round(tempo) !== Math.round(target) && `, at ${Math.round(tempo)}`}
      </strong>
      <button
        type="button"
        className="tool"
        aria-pressed={lastTime}
        onClick={() => commands.lastTime(!lastTime)}
      >
        Last time<span className="more">: end after this {repeat === null ? 'chorus' : 'pass'}</span>
      </button>
    </div>
  );
};
