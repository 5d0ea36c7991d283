import { type CSSProperties, useId } from 'react';

interface Props {
  readonly label: string;
  /** Spoken with the slider when its number alone says little. */
  readonly valueText?: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly step: number;
  readonly onChange: (value: number) => void;
  /** Hides the label from sight where the row's heading already says it. */
  readonly unseenLabel?: boolean;
}

/** A slider with its label, and its value in words for the eye and the screen reader. */
export const Slider = ({ label, valueText, value, low, high, step, onChange, unseenLabel }: Props) => {
  const id = useId();
  const filled = { '--filled': `${((value - low) / (high - low)) * 100}%` } as CSSProperties;
  return (
    <div className="field">
      <label htmlFor={id} className={unseenLabel ? 'unseen' : undefined}>
        {label}
        {valueText !== undefined && !unseenLabel && <strong> {valueText}</strong>}
      </label>
      <input
        id={id}
        className="slider"
        type="range"
        min={low}
        max={high}
        step={step}
        value={value}
        style={filled}
        aria-valuetext={valueText}
        onChange={(event) => onChange(event.target.valueAsNumber)}
      />
    </div>
  );
};
