import { type ClassLevel, LONGEST_LEVEL, SHORTEST_NOTES } from '../../../core/practice/class-levels';
import { Choice } from '../../controls/choice';
import { Switch } from '../../controls/switch';
import { TextField } from '../../controls/text-field';
import { useSelected, useSession } from '../../state/session-context';
import { PassOn } from './pass-on';

const SHORTEST_WORDS: Readonly<Record<(typeof SHORTEST_NOTES)[number], string>> = {
  0: 'All notes',
  0.5: 'Eighths and longer',
  1: 'Quarters and longer',
};

const TECHNIQUES = [
  { name: 'drawBends', label: 'Draw bends' },
  { name: 'blowBends', label: 'Blow bends' },
  { name: 'overbends', label: 'Overbends' },
] as const;

interface LevelProps {
  readonly level: ClassLevel;
  readonly number: number;
  readonly onChange: (level: ClassLevel) => void;
}

const Level = ({ level, number, onChange }: LevelProps) => (
  <fieldset className="group">
    <legend>Level {number}</legend>
    <TextField
      label="Name"
      longest={LONGEST_LEVEL}
      value={level.name}
      onChange={(text) => onChange({ ...level, name: text })}
    />
    {TECHNIQUES.map(({ name, label }) => (
      <Switch
        key={name}
        label={label}
        on={level.technique[name]}
        onChange={(on) => onChange({ ...level, technique: { ...level.technique, [name]: on } })}
      />
    ))}
    <Choice
      label="Notes it plays"
      value={level.shortest}
      options={SHORTEST_NOTES.map((value) => ({ value, text: SHORTEST_WORDS[value] }))}
      onChoose={(shortest) => onChange({ ...level, shortest })}
    />
  </fieldset>
);

/** The levels of a class, and how the exercise on the stand is handed to it: on paper, and as a link. */
export const ClassLevels = () => {
  const { commands } = useSession();
  const levels = useSelected((state) => state.settings.classLevels);
  const change = (at: number, level: ClassLevel): void =>
    commands.choose({ classLevels: levels.map((each, i) => (i === at ? level : each)) });
  return (
    <>
      <p className="hint">
        Each call on the stand is printed for every level: what a level does not play becomes the nearest note
        it does. The sheet explains its signs and has a line for a name.
      </p>
      {levels.map((level, i) => (
        <Level
          // biome-ignore lint/suspicious/noArrayIndexKey: levels are known by their place
          key={i}
          level={level}
          number={i + 1}
          onChange={(next) => change(i, next)}
        />
      ))}
      <div className="own-buttons">
        <button
          type="button"
          className="tool"
          onClick={() => {
            commands.chooseHandOut(true);
            window.print();
          }}
        >
          Print the hand-out
        </button>
      </div>
      <PassOn />
    </>
  );
};
