import { useEffect, useRef } from 'react';
import { COMMANDS, keysCommand } from '../commands';
import { useScreen } from '../screen';
import './keys.css';

/** Keys that belong to a drawing or a field and stand in no command. */
const ELSEWHERE: readonly (readonly [title: string, rows: readonly (readonly [keys: string, does: string])[]])[] = [
  [
    'In the section and the blank',
    [
      ['Left, Right', 'leg to bend to leg'],
      ['Down, Up', 'to the holes of a leg and back'],
      ['A to H', 'takes hold of a leg'],
      ['Enter or F2', 'changes the figure'],
      ['+, −, 0', 'closer, further, all of it'],
      ['Alt while dragging', 'no snapping'],
    ],
  ],
  [
    'In a field',
    [
      ['Enter', 'keeps it'],
      ['Esc', 'puts it back'],
      ['Tab', 'keeps it and goes to the next'],
      ['Up, Down', 'by 0.1; with Shift by 1, with Alt by 0.01'],
    ],
  ],
  [
    'In the folded view',
    [
      ['Arrows', 'turn it'],
      ['+, −', 'closer, further'],
      ['Home', 'stands it up'],
    ],
  ],
];

/** All keys. It lies above the sheet and covers nothing. */
export function KeysPanel() {
  const open = useScreen((state) => state.keysOpen);
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (open) title.current?.focus();
  }, [open]);
  if (!open) return null;
  return (
    <section className="keys" aria-labelledby="keys-title">
      <div className="cap">
        <h2 id="keys-title" ref={title} tabIndex={-1}>
          Keys
        </h2>
        <p>Whatever a key does, a button does.</p>
        <button type="button" className="link right" onClick={keysCommand.run}>
          Close
        </button>
      </div>
      <div className="keys-groups">
        <KeyGroup title="Anywhere" rows={COMMANDS.filter(({ keys }) => keys.length > 0).map(({ keys, label }) => [keys.join(' or '), label] as const)} />
        {ELSEWHERE.map(([name, rows]) => (
          <KeyGroup key={name} title={name} rows={rows} />
        ))}
      </div>
    </section>
  );
}

function KeyGroup({ title, rows }: { readonly title: string; readonly rows: readonly (readonly [string, string])[] }) {
  return (
    <div>
      <h3>{title}</h3>
      <dl>
        {rows.map(([keys, does]) => (
          <div key={keys}>
            <dt>{keys}</dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
