/**
 * Workable parts at random: chains and trees of up to 40 legs with side lugs, reliefs, tapers, end shapes and cut-outs. A part
 * is built from wishes between 0 and 1, so that a failing one shrinks, and built forwards from its straight lengths, so that
 * nearly every part can be laid out (`parts.test.ts` counts how many). The setbacks are written out again here on purpose.
 */
import * as fc from 'fast-check';
import type { AllowanceRule, MeasuredDeduction } from '../../../src/core/bending/types';
import type { Across, Along, Basis, Bend, Cutout, CutoutShape, EndShape, Leg, Part, Pattern, Relief } from '../../../src/core/part/types';
import { between, degrees } from '../bending/workable';

const wish = between(0, 1);
const basis = fc.constantFrom<Basis>('outside', 'inside', 'centre line', 'straight');
const along = fc.constantFrom<Along['from']>('start', 'end', 'middle');
const across = fc.constantFrom<Across['from']>('centre', 'left', 'right');

const cutoutWish = fc.record({
  kind: fc.constantFrom('round' as const, 'slot' as const, 'rectangle' as const),
  size: wish,
  longer: wish,
  corner: wish,
  turn: between(-Math.PI, Math.PI),
  from: along,
  basis,
  x: wish,
  across,
  y: wish,
  pattern: fc.constantFrom('single' as const, 'single' as const, 'row along' as const, 'row across' as const, 'grid' as const),
  count: fc.integer({ min: 1, max: 3 }),
});

const legWish = fc.record({
  hang: wish,
  parent: wish,
  edge: fc.constantFrom('left' as const, 'right' as const),
  straight: fc.oneof({ weight: 8, arbitrary: wish }, { weight: 1, arbitrary: fc.constant(0) }),
  width: wish,
  // Nought or enough to tell: a scaled part must not cross a tolerance that the part itself did not.
  taper: fc.oneof(fc.constant(0), between(0.03, 1), between(-1, -0.03)),
  startShape: fc.constantFrom<EndShape['kind']>('square', 'radius', 'chamfer', 'round'),
  endShape: fc.constantFrom<EndShape['kind']>('square', 'radius', 'chamfer', 'round'),
  shapeSize: wish,
  turn: fc.oneof(between(degrees(2), degrees(90)), between(degrees(90), degrees(175)), fc.constant(degrees(90)), fc.constant(Math.PI)),
  way: fc.constantFrom<Bend['way']>('up', 'down'),
  radius: wish,
  startBasis: basis,
  endBasis: basis,
  seatBasis: basis,
  seatFrom: along,
  seatAlongBasis: basis,
  relief: fc.constantFrom<Relief['kind']>('none', 'square', 'round'),
  reliefSize: wish,
  full: fc.boolean(),
  cutouts: fc.array(cutoutWish, { maxLength: 2 }),
});
type LegWish = typeof legWish extends fc.Arbitrary<infer Value> ? Value : never;
type CutoutWish = typeof cutoutWish extends fc.Arbitrary<infer Value> ? Value : never;

type RuleWish = 'fixedK' | 'din6935' | 'soft' | 'half-hard' | 'hard' | 'aviation' | 'measured';
const ruleWish = fc.constantFrom<RuleWish>('fixedK', 'din6935', 'soft', 'half-hard', 'hard', 'aviation', 'measured');

/** What a random part may hold. `sound`: nothing lies over anything else on the blank, every opening within its leg's metal. */
export interface Scope {
  readonly legs?: number;
  readonly lugs?: boolean;
  readonly sound?: boolean;
  readonly rule?: RuleWish;
  readonly steepest?: number;
  /** mm, least flat of every leg. */
  readonly shortest?: number;
}

/** Design section 3, written out independently of the source. */
export function reachOf(basis: Basis, turn: number, radius: number, thickness: number): number {
  const curve = { outside: radius + thickness, inside: radius, 'centre line': radius + thickness / 2, straight: 0 }[basis];
  return turn > Math.PI / 2 ? curve : curve * Math.tan(turn / 2);
}

interface Sized {
  readonly straight: number;
  readonly startBend: Pick<Bend, 'turn' | 'radius'> | undefined;
  readonly endBend: Pick<Bend, 'turn' | 'radius'> | undefined;
}

