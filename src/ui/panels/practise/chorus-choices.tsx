import { LADDER_LIMITS, LADDERS, type LadderChoice } from '../../../core/practice/tempo-ladder';
import { TEMPO_RANGE } from '../../../core/settings/tempo';
import { Choice, optionsOf } from '../../controls/choice';
import { Slider } from '../../controls/slider';
import { Switch } from '../../controls/switch';
import { useSelected, useSession } from '../../state/session-context';

const BY = optionsOf(LADDERS, {
  off: 'Off: the tempo stays',
  clean: 'After a clean chorus',
  count: 'After a number of choruses',
});

const bpm = (value: number): string => `${value} beats a minute`;

/** The tempo ladder of the song on the stand. */
export const LadderChoices = () => {
  const { commands } = useSession();
  const ladder = useSelected((state) => state.settings.ladder);
  const set = (change: Partial<LadderChoice>): void => commands.choose({ ladder: { ...ladder, ...change } });
  return (
    <>
      <Choice
        label="The song gets faster"
        value={ladder.by}
        options={BY}
        hint="With the microphone on each chorus is heard; without it you mark it on the stand. After trouble it goes half a step back."
        onChoose={(by) => set({ by })}
      />
      {ladder.by !== 'off' && (
        <>
          <div className="pair">
            <Slider
              label="Faster by"
              value={ladder.step}
              low={LADDER_LIMITS.step.least}
              high={LADDER_LIMITS.step.most}
              step={1}
              valueText={bpm(ladder.step)}
              onChange={(step) => set({ step })}
            />
            {ladder.by === 'count' && (
              <Slider
                label="Every"
                value={ladder.every}
                low={LADDER_LIMITS.every.least}
                high={LADDER_LIMITS.every.most}
                step={1}
                valueText={ladder.every === 1 ? 'chorus' : `${ladder.every} choruses`}
                onChange={(every) => set({ every })}
              />
            )}
          </div>
          <Slider
            label="Up to"
            value={ladder.top}
            low={TEMPO_RANGE.low}
            high={TEMPO_RANGE.high}
            step={1}
            valueText={bpm(ladder.top)}
            onChange={(top) => set({ top })}
          />
        </>
      )}
    </>
  );
};

/** Whether what fits fades. */
export const MemoryChoice = () => {
  const { commands } = useSession();
  const on = useSelected((state) => state.settings.fromMemory);
  return (
    <Switch
      label="What fits fades chorus by chorus"
      on={on}
      hint="First one tone of each chord, then all of them and the map, then the chord’s name in What fits. It comes back when you ask, and a little of it after trouble."
      onChange={(fromMemory) => commands.choose({ fromMemory })}
    />
  );
};
