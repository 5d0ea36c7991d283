import { Slider } from '../controls/slider';
import { useSelected, useSession } from '../state/session-context';

/** The loudness of all of the band, and silence at once; where there is little room only the latter. */
export const Volume = () => {
  const { commands } = useSession();
  const master = useSelected((state) => state.settings.mix.master);
  const muted = useSelected((state) => state.muted);
  const change = (gain: number): void => {
    if (muted) commands.mute(false);
    commands.setMaster(gain);
  };
  return (
    <div className="volume">
      <Slider
        label="Volume of the band"
        unseenLabel
        valueText={muted ? 'muted' : `${Math.round(master * 100)} %`}
        value={master}
        low={0}
        high={1}
        step={0.01}
        onChange={change}
      />
      <button
        type="button"
        className="tool mute"
        aria-label="Mute the band"
        title="Mute the band"
        aria-pressed={muted}
        onClick={() => commands.mute(!muted)}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d="M2 7.2v5.6h3.4L10.4 17V3L5.4 7.2z" fill="currentColor" />
          <path
            d={muted ? 'M13 7l5 6M18 7l-5 6' : 'M13 7.2a4 4 0 0 1 0 5.6M15.3 4.6a7.6 7.6 0 0 1 0 10.8'}
            fill="none"
            stroke="currentColor"
            strokeWidth="1.8"
            strokeLinecap="round"
          />
        </svg>
      </button>
    </div>
  );
};
