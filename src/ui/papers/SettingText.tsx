import { useId } from 'react';

interface SettingTextProps {
  readonly label: string;
  readonly value: string;
  readonly onType: (text: string) => void;
  /** The sentence under it, where it will not do. */
  readonly says?: string | undefined;
  /** Word behind it on the line, such as its unit. */
  readonly after?: string;
  readonly placeholder?: string;
  /** Id of an element that shows the sentence, where there is more room for it than under the line. */
  readonly saysAt?: string;
}

/** A line for a figure that is no part of the job: nothing to undo, taken as it is typed. */
export function SettingText({ label, value, onType, says, saysAt, after, placeholder }: SettingTextProps) {
  const own = useId();
  const id = saysAt ?? own;
  const classes = ['entry entry-in-row setting-text', after === undefined ? '' : 'with-unit', says === undefined ? '' : 'entry-wrong'].filter(Boolean).join(' ');
  return (
    <span className={classes}>
      <span className="entry-frame">
        <input
          type="text"
          value={value}
          maxLength={40}
          size={1}
          autoComplete="off"
          spellCheck={false}
          enterKeyHint="done"
          placeholder={placeholder}
          aria-label={label}
          aria-invalid={says !== undefined}
          aria-describedby={says === undefined ? undefined : id}
          onFocus={({ currentTarget }) => currentTarget.select()}
          onChange={({ currentTarget }) => onType(currentTarget.value)}
        />
        {after !== undefined && (
          <span className="setting-after" aria-hidden="true">
            {after}
          </span>
        )}
      </span>
      {says !== undefined && saysAt === undefined && (
        <span id={id} className="entry-says">
          {says}
        </span>
      )}
    </span>
  );
}
