import { useId } from 'react';

/** One of the values a choice offers. */
export interface Option<Value extends string | number> {
  readonly value: Value;
  readonly text: string;
  /** What the closed control shows where that is shorter. */
  readonly closed?: string;
  /** Heading under which the option is listed. */
  readonly group?: string;
}

/** The options of a list of ids, each by its name. */
export const optionsOf = <Id extends string>(
  ids: readonly Id[],
  names: Readonly<Record<Id, string>>,
): readonly Option<Id>[] => ids.map((value) => ({ value, text: names[value] }));

interface Props<Value extends string | number> {
  readonly label: string;
  readonly value: Value;
  readonly options: readonly Option<Value>[];
  readonly onChoose: (value: Value) => void;
  readonly hint?: string | undefined;
  /** How much room the longest option needs in a row of choices. */
  readonly size?: 'short' | 'usual' | 'long';
  /** Choices that leave a row without room for all, the least first; they stand in the panel too. */
  readonly rank?: 'least' | 'minor' | 'second' | undefined;
}

/** Letters that stand in the closed control, and in one word of it; longer names take smaller ones, on three lines at most. */
const ROOM = { short: [3, 9], usual: [12, 8], long: [22, 9] } as const;

const isLong = (text: string, size: keyof typeof ROOM): boolean => {
  const [all, word] = ROOM[size];
  return text.length > all || text.split(' ').some(({ length }) => length > word);
};

const grouped = <Value extends string | number>(options: readonly Option<Value>[]) => {
  const groups = new Map<string, Option<Value>[]>();
  for (const option of options) {
    const name = option.group ?? '';
    groups.set(name, [...(groups.get(name) ?? []), option]);
  }
  return [...groups];
};

/** A labelled choice of one among several: the native control, dressed. */
export const Choice = <Value extends string | number>({
  label,
  value,
  options,
  onChoose,
  hint,
  size = 'usual',
  rank,
}: Props<Value>) => {
  const id = useId();
  const choose = (text: string): void => {
    const chosen = options.find((option) => String(option.value) === text);
    if (chosen) onChoose(chosen.value);
  };
  const option = options.find((each) => each.value === value);
  const chosen = option?.closed ?? option?.text ?? '';
  const long = isLong(chosen, size);
  return (
    <div className="field" data-rank={rank}>
      <label htmlFor={id}>{label}</label>
      <span className="select" title={long ? option?.text : undefined}>
        <select
          id={id}
          value={value}
          data-size={size}
          aria-describedby={hint === undefined ? undefined : `${id}-hint`}
          onChange={(event) => choose(event.target.value)}
        >
          {grouped(options).map(([group, members]) => {
            const items = members.map((option) => (
              <option key={option.value} value={option.value}>
                {option.text}
              </option>
            ));
            return group === '' ? (
              items
            ) : (
              <optgroup key={group} label={group}>
                {items}
              </optgroup>
            );
          })}
        </select>
        <span className="chosen" aria-hidden="true" data-long={long}>
          <span>{chosen}</span>
        </span>
      </span>
      {hint !== undefined && (
        <p className="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
};
