/** Lines that change with every view, in one buffer that is filled anew instead of being made anew. */
import { DynamicDrawUsage, InstancedInterleavedBuffer, InterleavedBufferAttribute } from 'three';
import type { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js';
import { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/examples/jsm/lines/LineSegmentsGeometry.js';

const NUMBERS_PER_LINE = 6;

export class LineSet {
  readonly object: LineSegments2;
  private buffer: InstancedInterleavedBuffer;

  constructor(material: LineMaterial) {
    this.object = new LineSegments2(new LineSegmentsGeometry(), material);
    this.object.frustumCulled = false;
    this.object.matrixAutoUpdate = false;
    this.buffer = this.roomFor(32);
  }

  private roomFor(lines: number): InstancedInterleavedBuffer {
    const buffer = new InstancedInterleavedBuffer(new Float32Array(lines * NUMBERS_PER_LINE), NUMBERS_PER_LINE, 1);
    buffer.setUsage(DynamicDrawUsage);
    const { geometry } = this.object;
    // Frees the old buffer on the graphics card; three makes the geometry again at the next drawing.
    geometry.dispose();
    geometry.setAttribute('instanceStart', new InterleavedBufferAttribute(buffer, 3, 0));
    geometry.setAttribute('instanceEnd', new InterleavedBufferAttribute(buffer, 3, 3));
    return buffer;
  }

  /** @param ends x, y, z in turn, two ends for each line */
  put(ends: readonly number[]): void {
    if (ends.length > this.buffer.array.length) this.buffer = this.roomFor(Math.ceil((ends.length / NUMBERS_PER_LINE) * 1.5));
    this.buffer.array.set(ends);
    this.buffer.needsUpdate = true;
    this.object.geometry.instanceCount = ends.length / NUMBERS_PER_LINE;
    this.object.visible = ends.length > 0;
  }

  dispose(): void {
    this.object.removeFromParent();
    this.object.geometry.dispose();
  }
}
