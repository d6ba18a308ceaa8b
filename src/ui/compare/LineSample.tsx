/** How a stock is drawn in the overlay: the first one full, each other in a line of its own. */
export function LineSample({ place }: { readonly place: number }) {
  return (
    <svg className={place === 0 ? 'line-sample present' : `line-sample ghost-${place}`} viewBox="0 0 48 12" aria-hidden="true">
      <path d="M2 6H46" />
    </svg>
  );
}

/** The same in words. */
export const LINE_WORDS = ['full line', 'long dashes', 'dots', 'dashes and dots', 'dashes, two dots'] as const;
