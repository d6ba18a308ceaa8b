import { describe, expect, it } from 'vitest';
import { contourArea, signedArea } from '../../../src/core/geometry/area';
import { inSpace } from '../../../src/core/geometry/frame';
import { distance } from '../../../src/core/geometry/points';
import { arcAbout } from '../../../src/core/geometry/segments';
import type { Arc, Contour, Segment, Vector3 } from '../../../src/core/geometry/types';
import { fold } from '../../../src/core/part/fold';
import type { FoldedBend, LegLayout } from '../../../src/core/part/layoutTypes';
import { bendMesh, sameBend } from '../../../src/ui/folded/bendMesh';
import { chordCount, LONGEST_CHORD, polygonArea, ringOf, SAGITTA_MM } from '../../../src/ui/folded/chords';
import { legMesh, MOST_TRUE_OPENINGS, sameSolid } from '../../../src/ui/folded/legMesh';
import { frontStrap, hole, laidOut, leg, longRack, wallBracket } from './sampleParts';
import { openEdges, vertices, volume } from './solids';

const parts = { frontStrap, wallBracket };
const layouts = Object.entries(parts).map(([name, part]) => ({ name, layout: laidOut(part), thickness: part.thickness }));
const allLegs = layouts.flatMap(({ name, layout, thickness }) =>
  layout.legs.map((laid, i) => ({ called: `${name} ${layout.part.legs[i]?.id}`, laid, thickness })),
);

const arcsOf = (contour: Contour): { radius: number; length: number }[] =>
  contour.kind === 'circle'
    ? [{ radius: contour.radius, length: 2 * Math.PI * contour.radius }]
    : contour.segments.flatMap((s) => (s.kind === 'arc' ? [{ radius: s.radius, length: s.radius * Math.abs(s.sweep) }] : []));

/** mm²: between arc and chord lie two thirds of the sagitta times the length, to 1 in 100 at such turns; the sagitta is bounded both ways. */
const chordError = (laid: LegLayout): number =>
  [{ kind: 'path', segments: laid.plan } as const, ...laid.cutouts.map((c) => c.contour)]
    .flatMap(arcsOf)
    .reduce((sum, a) => sum + (2 / 3) * a.length * Math.min(SAGITTA_MM, a.radius * (1 - Math.cos(LONGEST_CHORD / 2))) * 1.01, 0);

const trueArea = (laid: LegLayout): number => signedArea(laid.plan) - laid.cutouts.reduce((sum, c) => sum + contourArea(c.contour), 0);

describe('chords', () => {
  it.each([0.01, 0.5, 1.5, 8, 40, 900])('stay within the sagitta and the longest chord at radius %d mm', (radius) => {
    const count = chordCount(radius, 2 * Math.PI);
    const half = Math.PI / count;
    expect(radius * (1 - Math.cos(half))).toBeLessThanOrEqual(SAGITTA_MM * (1 + 1e-9));
    expect(2 * half).toBeLessThanOrEqual(LONGEST_CHORD * (1 + 1e-9));
  });

  it('runs anticlockwise whichever way the edge is given, with its corners', () => {
    const square: Segment[] = [[0, 0, 0, 10], [0, 10, 10, 10], [10, 10, 10, 5], [10, 5, 10, 0], [10, 0, 0, 0]].map(
      ([x1 = 0, y1 = 0, x2 = 0, y2 = 0]) => ({ kind: 'line', from: { x: x1, y: y1 }, to: { x: x2, y: y2 } }),
    );
    const ring = ringOf({ kind: 'path', segments: square });
    expect(polygonArea(ring.points)).toBe(100);
    // The fifth point, half way along an edge, is no corner and no vertex.
    expect(ring.points).toHaveLength(8);
    expect(ring.corners).toHaveLength(4);
    expect(ringOf({ kind: 'path', segments: [] }).points).toHaveLength(0);
  });

  it('marks no corner where an arc runs on from a line', () => {
    const lip = laidOut(frontStrap).legs[3];
    const ring = ringOf({ kind: 'path', segments: lip?.plan ?? [] });
    const at = ring.corners.map((c) => [ring.points[2 * c], ring.points[2 * c + 1]]);
    // Only the two at the bend; the radiused end runs smoothly round.
    expect(at).toHaveLength(2);
    for (const [x, y] of at) {
      expect(x).toBe(0);
      expect(Math.abs(y ?? NaN)).toBeCloseTo(8, 9);
    }
  });
});

