import { readField, writeField } from '../../job/fields';
import { apply, useBench } from '../../store/bench';
import { Choice } from './Choice';

interface FieldChoiceProps<Value extends string> {
  /** Path in the job of a field that holds one of the values. */
  readonly field: string;
  /** Read out and told by undo: `Leg C, measured from`. */
  readonly label: string;
  readonly options: readonly (readonly [value: Value, words: string])[];
  readonly className?: string;
  readonly onFocus?: () => void;
}

/** A choice that is written into a field of the job. */
export function FieldChoice<Value extends string>({ field, label, options, className, onFocus }: FieldChoiceProps<Value>) {
  const held = useBench(({ job }) => readField(job, field));
  const value = options.find(([each]) => each === held)?.[0] ?? options[0]?.[0];
  if (value === undefined) return null;
  const words = (of: Value): string => options.find(([each]) => each === of)?.[1] ?? of;
  return (
    <Choice
      label={label}
      value={value}
      options={options}
      field={field}
      {...(className === undefined ? {} : { className })}
      {...(onFocus ? { onFocus } : {})}
      onChoose={(next) =>
        apply((job) => writeField(job, field, next), { label: `${label.charAt(0).toLowerCase()}${label.slice(1)} ${words(value)} to ${words(next)}` })
      }
    />
  );
}
