/** A solid on stage: its faces, its edge lines, and their colours. The geometry stays while the piece only moves. */
import { BufferAttribute, BufferGeometry, Matrix4, Mesh } from 'three';
import type { Material } from 'three';
import { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/examples/jsm/lines/LineSegmentsGeometry.js';
import type { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js';
import type { Frame } from '../../core/geometry/types';
import type { OpeningMesh, SolidMesh } from './legMesh';

export interface PieceMaterials {
  readonly marked: Material;
  readonly back: Material;
  readonly walls: Material;
  readonly openings: Material;
  readonly lines: LineMaterial;
  /** For the one cut-out that is chosen, if it is on this piece. */
  readonly chosen?: { readonly cutout: number; readonly walls: Material; readonly lines: LineMaterial };
}

/** Lines from ends given as x, y, z in turn. */
export function lineObject(ends: Float32Array, material: LineMaterial): LineSegments2 {
  const lines = new LineSegments2(new LineSegmentsGeometry().setPositions(ends), material);
  lines.frustumCulled = false;
  lines.matrixAutoUpdate = false;
  return lines;
}

const matrixOf = (frame: Frame): Matrix4 =>
  new Matrix4().set(
    frame.x.x, frame.y.x, frame.z.x, frame.origin.x,
    frame.x.y, frame.y.y, frame.z.y, frame.origin.y,
    frame.x.z, frame.y.z, frame.z.z, frame.origin.z,
    0, 0, 0, 1,
  );

export class Piece {
  readonly mesh: Mesh<BufferGeometry, Material[]>;
  private readonly lines: LineSegments2;
  private rim: { readonly cutout: number; readonly lines: LineSegments2 } | undefined;
  private hasDistances = false;

  constructor(private readonly solid: SolidMesh, private readonly openings: readonly OpeningMesh[], materials: PieceMaterials) {
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(new Float32Array(solid.positions), 3));
    geometry.setIndex(new BufferAttribute(solid.triangles, 1));
    this.mesh = new Mesh(geometry, []);
    this.mesh.frustumCulled = false;
    this.mesh.matrixAutoUpdate = false;
    this.lines = lineObject(new Float32Array(solid.edges), materials.lines);
    this.mesh.add(this.lines);
    this.paint(materials);
  }

  paint({ marked, back, walls, openings, lines, chosen }: PieceMaterials): void {
    this.mesh.material = [marked, back, walls, openings, chosen?.walls ?? openings];
    const { geometry } = this.mesh;
    const { faces } = this.solid;
    geometry.clearGroups();
    geometry.addGroup(faces.marked.start, faces.marked.count, 0);
    geometry.addGroup(faces.back.start, faces.back.count, 1);
    geometry.addGroup(faces.walls.start, faces.walls.count, 2);
    // Neighbouring openings of one colour are one group: a group is a draw call.
    let open: { start: number; count: number; material: number } | undefined;
    for (const opening of this.openings) {
      const material = opening.cutout === chosen?.cutout ? 4 : 3;
      if (open?.material === material) open.count += opening.walls.count;
      else {
        if (open) geometry.addGroup(open.start, open.count, open.material);
        open = { ...opening.walls, material };
      }
    }
    if (open) geometry.addGroup(open.start, open.count, open.material);

    this.lines.material = lines;
    if (lines.dashed && !this.hasDistances) {
      this.lines.computeLineDistances();
      this.hasDistances = true;
    }
    this.paintRim(chosen);
  }

  private paintRim(chosen: PieceMaterials['chosen']): void {
    if (this.rim && this.rim.cutout !== chosen?.cutout) {
      this.rim.lines.removeFromParent();
      this.rim.lines.geometry.dispose();
      this.rim = undefined;
    }
    if (!chosen) return;
    if (!this.rim) {
      const ends = this.openings
        .filter((o) => o.cutout === chosen.cutout)
        .flatMap((o) => [...this.solid.edges.subarray(o.edges.start, o.edges.start + o.edges.count)]);
      if (ends.length === 0) return;
      this.rim = { cutout: chosen.cutout, lines: lineObject(new Float32Array(ends), chosen.lines) };
      this.rim.lines.renderOrder = 2;
      this.mesh.add(this.rim.lines);
    }
    this.rim.lines.material = chosen.lines;
  }

  moveTo(frame: Frame): void {
    this.mesh.matrix.copy(matrixOf(frame));
    this.mesh.updateMatrixWorld(true);
  }

  dispose(): void {
    this.mesh.removeFromParent();
    this.mesh.geometry.dispose();
    this.lines.geometry.dispose();
    this.rim?.lines.geometry.dispose();
  }
}
