/** The bends of a part as the bench wants them: where the lines are, which way, by how much, and what each takes up. mm and rad. */
import type { Point } from '../../core/geometry/types';
import type { Blank, BlankBend } from '../../core/part/layoutTypes';

export interface BendRow {
  /** The ringed number; also the index of the leg that the bend leads to. */
  readonly number: number;
  /** Whether places are told along the blank from the datum, or across it from the lower edge (a line that runs along it). */
  readonly told: 'along' | 'across';
  readonly lineAt: number;
  /** The tangent lines, in the order in which the strip runs. */
  readonly startsAt: number;
  readonly endsAt: number;
  readonly turn: number;
  readonly way: 'up' | 'down';
  readonly radius: number;
  readonly k: number;
  readonly allowance: number;
  readonly deduction: number;
  /** Angle between the legs, as a protractor laid in the bend reads it: a straight angle less the turn. */
  readonly between: number;
}

/** x of the datum on the blank: the start of the first leg. */
export const datumOf = (blank: Blank): number => blank.legs[0]?.x ?? 0;

function bendRow(bend: BlankBend, datum: number): BendRow {
  const [a, b] = bend.centreLine;
  const told = Math.abs(b.y - a.y) >= Math.abs(b.x - a.x) ? 'along' : 'across';
  const at = ([from, to]: readonly [Point, Point]): number => (told === 'along' ? (from.x + to.x) / 2 - datum : (from.y + to.y) / 2);
  const { turn, radius, k, allowance, deduction } = bend.figures;
  return {
    number: bend.leg,
    told,
    lineAt: at(bend.centreLine),
    startsAt: at(bend.startTangent),
    endsAt: at(bend.endTangent),
    turn,
    way: bend.way,
    radius,
    k,
    allowance,
    deduction,
    between: Math.PI - turn,
  };
}

/** Every bend once: those named in `order` first and in that order, the rest by number. */
export function bendRows(blank: Blank, order: readonly number[] = []): readonly BendRow[] {
  const datum = datumOf(blank);
  const rows = blank.bends.map((bend) => bendRow(bend, datum)).toSorted((a, b) => a.number - b.number);
  const named = [...new Set(order)].flatMap((number) => rows.find((row) => row.number === number) ?? []);
  return [...named, ...rows.filter((row) => !named.includes(row))];
}
