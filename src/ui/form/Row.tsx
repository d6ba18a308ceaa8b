import type { ReactNode } from 'react';
import './form.css';

/** One line of a sheet: what it is called on the left, what it is on the right. */
export function Row({ name, wide = false, children }: { readonly name: string; readonly wide?: boolean; readonly children: ReactNode }) {
  return (
    <div className={wide ? 'row wide' : 'row'}>
      <span className="row-name" aria-hidden="true">
        {name}
      </span>
      <span className="row-held">{children}</span>
    </div>
  );
}