describe('solid of a leg', () => {
  it.each(allLegs)('$called is closed', ({ laid, thickness }) => {
    const mesh = legMesh(laid.plan, laid.cutouts, thickness);
    expect(mesh.triangles.length).toBeGreaterThan(0);
    expect(openEdges(mesh)).toBe(0);
  });

  it.each(allLegs)('$called has the volume of its plan less its cut-outs', ({ laid, thickness }) => {
    const found = volume(legMesh(laid.plan, laid.cutouts, thickness));
    const allowed = chordError(laid) * thickness + 1e-6;
    expect(Math.abs(found - trueArea(laid) * thickness)).toBeLessThanOrEqual(allowed);
    // The bound must be far below a hole's own volume, or it would pass a solid whose holes are filled.
    for (const c of laid.cutouts) expect(allowed).toBeLessThan((contourArea(c.contour) * thickness) / 10);
  });

  it('shares its triangles out between faces, walls and openings without gap or overlap', () => {
    for (const { laid, thickness } of allLegs) {
      const mesh = legMesh(laid.plan, laid.cutouts, thickness);
      let next = 0;
      for (const run of [mesh.faces.marked, mesh.faces.back, mesh.faces.walls, ...mesh.openings.map((o) => o.walls)]) {
        expect(run.start).toBe(next);
        next += run.count;
      }
      expect(next).toBe(mesh.triangles.length);
      expect(mesh.openings.map((o) => o.cutout)).toEqual(laid.cutouts.map((c) => c.cutout));
    }
  });

  it('draws the rims of each opening at both faces, on its edge', () => {
    const laid = laidOut(frontStrap).legs[2];
    if (!laid) throw new Error('no peg leg');
    const mesh = legMesh(laid.plan, laid.cutouts, 1.6);
    mesh.openings.forEach((opening, i) => {
      const centre = laid.cutouts[i]?.centre ?? { x: NaN, y: NaN };
      const depths = new Set<number>();
      for (let k = opening.rim.start; k < opening.rim.start + opening.rim.count; k += 3) {
        expect(distance(centre, { x: mesh.rims[k] ?? NaN, y: mesh.rims[k + 1] ?? NaN })).toBeCloseTo(1.5, 9);
        depths.add(mesh.rims[k + 2] ?? NaN);
      }
      expect([...depths].toSorted((a, b) => a - b)).toEqual([-1.6, 0]);
    });
  });

  it('is nothing at all for a plan that encloses nothing', () => {
    const mesh = legMesh([], [], 1.6);
    expect(mesh.triangles).toHaveLength(0);
    expect(mesh.edges).toHaveLength(0);
  });
});

describe('solids that stay', () => {
  it('are those of all legs but the one edited', () => {
    const [before, after] = [laidOut(longRack(60)), laidOut(longRack(61))];
    expect(before.legs.map((laid, i) => { const now = after.legs[i]; return now && sameSolid(laid, now); })).toEqual(
      Array.from({ length: 13 }, (_, i) => i !== 6),
    );
  });

  it('are not those of a leg with a hole moved or made larger', () => {
    const flat = (cutout: ReturnType<typeof hole>): LegLayout => {
      const laid = laidOut({ ...frontStrap, legs: [leg('plate', 40, 20, { cutouts: [cutout] })] }).legs[0];
      if (!laid) throw new Error('no leg');
      return laid;
    };
    const one = flat(hole('peg', 3, 'start', 10));
    expect(sameSolid(one, flat(hole('peg', 3, 'start', 10)))).toBe(true);
    expect(sameSolid(one, flat(hole('peg', 3, 'start', 10.01)))).toBe(false);
    expect(sameSolid(one, flat(hole('peg', 3.01, 'start', 10)))).toBe(false);
  });
});

const lone = (way: 'up' | 'down', degrees: number, bent: number, k = 0.5): { bend: FoldedBend; thickness: number } => {
  const layout = laidOut({
    thickness: 1.6, rule: { kind: 'fixedK', k },
    legs: [leg('foot', 40, 16), leg('lip', 40, 16, { bend: { parent: 0, edge: 'end', turn: (degrees * Math.PI) / 180, way, radius: 2 } })],
  });
  const bend = fold(layout, [1, bent]).bends[0];
  if (!bend) throw new Error('no bend');
  return { bend, thickness: 1.6 };
};

const stages = (['up', 'down'] as const).flatMap((way) => [20, 90, 150, 180].flatMap((degrees) => [0, 1e-4, 0.5, 1].map((bent) => ({ way, degrees, bent }))));

describe('solid of a bend', () => {
  it.each(stages)('$degrees° $way, $bent bent, is closed', ({ way, degrees, bent }) => {
    const { bend, thickness } = lone(way, degrees, bent);
    expect(openEdges(bendMesh(bend, thickness))).toBe(0);
  });

  it.each(stages)('$degrees° $way, $bent bent, with K ½ keeps allowance × width × thickness', ({ way, degrees, bent }) => {
    const { bend, thickness } = lone(way, degrees, bent);
    const whole = bend.allowance * bend.width * thickness;
    // Chords cut off the share 1 − sin δ / δ of a sector, below δ²/6; none while flat.
    const allowed = bend.turn === 0 ? 1e-9 : LONGEST_CHORD ** 2 / 6;
    expect(Math.abs(volume(bendMesh(bend, thickness)) / whole - 1)).toBeLessThanOrEqual(allowed);
  });

  it('with another K has the volume of the sector between its faces', () => {
    const { bend, thickness } = lone('up', 90, 1, 0.3);
    const sector = (bend.turn / 2) * ((bend.radius + thickness) ** 2 - bend.radius ** 2) * bend.width;
    expect(Math.abs(volume(bendMesh(bend, thickness)) / sector - 1)).toBeLessThan(LONGEST_CHORD ** 2 / 6);
    expect(Math.abs(sector / (bend.allowance * bend.width * thickness) - 1)).toBeGreaterThan(0.05);
  });

  it('is a flat strip while its turn is too small to count with', () => {
    const { bend, thickness } = lone('up', 90, 1);
    const mesh = bendMesh({ ...bend, turn: 1e-17, radius: bend.allowance / 1e-17 }, thickness);
    expect(volume(mesh)).toBeCloseTo(bend.allowance * bend.width * thickness, 9);
    expect(openEdges(mesh)).toBe(0);
  });

  it('is another solid once it is bent further', () => {
    expect(sameBend(lone('up', 90, 1).bend, lone('up', 90, 1).bend)).toBe(true);
    expect(sameBend(lone('up', 90, 1).bend, lone('up', 90, 0.9).bend)).toBe(false);
    expect(sameBend(lone('up', 90, 1).bend, lone('down', 90, 1).bend)).toBe(false);
  });
});

