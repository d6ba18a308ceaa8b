import { layOut, type WalkableLayout } from '../../../src/core/part/layOut';
import type { Part } from '../../../src/core/part/types';

/** The layout of a part that must have one. */
export function laidOut(part: Part): WalkableLayout {
  const layout = layOut(part);
  if (!layout.ok) throw new Error(layout.problems.map((p) => `${p.field}: ${p.says}`).join('\n'));
  return layout.value;
}
