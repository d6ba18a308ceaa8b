import { useEffect, useId, useLayoutEffect, useRef, useState, type KeyboardEvent } from 'react';
import type { Wanted } from '../../core/units/evaluate';
import { plainNumber } from '../../core/units/plainNumber';
import type { Result } from '../../core/result';
import { writeField } from '../../job/fields';
import type { Job } from '../../job/schema';
import { apply, bench, dropMark, endMark, useBench } from '../../store/bench';
import { showValue, useEntry } from './fieldReading';
import { nudged, nudgeStep } from './nudge';
import './entryField.css';

/** How a field was left: kept by Enter, put back by Esc, or kept on the way to the next or the previous one by Tab. */
export type Done = 'kept' | 'back' | 'next' | 'previous';

export interface EntryFieldProps {
  /** Path in the job (see `src/job/fields.ts`). Give the component this as its key as well where it can change. */
  readonly field: string;
  readonly wanted: Wanted;
  /** What the field is called by a screen reader and by undo: `Peg leg, length`. */
  readonly label: string;
  /** Id of a label on screen; then `label` is for undo only. */
  readonly labelledBy?: string;
  readonly className?: string;
  readonly autoFocus?: boolean;
  /** In place over a drawing: the value always stands beside, and Tab is answered by `onDone` instead of the browser. */
  readonly inPlace?: boolean;
  /** A word after the value in place, such as the basis. */
  readonly after?: string;
  readonly onDone?: (how: Done) => void;
  /** How the value is shown while the field has no focus; in the job's units where left out. */
  readonly format?: (value: number) => string;
  /** Fields that take the same text in the same step: both ends of a plain strip. */
  readonly also?: readonly string[];
  /** Works out a field that belongs to no part. Keep the function the same from one render to the next. */
  readonly value?: (job: Job) => Result<number>;
  /** Id of an element that shows the sentence; then the field does not show it itself. */
  readonly saysAt?: string;
}

/** Changes of one field, from getting the focus to keeping or leaving it, are one step of undo. */
const markOf = (field: string): string => `field ${field}`;

/** Characters that the narrowest cell of a table shows; a longer text opens wide while it is typed. */
const FITS_ITS_CELL = 6;

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** A line on which a number or an expression is typed. The text goes into the job as it is typed; a wrong one stays and is told. */
export function EntryField(props: EntryFieldProps) {
  const { field, wanted, label, className, inPlace = false, onDone } = props;
  const units = useBench((state) => state.job.units);
  const { text, value, says } = useEntry(field, props.value);
  const [focused, setFocused] = useState(false);
  const [before, setBefore] = useState(text);
  const input = useRef<HTMLInputElement>(null);
  const id = useId();
  const mark = markOf(field);

  useEffect(() => {
    if (props.autoFocus) input.current?.focus({ preventScroll: true });
  }, [props.autoFocus]);

  // The typed text has taken the place of the shown value by now; all of it is marked, before any key can come.
  useLayoutEffect(() => {
    if (focused) input.current?.select();
  }, [focused]);

  const format = props.format ?? ((worked: number) => showValue(units, wanted, worked));
  const shown = focused || inPlace || value === undefined || says !== undefined ? text : format(value);
  const expression = plainNumber(text) === undefined;
  const worked = value !== undefined && (inPlace || (focused && expression)) ? format(value) : undefined;

  const write = (next: string): void => {
    const from = bench.getState().mark === mark ? before : text;
    apply((held) => [field, ...(props.also ?? [])].reduce((job, path) => writeField(job, path, next), held), { label: `${lowerFirst(label)} ${from} to ${next}`, mark });
  };

  const keep = (): void => {
    if (bench.getState().mark === mark) endMark();
    setBefore(text);
  };

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.key === 'Enter') {
      keep();
      input.current?.select();
      onDone?.('kept');
    } else if (event.key === 'Escape') {
      dropMark(mark);
      event.stopPropagation();
      onDone?.('back');
    } else if (event.key === 'Tab' && inPlace && onDone) {
      keep();
      event.preventDefault();
      onDone(event.shiftKey ? 'previous' : 'next');
    } else if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
      const step = nudgeStep(wanted, { shift: event.shiftKey, alt: event.altKey });
      const next = nudged(text, event.key === 'ArrowUp' ? step : -step);
      if (next === undefined) return;
      event.preventDefault();
      write(next);
    } else return;
    if (event.key === 'Enter' || event.key === 'Escape') event.preventDefault();
  };

  const saysId = props.saysAt ?? `${id}-says`;
  const described = [says === undefined ? '' : saysId, worked === undefined ? '' : `${id}-worked`].filter(Boolean).join(' ');
  const classes = ['entry', inPlace ? 'entry-in-place' : 'entry-in-row', says === undefined ? '' : 'entry-wrong', text.length > FITS_ITS_CELL ? 'entry-long' : '', className ?? ''].filter(Boolean).join(' ');

  return (
    <span className={classes}>
      <span className="entry-frame">
        <input
          ref={input}
          type="text"
          value={shown}
          maxLength={200}
          autoComplete="off"
          autoCapitalize="off"
          spellCheck={false}
          enterKeyHint="done"
          size={inPlace ? Math.min(24, Math.max(5, text.length + 1)) : 1}
          aria-label={props.labelledBy === undefined ? label : undefined}
          aria-labelledby={props.labelledBy}
          aria-invalid={says !== undefined}
          aria-describedby={described || undefined}
          data-field={field}
          onFocus={() => {
            setFocused(true);
            setBefore(text);
          }}
          onBlur={() => {
            setFocused(false);
            keep();
          }}
          onChange={(event) => write(event.currentTarget.value)}
          onKeyDown={onKeyDown}
        />
        {says !== undefined && (
          <svg className="entry-cross" viewBox="0 0 16 16" aria-hidden="true">
            <path d="M3 3l10 10M13 3L3 13" />
          </svg>
        )}
        {worked !== undefined && (
          <span id={`${id}-worked`} className="entry-worked">
            = <b>{worked}</b>
            {props.after ? ` ${props.after}` : ''}
          </span>
        )}
      </span>
      {says !== undefined && props.saysAt === undefined && (
        <span id={saysId} className="entry-says">
          {says}
        </span>
      )}
    </span>
  );
}
