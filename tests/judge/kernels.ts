/**
 * Two general-purpose solid kernels as independent judges, behind the same few verbs: one exact (curved faces are true cylinders),
 * one of flat facets, which is quick at unions and at asking whether two solids touch. What is built with them uses their own
 * rotations, never the frames of the source.
 */
import { createRequire } from 'node:module';
import Manifold3d, { type Manifold } from 'manifold-3d';
import openCascade, { type gp_Trsf, type TopoDS_Shape } from 'replicad-opencascadejs';
import type { ClosedPath, Contour, Vector3 } from '../../src/core/geometry/types';

/** Facets are turned by at most this, degrees: a round of facets is short of the true area by 1 − sin δ/δ, 5.1e-5. */
const FACET_DEGREES = 1;
export const FACET_SHORTFALL = 1 - Math.sin((FACET_DEGREES * Math.PI) / 180) / ((FACET_DEGREES * Math.PI) / 180);

export interface Kernel<Solid> {
  /** A plate from z = −thickness to z = 0. */
  plate(plan: ClosedPath, openings: readonly Contour[], thickness: number): Solid;
  /** The curved metal of a bend that begins at x = 0 and turns towards +x about an axis along y. */
  bend(width: number, radius: number, thickness: number, turn: number, way: 'up' | 'down'): Solid;
  /** Turned about the line along y through (0, 0, height) so that, at a positive angle, +x climbs to +z. */
  tilt(solid: Solid, height: number, angle: number): Solid;
  /** Turned about z, anticlockwise. */
  swing(solid: Solid, angle: number): Solid;
  move(solid: Solid, by: Vector3): Solid;
  volume(solid: Solid): number;
  /** Least and most x, y, z. */
  box(solid: Solid): readonly [Vector3, Vector3];
}

const inDegrees = (angle: number): number => (angle * 180) / Math.PI;

/** Ends of all segments and points on the arcs, at most a degree apart. */
const faceted = (path: ClosedPath): [number, number][] =>
  path.flatMap((s): [number, number][] => {
    if (s.kind === 'line') return [[s.from.x, s.from.y]];
    const steps = Math.ceil(inDegrees(Math.abs(s.sweep)) / FACET_DEGREES);
    const start = Math.atan2(s.from.y - s.centre.y, s.from.x - s.centre.x);
    return Array.from({ length: steps }, (_, i) => {
      const angle = start + (s.sweep * i) / steps;
      return [s.centre.x + s.radius * Math.cos(angle), s.centre.y + s.radius * Math.sin(angle)];
    });
  });

export interface FacetKernel extends Kernel<Manifold> {
  /** A round bar from its foot, `height` up its own z. */
  bar(radius: number, height: number): Manifold;
  union(solids: readonly Manifold[]): Manifold;
  /** mm between two solids, up to 1. */
  gap(a: Manifold, b: Manifold): number;
  /** Volume shared by two solids. */
  shared(a: Manifold, b: Manifold): number;
}

export async function facetKernel(): Promise<FacetKernel> {
  const wasm = await Manifold3d();
  wasm.setup();
  const outline = (path: ClosedPath) => new wasm.CrossSection([faceted(path)], 'NonZero');
  const round = (contour: Contour) =>
    contour.kind === 'circle' ? wasm.CrossSection.circle(contour.radius, 360 / FACET_DEGREES).translate([contour.centre.x, contour.centre.y]) : outline(contour.segments);
  return {
    plate: (plan, openings, thickness) =>
      openings
        .reduce((face, opening) => face.subtract(round(opening)), outline(plan))
        .extrude(thickness)
        .translate([0, 0, -thickness]),
    bend: (width, radius, thickness, turn, way) => {
      const section = new wasm.CrossSection([[[radius, -width / 2], [radius + thickness, -width / 2], [radius + thickness, width / 2], [radius, width / 2]]]);
      const ring = section.revolve(360 / FACET_DEGREES, inDegrees(turn));
      return way === 'up' ? ring.rotate([90, 0, 0]).rotate([0, 90, 0]).translate([0, 0, radius]) : ring.rotate([-90, 0, 0]).rotate([0, -90, 0]).translate([0, 0, -thickness - radius]);
    },
    tilt: (solid, height, angle) => solid.translate([0, 0, -height]).rotate([0, -inDegrees(angle), 0]).translate([0, 0, height]),
    swing: (solid, angle) => solid.rotate([0, 0, inDegrees(angle)]),
    move: (solid, by) => solid.translate([by.x, by.y, by.z]),
    volume: (solid) => solid.volume(),
    box: (solid) => {
      const { min, max } = solid.boundingBox();
      return [{ x: min[0], y: min[1], z: min[2] }, { x: max[0], y: max[1], z: max[2] }];
    },
    bar: (radius, height) => wasm.Manifold.cylinder(height, radius, radius, 360 / FACET_DEGREES),
    union: (solids) => wasm.Manifold.union([...solids]),
    gap: (a, b) => a.minGap(b, 1),
    shared: (a, b) => a.intersect(b).volume(),
  };
}

/** A solid of the exact kernel, with the openings that are to be taken off its volume. */
export interface ExactSolid {
  readonly shape: TopoDS_Shape;
  readonly openings: readonly TopoDS_Shape[];
}