const gap = (a: Vector3, b: Vector3): number => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

describe('joints', () => {
  it.each(layouts.flatMap((l) => [0, 0.35, 1].map((bent) => ({ ...l, bent }))))(
    '$name, $bent bent: both ends of each bend are corners of the legs they join', ({ layout, thickness, bent }) => {
      const folded = fold(layout, layout.legs.map(() => bent));
      const inPlace = layout.legs.map((laid, i) => {
        const frame = folded.legs[i];
        return frame ? vertices(legMesh(laid.plan, laid.cutouts, thickness)).map((v) => inSpace(frame, v)) : [];
      });
      expect(folded.bends).toHaveLength(layout.legs.length - 1);
      for (const bend of folded.bends) {
        const corners = vertices(bendMesh(bend, thickness)).map((v) => inSpace(bend.frame, v));
        const parent = layout.part.legs[bend.leg]?.bend?.parent ?? -1;
        for (const [ends, owner] of [[corners.slice(0, 4), parent], [corners.slice(-4), bend.leg]] as const) {
          for (const corner of ends) expect(Math.min(...(inPlace[owner] ?? []).map((v) => gap(v, corner)))).toBeLessThan(1e-9);
        }
      }
    },
  );
});

describe('round ends', () => {
  it('are known to bulge, hollows are not', () => {
    const foot = laidOut(frontStrap).legs[0];
    const mesh = legMesh(foot?.plan ?? [], foot?.cutouts ?? [], 1.6);
    expect(mesh.rounds.reduce((sum, a) => sum + a.sweep, 0)).toBeCloseTo(Math.PI, 9);
    const hollow: Arc = arcAbout({ x: 0, y: 0 }, 5, Math.PI, -Math.PI);
    expect(legMesh([hollow, { kind: 'line', from: hollow.to, to: hollow.from }], [], 1).rounds).toHaveLength(0);
  });
});

describe('a leg of more openings than are cut out', () => {
  const cutouts = Array.from({ length: MOST_TRUE_OPENINGS + 1 }, (_, i) => ({
    cutout: 0,
    item: i,
    centre: { x: 2 + (i % 50) * 3, y: Math.floor(i / 50) * 3 - 12 },
    shape: { kind: 'round', diameter: 2 } as const,
    contour: { kind: 'circle', centre: { x: 2 + (i % 50) * 3, y: Math.floor(i / 50) * 3 - 12 }, radius: 1 } as const,
  }));
  const plan = [[0, -20], [160, -20], [160, 20], [0, 20]].map(([x = 0, y = 0], i, all): Segment => {
    const [toX = 0, toY = 0] = all[(i + 1) % 4] ?? [];
    return { kind: 'line', from: { x, y }, to: { x: toX, y: toY } };
  });
  const mesh = legMesh(plan, cutouts, 1.5);
  const normalZ = (at: number): number => {
    const [a, b, c] = [0, 1, 2].map((k) => 3 * (mesh.triangles[at + k] ?? 0));
    const [p, q, r] = [a, b, c].map((k = 0) => ({ x: mesh.positions[k] ?? 0, y: mesh.positions[k + 1] ?? 0, z: mesh.positions[k + 2] ?? 0 }));
    return p && q && r ? ((q.x - p.x) * (r.y - p.y) - (r.x - p.x) * (q.y - p.y)) / 2 : Number.NaN;
  };
  it('is a plate with a spot for each on either face, facing outwards', () => {
    expect(mesh.openings).toHaveLength(cutouts.length);
    for (const { walls } of mesh.openings) {
      let up = 0;
      let down = 0;
      for (let t = walls.start; t < walls.start + walls.count; t += 3) {
        const area = normalZ(t);
        const z = mesh.positions[3 * (mesh.triangles[t] ?? 0) + 2] ?? 0;
        if (z > 0) up += area;
        else down += area;
      }
      // An octagon of radius 1: 2√2.
      expect(up).toBeCloseTo(2 * Math.SQRT2, 9);
      expect(down).toBeCloseTo(-2 * Math.SQRT2, 9);
    }
  });
});
