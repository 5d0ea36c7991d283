interface Props {
  readonly label: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
  /** The most letters there is room for. */
  readonly longest?: number;
  readonly placeholder?: string;
  /** Whether something is looked for by it. */
  readonly search?: boolean;
}

/** A line of text under its label. */
export const TextField = ({ label, value, onChange, longest, placeholder, search = false }: Props) => (
  <label className="field">
    <span className="label">{label}</span>
    <input
      className="text-box"
      type={search ? 'search' : 'text'}
      maxLength={longest}
      placeholder={placeholder}
      value={value}
      onChange={(event) => onChange(event.target.value)}
    />
  </label>
);
