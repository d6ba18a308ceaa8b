import { useRef, type KeyboardEvent } from 'react';
import { readField, writeField } from '../../job/fields';
import { apply, bench, dropMark, endMark, useBench } from '../../store/bench';
import './form.css';

interface TextFieldProps {
  /** Path in the job. */
  readonly field: string;
  /** Read out and told by undo: `Leg C, name`. */
  readonly label: string;
  readonly className?: string;
  readonly placeholder?: string;
  /** The sentence under it, where it will not do. */
  readonly says?: string | undefined;
  readonly onFocus?: () => void;
}

const LONGEST_NAME = 120;

/** A line on which a name or a note is typed: into the job as it is typed, one step of undo, Esc puts it back. */
export function TextField({ field, label, className = '', placeholder, says, onFocus }: TextFieldProps) {
  const held = useBench(({ job }) => readField(job, field));
  const input = useRef<HTMLInputElement>(null);
  const text = typeof held === 'string' ? held : '';
  const mark = `text ${field}`;
  const keep = (): void => {
    if (bench.getState().mark === mark) endMark();
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Enter') keep();
    else if (event.key === 'Escape') dropMark(mark);
    else return;
    event.preventDefault();
    event.stopPropagation();
    input.current?.select();
  };
  return (
    <span className={`text ${className}`}>
      <input
        ref={input}
        type="text"
        value={text}
        maxLength={LONGEST_NAME}
        autoComplete="off"
        spellCheck={false}
        placeholder={placeholder}
        aria-label={label}
        aria-invalid={says !== undefined}
        data-field={field}
        onFocus={onFocus}
        onBlur={keep}
        onKeyDown={onKeyDown}
        onChange={({ currentTarget }) => {
          const { value } = currentTarget;
          apply((job) => writeField(job, field, value), { label: `${label.charAt(0).toLowerCase()}${label.slice(1)}`, mark });
        }}
      />
      {says !== undefined && <span className="text-says">{says}</span>}
    </span>
  );
}
