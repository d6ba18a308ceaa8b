/** Measures of a solid given as triangles, for the tests. */
import type { Vector3 } from '../../../src/core/geometry/types';
import type { SolidMesh } from '../../../src/ui/folded/legMesh';

export const vertex = ({ positions }: SolidMesh, i: number): Vector3 => ({
  x: positions[3 * i] ?? NaN, y: positions[3 * i + 1] ?? NaN, z: positions[3 * i + 2] ?? NaN,
});

export const vertices = (mesh: SolidMesh): Vector3[] => Array.from({ length: mesh.positions.length / 3 }, (_, i) => vertex(mesh, i));

/** mm³: the signed tetrahedra from the origin to each triangle; positive when the triangles face outwards. */
export function volume(mesh: SolidMesh): number {
  let six = 0;
  for (let i = 0; i < mesh.triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => vertex(mesh, mesh.triangles[i + k] ?? -1));
    if (!a || !b || !c) return NaN;
    six += a.x * (b.y * c.z - b.z * c.y) + a.y * (b.z * c.x - b.x * c.z) + a.z * (b.x * c.y - b.y * c.x);
  }
  return six / 6;
}

/** Edges of triangles that are not met by exactly one triangle from the other side. None on a closed solid. */
export function openEdges(mesh: SolidMesh): number {
  const seen = new Map<string, number>();
  for (let i = 0; i < mesh.triangles.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      const edge = `${mesh.triangles[i + k]} ${mesh.triangles[i + ((k + 1) % 3)]}`;
      seen.set(edge, (seen.get(edge) ?? 0) + 1);
    }
  }
  return [...seen].filter(([edge, count]) => count !== 1 || seen.get(edge.split(' ').toReversed().join(' ')) !== 1).length;
}
