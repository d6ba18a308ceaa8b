/**
 * The main run seen from the side: a closed path in the x–z plane of the first leg's frame (y of the path is z), from the
 * marked face of the first leg round to its other face.
 */
import { line, reversed } from '../geometry/segments';
import type { Arc, Point, Segment } from '../geometry/types';
import { mainRun } from './mainRun';
import type { Folded, Layout } from './layoutTypes';

export interface SectionOutline {
  readonly path: readonly Segment[];
  /** For each segment of the path, the leg it belongs to, or the bend that leads to that leg. */
  readonly owners: readonly { readonly leg: number; readonly bend: boolean }[];
}

/**
 * @param inset mm by which both faces are drawn inwards; 0 for the true outline
 * A bend with no inside radius has no inner arc.
 */
export function sectionOutline(layout: Layout, folded: Folded, inset = 0): SectionOutline {
  const marked: Segment[] = [];
  const under: Segment[] = [];
  const owners: { leg: number; bend: boolean }[] = [];
  const { thickness } = layout.part;
  const top = -inset;
  const bottom = -thickness + inset;
  for (const leg of mainRun(layout)) {
    const frame = folded.legs[leg];
    const laid = layout.legs[leg];
    if (!frame || !laid) continue;
    const at = (x: number, z: number): Point => ({
      x: frame.origin.x + frame.x.x * x + frame.z.x * z,
      y: frame.origin.z + frame.x.z * x + frame.z.z * z,
    });
    const bend = folded.bends.find((b) => b.leg === leg);
    if (bend) {
      const before = bend.frame;
      const side = bend.way === 'up' ? 1 : -1;
      const axis = bend.way === 'up' ? bend.radius : -thickness - bend.radius;
      const centre = { x: before.origin.x + before.z.x * axis, y: before.origin.z + before.z.z * axis };
      const face = (z: number): Arc => {
        const from = { x: before.origin.x + before.z.x * z, y: before.origin.z + before.z.z * z };
        return { kind: 'arc', centre, radius: Math.abs(axis - z), sweep: side * bend.turn, from, to: at(0, z) };
      };
      marked.push(face(top));
      under.push(face(bottom));
      owners.push({ leg, bend: true });
    }
    marked.push(line(at(0, top), at(laid.straight, top)));
    under.push(line(at(0, bottom), at(laid.straight, bottom)));
    owners.push({ leg, bend: false });
  }
  const back = reversed(under);
  const lastOwner = owners.at(-1);
  const firstOwner = owners[0];
  const lastTop = marked.at(-1);
  const firstBack = back[0];
  const lastBack = back.at(-1);
  const firstTop = marked[0];
  if (!lastOwner || !firstOwner || !lastTop || !firstBack || !lastBack || !firstTop) return { path: [], owners: [] };
  const all: Segment[] = [...marked, line(lastTop.to, firstBack.from), ...back, line(lastBack.to, firstTop.from)];
  const allOwners = [...owners, lastOwner, ...owners.toReversed(), firstOwner];
  const kept = all.map((segment, i) => ({ segment, owner: allOwners[i] ?? firstOwner })).filter(({ segment }) => hasLength(segment));
  return { path: kept.map((k) => k.segment), owners: kept.map((k) => k.owner) };
}

const hasLength = (s: Segment): boolean =>
  s.kind === 'line' ? s.from.x !== s.to.x || s.from.y !== s.to.y : s.radius > 1e-9 && s.sweep !== 0;
