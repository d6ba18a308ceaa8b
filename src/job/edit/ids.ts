interface HasId {
  readonly id: string;
}

/** `leg-5`: the smallest number that no id of the list has, so that the same edit always gives the same ids. */
export function freeId(items: readonly HasId[], word: string): string {
  const taken = new Set(items.map(({ id }) => id));
  let number = 1;
  while (taken.has(`${word}-${number}`)) number += 1;
  return `${word}-${number}`;
}

/** The name of a copy, no longer than a name may be. */
export const copyName = (name: string): string => (name.trim() ? `${name.slice(0, 112)}, copy` : name);
