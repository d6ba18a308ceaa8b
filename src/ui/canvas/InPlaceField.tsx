import { useLayoutEffect, useRef, useState } from 'react';
import { bench, choose, edit } from '../../store/bench';
import { EntryField, type Done } from '../fields/EntryField';
import { fieldName } from '../fields/fieldName';
import { readEntry } from '../fields/fieldReading';
import type { FiguresNow } from './figures';
import { changeable } from './whereabouts';
import type { FigureName } from './view';

interface Props {
  readonly field: string;
  readonly figure: FigureName;
  readonly now: FiguresNow;
  /** Middle of the figure, px in the host; undefined where the field is docked under the section. */
  readonly at: { readonly x: number; readonly y: number } | undefined;
  readonly onLeave: () => void;
}

/** px kept between the field and the edges of its figure. */
const EDGE = 4;

/** The line to type on that opens over a figure of a drawing. */
export function InPlaceField({ field, figure, now, at, onLeave }: Props) {
  const box = useRef<HTMLDivElement>(null);
  // The drawing moves while a figure is typed; the field stays where it was opened.
  const [held] = useState(at);
  const name = fieldName(now.job, field);

  useLayoutEffect(() => {
    const element = box.current;
    const host = element?.parentElement;
    if (!element || !host || !held) return;
    const width = element.offsetWidth;
    const left = Math.max(EDGE, Math.min(host.clientWidth - width - EDGE, held.x - width / 2));
    const top = Math.max(EDGE, Math.min(host.clientHeight - 46 - EDGE, held.y - 23));
    element.style.left = `${left}px`;
    element.style.top = `${top}px`;
  });

  const onDone = (how: Done): void => {
    const all = changeable(now.drawings[figure]);
    const here = all.findIndex((entity) => entity.field === field);
    const next = how === 'next' ? all[here + 1] : how === 'previous' ? all[here - 1] : undefined;
    if (next?.pick) choose(next.pick);
    edit(next?.field ?? null);
    if (!next) onLeave();
  };

  if (!name) return null;
  const after = name.after === undefined ? {} : { after: name.after };
  return (
    <div
      ref={box}
      className={held ? 'in-place' : 'in-place docked'}
      onBlur={(event) => {
        if (event.currentTarget.contains(event.relatedTarget) || !document.hasFocus()) return;
        const state = bench.getState();
        // A wrong entry stays open with its sentence; a right one is kept and closes.
        if (state.editing === field && readEntry(state.job, field, state.part).says === undefined) edit(null);
      }}
    >
      {/* The field was asked for by a tap or Enter on its figure, so the keys belong to it. */}
      {/* oxlint-disable-next-line jsx-a11y/no-autofocus */}
      <EntryField field={field} wanted={name.wanted} label={name.label} inPlace autoFocus onDone={onDone} {...after} />
    </div>
  );
}
