/**
 * The report: every figure of a job's parts as JSON. mm, degrees, mm², g. Points on the blank count from the lower left
 * corner of the blank's bounds, marked face up; points in the bent part are in the frame of the first leg. The fields are
 * documented in DEVELOPERS.md.
 */
import { whyNot, type WorkedOut } from '../job/workOut';
import type { BlankBend, BlankCutout } from '../core/part/layoutTypes';
import type { Point, Vector3 } from '../core/geometry/types';
import type { Job } from '../job/schema';

const degrees = (rad: number): number => (rad * 180) / Math.PI;
const xy = (p: Point): readonly [number, number] => [p.x, p.y];
const xyz = (v: Vector3): readonly [number, number, number] => [v.x, v.y, v.z];

function bendReport(bend: BlankBend, ids: readonly string[]) {
  const { figures } = bend;
  return {
    number: bend.leg,
    leadsTo: ids[bend.leg] ?? '',
    way: bend.way,
    angle: degrees(figures.turn),
    radius: figures.radius,
    k: figures.k,
    allowance: figures.allowance,
    outsideSetback: figures.outsideSetback,
    insideSetback: figures.insideSetback,
    deduction: figures.deduction,
    startTangent: bend.startTangent.map(xy),
    centreLine: bend.centreLine.map(xy),
    endTangent: bend.endTangent.map(xy),
  };
}

/** Bend, cut-out and size figures of a part that could be laid out; the sentences alone where it could not. */
export function partReport(job: Job, partId: string, worked: WorkedOut) {
  const part = job.parts.find((p) => p.id === partId);
  const stock = job.stocks.find((s) => s.id === part?.stock);
  const { shape, resolved } = worked;
  const common = {
    id: partId,
    name: part?.name ?? '',
    stock: stock ? { id: stock.id, name: stock.name, metal: stock.metal, rule: stock.rule.kind } : null,
    quantity: resolved.quantity ?? null,
    errors: whyNot(worked),
    checks: worked.findings.map(({ level, says }) => ({ level, says })),
  };
  if (!shape) return { ...common, geometry: null };
  const { blank, folded, layout } = shape;
  const { thickness, legs } = layout.part;
  const ids = legs.map((leg) => leg.id);
  const cutoutReport = (cutout: BlankCutout, i: number) => ({
    leg: ids[cutout.leg] ?? '',
    id: legs[cutout.leg]?.cutouts[cutout.cutout]?.id ?? '',
    name: legs[cutout.leg]?.cutouts[cutout.cutout]?.name ?? '',
    item: cutout.item + 1,
    shape: cutout.shape.kind,
    ...(cutout.shape.kind === 'round'
      ? { diameter: cutout.shape.diameter }
      : { length: cutout.shape.length, width: cutout.shape.width, turn: degrees(cutout.shape.turn + cutout.heading) }),
    blank: xy(cutout.centre),
    folded: folded.cutouts[i] ? xyz(folded.cutouts[i].centre) : null,
    axis: folded.cutouts[i] ? xyz(folded.cutouts[i].axis) : null,
  });
  return {
    ...common,
    geometry: {
      thickness,
      developedLength: blank.developedLength,
      blank: { length: blank.bounds.maxX, width: blank.bounds.maxY },
      area: blank.area,
      cutLength: blank.cutLength,
      pierces: blank.pierces,
      /** g each: mm² × mm × kg/m³ × 1e-6. */
      mass: resolved.density === undefined ? null : blank.area * thickness * resolved.density * 1e-6,
      legs: legs.map((leg, i) => ({
        id: leg.id,
        name: leg.name,
        straight: layout.legs[i]?.straight ?? null,
        frame: folded.legs[i] ? { origin: xyz(folded.legs[i].origin), x: xyz(folded.legs[i].x), y: xyz(folded.legs[i].y), z: xyz(folded.legs[i].z) } : null,
      })),
      bends: blank.bends.map((bend) => bendReport(bend, ids)),
      cutouts: blank.cutouts.map(cutoutReport),
    },
  };
}
