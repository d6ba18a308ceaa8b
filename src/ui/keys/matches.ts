/** What of a press of a key counts. */
export type Press = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>;

/** Whether a press of a key is `Ctrl Shift Z` and the like. The command key of the other keyboard counts as Ctrl. */
export function matches(keys: string, event: Press): boolean {
  const names = keys.split(' ');
  const last = names.at(-1) ?? '';
  const wanted = last === 'Esc' ? 'escape' : last.toLowerCase();
  return (
    event.key.toLowerCase() === wanted &&
    (event.ctrlKey || event.metaKey) === names.includes('Ctrl') &&
    event.shiftKey === names.includes('Shift') &&
    event.altKey === names.includes('Alt')
  );
}
