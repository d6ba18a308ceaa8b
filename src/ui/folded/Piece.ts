/** A solid on stage: its faces, its edge lines, and their colours. The geometry stays while the piece only moves. */
import { BufferAttribute, BufferGeometry, InstancedInterleavedBuffer, InterleavedBufferAttribute, Matrix4, Mesh } from 'three';
import type { Material } from 'three';
import { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/examples/jsm/lines/LineSegmentsGeometry.js';
import type { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js';
import type { Frame } from '../../core/geometry/types';
import type { LegMesh, SolidMesh } from './legMesh';

export interface PieceMaterials {
  readonly marked: Material;
  readonly back: Material;
  readonly walls: Material;
  readonly openings: Material;
  /** Outer edges; edges of openings. */
  readonly lines: LineMaterial;
  readonly rims: LineMaterial;
  /** For the one cut-out that is chosen, if it is on this piece. */
  readonly chosen?: { readonly cutout: number; readonly walls: Material; readonly lines: LineMaterial };
}

/** Lines from ends given as x, y, z in turn. */
function lineObject(ends: Float32Array, material: LineMaterial): LineSegments2 {
  // Not by setPositions: that measures the lines' bounds as well, and nothing here asks for them.
  const buffer = new InstancedInterleavedBuffer(ends, 6, 1);
  const geometry = new LineSegmentsGeometry();
  geometry.setAttribute('instanceStart', new InterleavedBufferAttribute(buffer, 3, 0));
  geometry.setAttribute('instanceEnd', new InterleavedBufferAttribute(buffer, 3, 3));
  geometry.instanceCount = ends.length / 6;
  const lines = new LineSegments2(geometry, material);
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

const isLeg = (solid: SolidMesh | LegMesh): solid is LegMesh => 'openings' in solid;

export class Piece {
  readonly mesh: Mesh<BufferGeometry, Material[]>;
  private readonly edges: LineSegments2;
  private readonly rims: LineSegments2 | undefined;
  private chosenRim: { readonly cutout: number; readonly lines: LineSegments2 } | undefined;
  private hasDistances = false;

  constructor(private readonly solid: SolidMesh | LegMesh, materials: PieceMaterials) {
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(new Float32Array(solid.positions), 3));
    geometry.setIndex(new BufferAttribute(solid.triangles, 1));
    this.mesh = new Mesh(geometry, []);
    this.mesh.frustumCulled = false;
    this.mesh.matrixAutoUpdate = false;
    this.edges = lineObject(new Float32Array(solid.edges), materials.lines);
    this.mesh.add(this.edges);
    if (isLeg(solid) && solid.rims.length > 0) {
      this.rims = lineObject(new Float32Array(solid.rims), materials.rims);
      this.mesh.add(this.rims);
    }
    this.paint(materials);
  }

  paint({ marked, back, walls, openings, lines, rims, chosen }: PieceMaterials): void {
    this.mesh.material = [marked, back, walls, openings, chosen?.walls ?? openings];
    const { geometry } = this.mesh;
    const { faces } = this.solid;
    geometry.clearGroups();
    geometry.addGroup(faces.marked.start, faces.marked.count, 0);
    geometry.addGroup(faces.back.start, faces.back.count, 1);
    geometry.addGroup(faces.walls.start, faces.walls.count, 2);
    // Neighbouring openings of one colour are one group: a group is a draw call.
    let open: { start: number; count: number; material: number } | undefined;
    for (const opening of isLeg(this.solid) ? this.solid.openings : []) {
      const material = opening.cutout === chosen?.cutout ? 4 : 3;
      if (open?.material === material) open.count += opening.walls.count;
      else {
        if (open) geometry.addGroup(open.start, open.count, open.material);
        open = { ...opening.walls, material };
      }
    }
    if (open) geometry.addGroup(open.start, open.count, open.material);

    this.edges.material = lines;
    if (this.rims) this.rims.material = rims;
    if (lines.dashed && !this.hasDistances) {
      this.edges.computeLineDistances();
      this.rims?.computeLineDistances();
      this.hasDistances = true;
    }
    this.paintChosenRim(chosen);
  }

  private paintChosenRim(chosen: PieceMaterials['chosen']): void {
    if (this.chosenRim && this.chosenRim.cutout !== chosen?.cutout) {
      this.chosenRim.lines.removeFromParent();
      this.chosenRim.lines.geometry.dispose();
      this.chosenRim = undefined;
    }
    if (!chosen || this.chosenRim || !isLeg(this.solid)) return;
    const { openings, rims } = this.solid;
    const ends = openings.filter((o) => o.cutout === chosen.cutout).flatMap((o) => [...rims.subarray(o.rim.start, o.rim.start + o.rim.count)]);
    if (ends.length === 0) return;
    this.chosenRim = { cutout: chosen.cutout, lines: lineObject(new Float32Array(ends), chosen.lines) };
    // The last child is drawn last, over the thin rim in the same place.
    this.mesh.add(this.chosenRim.lines);
  }

  moveTo(frame: Frame): void {
    this.mesh.matrix.copy(matrixOf(frame));
    this.mesh.updateMatrixWorld(true);
  }

  dispose(): void {
    this.mesh.removeFromParent();
    this.mesh.geometry.dispose();
    this.edges.geometry.dispose();
    this.rims?.geometry.dispose();
    this.chosenRim?.lines.geometry.dispose();
  }
}
