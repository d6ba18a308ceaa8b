import { sayMm } from '../core/bending/say';
import type { Cutout, CutoutShape, Pattern } from '../core/part/types';
import { unreachable } from '../core/result';
import { aboveNought, notBelowNought, type PartReader } from './partReader';
import type { JobCutout, JobCutoutShape, JobPattern } from './schema';

function shapeOf(reader: PartReader, field: string, called: string, shape: JobCutoutShape): CutoutShape | undefined {
  switch (shape.kind) {
    case 'round': {
      const what = `${called}, diameter`;
      const diameter = reader.read(`${field}.diameter`, what, shape.diameter, 'length', aboveNought(what));
      return diameter === undefined ? undefined : { kind: 'round', diameter };
    }
    case 'slot': {
      const width = reader.read(`${field}.width`, `${called}, width`, shape.width, 'length', aboveNought(`${called}, width`));
      const length = reader.read(`${field}.length`, `${called}, length`, shape.length, 'length', (value) =>
        width === undefined || value >= width
          ? aboveNought(`${called}, length`)(value)
          : `${called} is ${sayMm(value)} long and ${sayMm(width)} wide. A slot is measured overall, so it is at least as long as it is wide.`,
      );
      const turn = reader.read(`${field}.turn`, `${called}, turn`, shape.turn, 'angle');
      return width === undefined || length === undefined || turn === undefined ? undefined : { kind: 'slot', length, width, turn };
    }
    case 'rectangle': {
      const length = reader.read(`${field}.length`, `${called}, length`, shape.length, 'length', aboveNought(`${called}, length`));
      const width = reader.read(`${field}.width`, `${called}, width`, shape.width, 'length', aboveNought(`${called}, width`));
      const corner = reader.read(`${field}.corner`, `${called}, corner radius`, shape.corner, 'length', (value) => {
        if (length === undefined || width === undefined || value <= Math.min(length, width) / 2) {
          return notBelowNought(`${called}, corner radius`)(value);
        }
        return `${called} has a corner radius of ${sayMm(value)}. ${sayMm(Math.min(length, width) / 2)}, half its smaller side, is the most.`;
      });
      const turn = reader.read(`${field}.turn`, `${called}, turn`, shape.turn, 'angle');
      if (length === undefined || width === undefined || corner === undefined || turn === undefined) return undefined;
      return { kind: 'rectangle', length, width, corner, turn };
    }
    default:
      return unreachable(shape);
  }
}

function patternOf(reader: PartReader, field: string, called: string, pattern: JobPattern): Pattern | undefined {
  const count = (key: string, text: string): number | undefined =>
    reader.read(`${field}.${key}`, `${called}, how many`, text, 'count', (value) =>
      value >= 1 ? undefined : `${called}: there must be at least 1 of it. Delete it where there is none.`,
    );
  const pitch = (key: string, text: string, many: number | undefined): number | undefined =>
    reader.read(`${field}.${key}`, `${called}, pitch`, text, 'length', (value) =>
      many === undefined || many === 1 ? undefined : aboveNought(`${called}, pitch`)(value),
    );
  switch (pattern.kind) {
    case 'single':
      return pattern;
    case 'row': {
      const many = count('count', pattern.count);
      const apart = pitch('pitch', pattern.pitch, many);
      return many === undefined || apart === undefined ? undefined : { kind: 'row', direction: pattern.direction, count: many, pitch: apart };
    }
    case 'grid': {
      const alongCount = count('alongCount', pattern.alongCount);
      const alongPitch = pitch('alongPitch', pattern.alongPitch, alongCount);
      const acrossCount = count('acrossCount', pattern.acrossCount);
      const acrossPitch = pitch('acrossPitch', pattern.acrossPitch, acrossCount);
      if (alongCount === undefined || alongPitch === undefined || acrossCount === undefined || acrossPitch === undefined) return undefined;
      return { kind: 'grid', alongCount, alongPitch, acrossCount, acrossPitch };
    }
    default:
      return unreachable(pattern);
  }
}

/** How many openings a pattern makes. */
export function openings(pattern: Pattern): number {
  switch (pattern.kind) {
    case 'single':
      return 1;
    case 'row':
      return pattern.count;
    case 'grid':
      return pattern.alongCount * pattern.acrossCount;
    default:
      return unreachable(pattern);
  }
}

/** A cut-out with its entries worked out; undefined where one of them is not. */
export function resolveCutout(reader: PartReader, field: string, called: string, cutout: JobCutout): Cutout | undefined {
  const shape = shapeOf(reader, `${field}.shape`, called, cutout.shape);
  const along = reader.read(`${field}.along.distance`, `${called}, place along`, cutout.along.distance, 'length');
  const across = reader.read(`${field}.across.distance`, `${called}, place across`, cutout.across.distance, 'length');
  const pattern = patternOf(reader, `${field}.pattern`, called, cutout.pattern);
  if (!shape || along === undefined || across === undefined || !pattern) return undefined;
  return {
    id: cutout.id,
    name: cutout.name,
    shape,
    along: { from: cutout.along.from, basis: cutout.along.basis, distance: along },
    across: { from: cutout.across.from, distance: across },
    pattern,
  };
}
