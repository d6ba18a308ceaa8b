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
  readonly className?: string;
}

/** A line for a figure that is no part of the job: nothing to undo, taken as it is typed. */
export function SettingText({ label, value, onType, says, after, placeholder, className = '' }: SettingTextProps) {
  const id = useId();
  return (
    <span className={`entry entry-in-row setting-text ${says === undefined ? '' : 'entry-wrong'} ${className}`}>
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
      {says !== undefined && (
        <span id={id} className="entry-says">
          {says}
        </span>
      )}
    </span>
  );
}