export const datumOf = (from: Along['from'], basis: Basis, leg: Sized, thickness: number): number => {
  const reach = (bend: Pick<Bend, 'turn' | 'radius'> | undefined) => (bend ? reachOf(basis, bend.turn, bend.radius, thickness) : 0);
  const start = -reach(leg.startBend);
  const end = leg.straight + reach(leg.endBend);
  return { start, end, middle: (start + end) / 2 }[from];
};

const alongAt = (x: number, from: Along['from'], basis: Basis, leg: Sized, thickness: number): Along => {
  const datum = datumOf(from, basis, leg, thickness);
  return { from, basis, distance: from === 'end' ? datum - x : x - datum };
};

function rowsFor(bends: readonly Pick<Bend, 'turn' | 'radius'>[], thickness: number): MeasuredDeduction[] {
  const turns = [...new Set([degrees(1), Math.PI, ...bends.map((b) => b.turn)])];
  const radii = [...new Set(bends.map((b) => b.radius))];
  return [Math.min(...radii), Math.max(...radii)]
    .filter((radius, i, all) => all.indexOf(radius) === i)
    .flatMap((radius) =>
      turns.map((turn) => ({ turn, radius, deduction: 2 * reachOf('outside', turn, radius, thickness) - turn * (radius + (0.36 + 0.02 * turn) * thickness) })),
    );
}

function ruleOf(kind: RuleWish, k: number, bends: readonly Bend[], thickness: number): AllowanceRule {
  if (kind === 'measured') return bends.length > 0 ? { kind, rows: rowsFor(bends, thickness) } : { kind, rows: [{ turn: 1, radius: 1, deduction: 0.5 }] };
  if (kind === 'fixedK') return { kind, k };
  if (kind === 'din6935' || kind === 'aviation') return { kind };
  return { kind: 'handbook', metal: kind };
}

function shapeOf(w: CutoutWish, most: number): CutoutShape {
  const width = most * (0.2 + 0.5 * w.size);
  if (w.kind === 'round') return { kind: 'round', diameter: width };
  const length = width + (most - width) * w.longer;
  if (w.kind === 'slot') return { kind: 'slot', length, width, turn: w.turn };
  return { kind: 'rectangle', length, width, corner: w.corner < 0.3 ? 0 : Math.min((width / 2) * w.corner * 1.2, width / 2), turn: w.turn };
}

function patternOf(w: CutoutWish, pitch: number, acrossPitch: number): Pattern {
  switch (w.pattern) {
    case 'single':
      return { kind: 'single' };
    case 'row along':
      return { kind: 'row', direction: 'along', count: w.count, pitch };
    case 'row across':
      return { kind: 'row', direction: 'across', count: w.count, pitch: acrossPitch };
    case 'grid':
      return { kind: 'grid', alongCount: w.count, alongPitch: pitch, acrossCount: 2, acrossPitch };
  }
}

/** A cut-out and its repeats within a box of the leg: x from `least` to `most`, |y| up to `half`. */
function cutoutOf(w: CutoutWish, id: string, least: number, most: number, half: number, leg: Sized, thickness: number, widthAt: (x: number) => number): Cutout {
  const room = most - least;
  const many = w.pattern === 'row along' || w.pattern === 'grid';
  const tall = w.pattern === 'row across' || w.pattern === 'grid';
  const rows = w.pattern === 'row across' ? w.count : 2;
  const size = Math.min(many ? room / w.count : room, tall ? (2 * half) / rows : 2 * half) / 1.5;
  const pitch = many && w.count > 1 ? (room - size) / (w.count - 1) : size * 1.2;
  const acrossPitch = tall && rows > 1 ? (2 * half - size) / (rows - 1) : size * 1.2;
  const run = many ? (w.count - 1) * pitch : 0;
  const height = tall ? (rows - 1) * acrossPitch : 0;
  const low = least + size / 2;
  const centre = low + run / 2 + (room - size - run) * w.x;
  const x = { start: centre - run / 2, end: centre + run / 2, middle: centre }[w.from];
  const y = (2 * half - size - height) * (w.y - 0.5);
  const halfWidth = widthAt(x) / 2;
  const distance = { centre: y, left: halfWidth - (y + height / 2), right: y - height / 2 + halfWidth }[w.across];
  return { id, name: '', shape: shapeOf(w, size), along: alongAt(x, w.from, w.basis, leg, thickness), across: { from: w.across, distance }, pattern: patternOf(w, pitch, acrossPitch) };
}

interface Hung {
  readonly parent: number;
  readonly edge: Bend['edge'];
  /** Which of the lugs on that edge, counted from the start. */
  readonly place: number;
}

