/** Another kind of cut-out or repeat that keeps what was typed where it still means the same. */
import type { JobCutoutShape, JobPattern } from '../../job/schema';

export function shapeOf(kind: JobCutoutShape['kind'], before: JobCutoutShape): JobCutoutShape {
  if (kind === before.kind) return before;
  const width = before.kind === 'round' ? before.diameter : before.width;
  if (kind === 'round') return { kind, diameter: width };
  const length = before.kind === 'round' ? `2*(${before.diameter})` : before.length;
  const turn = before.kind === 'round' ? '0' : before.turn;
  return kind === 'slot' ? { kind, length, width, turn } : { kind, length, width, corner: '0', turn };
}

export function patternOf(kind: JobPattern['kind'], before: JobPattern, metric: boolean): JobPattern {
  if (kind === before.kind || kind === 'single') return kind === 'single' ? { kind } : before;
  const pitch = metric ? '10' : '3/8';
  if (kind === 'row') {
    return before.kind === 'grid'
      ? { kind, direction: 'along', count: before.alongCount, pitch: before.alongPitch }
      : { kind, direction: 'along', count: '2', pitch };
  }
  if (before.kind !== 'row') return { kind, alongCount: '2', alongPitch: pitch, acrossCount: '2', acrossPitch: pitch };
  const { count, pitch: held } = before;
  return before.direction === 'along'
    ? { kind, alongCount: count, alongPitch: held, acrossCount: '2', acrossPitch: pitch }
    : { kind, alongCount: '2', alongPitch: pitch, acrossCount: count, acrossPitch: held };
}
