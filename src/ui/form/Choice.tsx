import './form.css';

interface ChoiceProps<Value extends string> {
  readonly label: string;
  readonly value: Value;
  readonly options: readonly (readonly [value: Value, words: string])[];
  readonly onChoose: (value: Value) => void;
  readonly className?: string;
  readonly field?: string;
  readonly onFocus?: () => void;
}

/** A choice out of a few, on the browser's own select. */
export function Choice<Value extends string>({ label, value, options, onChoose, className = '', field, onFocus }: ChoiceProps<Value>) {
  return (
    <select
      className={`choice ${className}`}
      aria-label={label}
      value={value}
      data-field={field}
      onFocus={onFocus}
      onChange={({ currentTarget }) => {
        const chosen = options.find(([each]) => each === currentTarget.value);
        if (chosen) onChoose(chosen[0]);
      }}
    >
      {options.map(([each, words]) => (
        <option key={each} value={each}>
          {words}
        </option>
      ))}
    </select>
  );
}