export interface ExactKernel extends Kernel<ExactSolid> {
  /** A chain of the kernel's own turns and moves, for points. */
  readonly still: gp_Trsf;
  /** `first` is done to a point before `then`. */
  after(then: gp_Trsf, first: gp_Trsf): gp_Trsf;
  moving(by: Vector3): gp_Trsf;
  swinging(angle: number): gp_Trsf;
  tilting(height: number, angle: number): gp_Trsf;
  put(transform: gp_Trsf, p: Vector3): Vector3;
}

export async function exactKernel(): Promise<ExactKernel> {
  const wasmFile = createRequire(import.meta.url).resolve('replicad-opencascadejs/wasm');
  const oc = await openCascade({ locateFile: () => wasmFile });
  const at = (x: number, y: number, z: number) => new oc.gp_Pnt(x, y, z);
  const along = (x: number, y: number, z: number) => new oc.gp_Dir(x, y, z);

  const facePrism = (path: ClosedPath, thickness: number): TopoDS_Shape => {
    const wire = new oc.BRepBuilderAPI_MakeWire();
    for (const s of path) {
      const from = at(s.from.x, s.from.y, 0);
      const to = at(s.to.x, s.to.y, 0);
      if (s.kind === 'line') wire.Add(new oc.BRepBuilderAPI_MakeEdge(from, to).Edge());
      else {
        const half = Math.atan2(s.from.y - s.centre.y, s.from.x - s.centre.x) + s.sweep / 2;
        const middle = at(s.centre.x + s.radius * Math.cos(half), s.centre.y + s.radius * Math.sin(half), 0);
        wire.Add(new oc.BRepBuilderAPI_MakeEdge(new oc.GC_MakeArcOfCircle(from, middle, to).Value()).Edge());
      }
    }
    return prism(new oc.BRepBuilderAPI_MakeFace(wire.Wire(), true).Face(), thickness);
  };
  const prism = (face: TopoDS_Shape, thickness: number) => new oc.BRepPrimAPI_MakePrism(face, new oc.gp_Vec(0, 0, -thickness)).Shape();
  const opening = (contour: Contour, thickness: number) =>
    contour.kind === 'circle'
      ? new oc.BRepPrimAPI_MakeCylinder(new oc.gp_Ax2(at(contour.centre.x, contour.centre.y, -thickness), along(0, 0, 1)), contour.radius, thickness).Shape()
      : facePrism(contour.segments, thickness);
  const mass = (shape: TopoDS_Shape): number => {
    const props = new oc.GProp_GProps();
    oc.BRepGProp.VolumeProperties(shape, props, false, false, false);
    return Math.abs(props.Mass());
  };

  const moving = (by: Vector3): gp_Trsf => {
    const t = new oc.gp_Trsf();
    t.SetTranslation(new oc.gp_Vec(by.x, by.y, by.z));
    return t;
  };
  const turning = (point: [number, number, number], axis: [number, number, number], angle: number): gp_Trsf => {
    const t = new oc.gp_Trsf();
    t.SetRotation(new oc.gp_Ax1(at(...point), along(...axis)), angle);
    return t;
  };
  const swinging = (angle: number) => turning([0, 0, 0], [0, 0, 1], angle);
  const tilting = (height: number, angle: number) => turning([0, 0, height], [0, -1, 0], angle);
  const done = (solid: ExactSolid, t: gp_Trsf): ExactSolid => ({ shape: new oc.BRepBuilderAPI_Transform(solid.shape, t, true).Shape(), openings: solid.openings });

  return {
    plate: (plan, openings, thickness) => ({ shape: facePrism(plan, thickness), openings: openings.map((o) => opening(o, thickness)) }),
    bend: (width, radius, thickness, turn, way) => {
      const wire = new oc.BRepBuilderAPI_MakeWire();
      const corners = [at(0, -width / 2, -thickness), at(0, width / 2, -thickness), at(0, width / 2, 0), at(0, -width / 2, 0)];
      corners.forEach((corner, i) => wire.Add(new oc.BRepBuilderAPI_MakeEdge(corner, corners[(i + 1) % 4] ?? corner).Edge()));
      const face = new oc.BRepBuilderAPI_MakeFace(wire.Wire(), true).Face();
      const axis = way === 'up' ? new oc.gp_Ax1(at(0, 0, radius), along(0, -1, 0)) : new oc.gp_Ax1(at(0, 0, -thickness - radius), along(0, 1, 0));
      // All four arguments: with three the kernel takes the angle for the flag `copy` and turns the section right round.
      return { shape: new oc.BRepPrimAPI_MakeRevol(face, axis, turn, true).Shape(), openings: [] };
    },
    tilt: (solid, height, angle) => done(solid, tilting(height, angle)),
    swing: (solid, angle) => done(solid, swinging(angle)),
    move: (solid, by) => done(solid, moving(by)),
    volume: (solid) => solid.openings.reduce((sum, o) => sum - mass(o), mass(solid.shape)),
    box: (solid) => {
      const box = new oc.Bnd_Box();
      oc.BRepBndLib.AddOptimal(solid.shape, box, false, false);
      return [{ x: box.GetXMin(), y: box.GetYMin(), z: box.GetZMin() }, { x: box.GetXMax(), y: box.GetYMax(), z: box.GetZMax() }];
    },
    still: new oc.gp_Trsf(),
    after: (then, first) => {
      const t = moving({ x: 0, y: 0, z: 0 });
      t.Multiply(then);
      t.Multiply(first);
      return t;
    },
    moving,
    swinging,
    tilting,
    put: (transform, p) => {
      const moved = at(p.x, p.y, p.z).Transformed(transform);
      return { x: moved.X(), y: moved.Y(), z: moved.Z() };
    },
  };
}