/** Which leg hangs where. */
function hang(wishes: readonly LegWish[], scope: Scope): (Hung | undefined)[] {
  const hung: (Hung | undefined)[] = [undefined];
  const ends = new Set<number>();
  const lugs = new Map<string, number>();
  const isLugRun = (leg: number): boolean => {
    const h = hung[leg];
    return h ? h.edge !== 'end' || isLugRun(h.parent) : false;
  };
  for (let i = 1; i < wishes.length; i++) {
    const w = wishes[i];
    if (!w) continue;
    const tail = i - 1;
    const wanted = Math.min(i - 1, Math.floor(w.parent * i));
    const key = `${wanted} ${w.edge}`;
    const taken = lugs.get(key) ?? 0;
    if (scope.lugs !== false && w.hang > 0.45 && taken < 2 && !(scope.sound && isLugRun(wanted))) {
      lugs.set(key, taken + 1);
      hung.push({ parent: wanted, edge: w.edge, place: taken });
    } else {
      const parent = ends.has(tail) ? wishes.findIndex((_, j) => j < i && !ends.has(j)) : tail;
      ends.add(parent);
      hung.push({ parent, edge: 'end', place: 0 });
    }
  }
  return hung;
}

/** The part that these wishes ask for. */
export function partOf(wishes: readonly LegWish[], thicknessWish: number, ruleKind: RuleWish, k: number, scope: Scope = {}): Part {
  const thickness = 0.5 + 1.5 * thicknessWish;
  const hung = hang(wishes, scope);
  const bendOf = wishes.map((w, i) => (hung[i] ? { turn: Math.min(w.turn, scope.steepest ?? Math.PI), radius: thickness * (0.15 + 2 * w.radius) } : undefined));
  const childrenOf = wishes.map((_, i) => hung.flatMap((h, j) => (h?.parent === i ? [j] : [])));
  const legs: Leg[] = [];
  const straights: number[] = [];

  wishes.forEach((w, i) => {
    const h = hung[i];
    const children = childrenOf[i] ?? [];
    const endChild = children.find((c) => hung[c]?.edge === 'end');
    const lugChildren = children.filter((c) => hung[c]?.edge !== 'end');
    const hasLugs = lugChildren.length > 0;
    const sized: Sized = {
      straight: hasLugs ? 50 + 40 * w.straight : (scope.shortest ?? 0) + 60 * w.straight,
      startBend: bendOf[i],
      endBend: endChild === undefined ? undefined : bendOf[endChild],
    };
    const { straight } = sized;
    straights.push(straight);

    // Width: a lug takes what its place on the parent's edge leaves; where nothing may overlap, no leg outgrows its lug.
    let seat: Bend['seat'];
    let startWidth = hasLugs ? 30 + 30 * w.width : 8 + 40 * w.width;
    let widest = Infinity;
    const parent = h ? legs[h.parent] : undefined;
    if (h && parent) {
      const parentBends = { startBend: bendOf[h.parent], endBend: undefined as Sized['endBend'] };
      const parentEnd = (childrenOf[h.parent] ?? []).find((c) => hung[c]?.edge === 'end');
      parentBends.endBend = parentEnd === undefined ? undefined : bendOf[parentEnd];
      const on: Sized = { straight: straights[h.parent] ?? 0, ...parentBends };
      if (h.edge === 'end') {
        const lugRun = (leg: number): boolean => (hung[leg] ? hung[leg]?.edge !== 'end' || lugRun(hung[leg]?.parent ?? 0) : false);
        if (scope.sound && lugRun(i)) widest = parent.endWidth;
      } else {
        const slope = Math.atan2((parent.endWidth - parent.startWidth) / 2, on.straight);
        const margin = 6 + 12 * Math.abs(Math.sin(slope));
        const many = (childrenOf[h.parent] ?? []).filter((c) => hung[c]?.edge === h.edge).length;
        const span = (on.straight - 2 * margin) / many;
        const from = margin + span * h.place;
        const squareEnds = parent.startShape.kind === 'square' && parent.endShape.kind === 'square';
        const mayBeFull = w.full && many === 1 && slope === 0 && !on.startBend && !on.endBend && squareEnds;
        // No deeper than the leg it hangs on can bear, from both its sides.
        const bears = 0.35 * Math.min(parent.startWidth, parent.endWidth) > 4 + reachOf('outside', bendOf[i]?.turn ?? 0, bendOf[i]?.radius ?? 0, thickness);
        const full = mayBeFull && bears;
        const bare = w.relief === 'none' || full || !bears;
        const seatBasis = bare && !full ? 'straight' : w.seatBasis;
        const reliefWidth = bare ? 0 : 0.8 + 1.2 * w.reliefSize;
        const width = full ? on.straight : (span / Math.cos(slope) - 2 * reliefWidth) * (0.4 + 0.5 * w.width);
        const nearX = full ? 0 : from + reliefWidth * Math.cos(slope) + 0.5 * (span - (width + 2 * reliefWidth) * Math.cos(slope));
        const atX = { start: nearX, end: nearX + width * Math.cos(slope), middle: nearX + (width / 2) * Math.cos(slope) }[w.seatFrom];
        const relief: Relief = bare || w.relief === 'none' ? { kind: 'none' } : { kind: w.relief, width: reliefWidth, depth: reliefWidth * (0.5 + w.reliefSize) };
        seat = { along: alongAt(atX, w.seatFrom, w.seatAlongBasis, on, thickness), basis: seatBasis, relief };
        startWidth = width;
        widest = width;
      }
    }
    startWidth = Math.min(startWidth, widest);
    const mayTaper = straight > 8 && !(scope.sound && hasLugs);
    const endWidth = mayTaper ? Math.min(startWidth * (1 + 0.35 * w.taper * (hasLugs ? 0.5 : 1)), widest) : startWidth;

    const slope = straight === 0 ? 0 : Math.abs(Math.atan2((endWidth - startWidth) / 2, straight));
    const narrow = Math.min(startWidth, endWidth);
    const shaped = (kind: EndShape['kind'], bent: boolean): EndShape => {
      if (bent || kind === 'square') return { kind: 'square' };
      if (kind === 'round') return !hasLugs && straight > 1.4 * Math.max(startWidth, endWidth) ? { kind } : { kind: 'square' };
      const most = Math.min(hasLugs ? 3 : Infinity, 0.45 * Math.min(narrow / 2, straight / 2) * Math.max(0.1, 1 - Math.tan(Math.min(slope, 1))));
      if (most < 0.01) return { kind: 'square' };
      const size = most * Math.max(0.05, w.shapeSize);
      return kind === 'radius' ? { kind, radius: size } : { kind, size };
    };
    const widthAt = (x: number) => startWidth + ((endWidth - startWidth) * x) / (straight || 1);
    const cutouts = straight < 6 ? [] : w.cutouts.map((c, j) => cutoutOf(c, `c${i}-${j}`, straight * (j === 0 ? 0.2 : 0.55), straight * (j === 0 ? 0.45 : 0.8), narrow * 0.2, sized, thickness, widthAt));
    const reachStart = sized.startBend ? reachOf(w.startBasis, sized.startBend.turn, sized.startBend.radius, thickness) : 0;
    const reachEnd = sized.endBend ? reachOf(w.endBasis, sized.endBend.turn, sized.endBend.radius, thickness) : 0;
    const length = Math.max(straight + reachStart + reachEnd, 0.01);
    const bend = bendOf[i];
    legs.push({
      id: `l${i}`,
      name: '',
      length,
      startBasis: w.startBasis,
      endBasis: w.endBasis,
      startWidth,
      endWidth,
      startShape: shaped(w.startShape, bend !== undefined),
      endShape: shaped(w.endShape, endChild !== undefined),
      cutouts,
      ...(bend && h ? { bend: { parent: h.parent, edge: h.edge, way: w.way, ...bend, ...(seat ? { seat } : {}) } } : {}),
    });
  });

  const bends = legs.flatMap((leg) => (leg.bend ? [leg.bend] : []));
  return { thickness, rule: ruleOf(ruleKind, k, bends, thickness), legs };
}

export const randomPart = (scope: Scope = {}): fc.Arbitrary<Part> =>
  fc
    .record({
      legs: fc.oneof(
        { weight: 3, arbitrary: fc.array(legWish, { minLength: 1, maxLength: Math.min(6, scope.legs ?? 6) }) },
        { weight: 1, arbitrary: fc.array(legWish, { minLength: Math.min(12, scope.legs ?? 12), maxLength: scope.legs ?? 40, size: 'max' }) },
      ),
      thickness: wish,
      rule: scope.rule === undefined ? ruleWish : fc.constant(scope.rule),
      k: between(0.2, 0.6),
    })
    .map(({ legs, thickness, rule, k }) => partOf(legs, thickness, rule, k, scope));
