/** Hole and bend tables of a part. mm and degrees; places on the blank count from the start of the first leg and from the lower edge. */
import { legLetter } from '../../core/part/names';
import { bendRows } from '../../job/tables/bendRows';
import { holeRows } from '../../job/tables/holeRows';
import type { Shape } from '../../job/workOut';
import { writeCsv, type CsvOptions } from './writeCsv';

const degrees = (rad: number): number => (rad * 180) / Math.PI;

const HOLE_HEAD = [
  'name', 'leg', 'shape', 'diameter', 'length', 'width', 'corner', 'turn on the blank',
  'along the blank', 'across the blank', 'finished: along', 'finished: across', 'finished: up',
];

/** Every opening in a row of its own; finished places are in the frame of the first leg, on the marked face. */
export function holesCsv(shape: Shape, options?: CsvOptions): string {
  const body = holeRows(shape).map(({ called, leg, shape: opening, turn, along, across, finished }) => [
    called,
    legLetter(leg),
    opening.kind,
    ...(opening.kind === 'round'
      ? [opening.diameter, undefined, undefined, undefined, undefined]
      : [undefined, opening.length, opening.width, opening.kind === 'rectangle' ? opening.corner : undefined, degrees(turn)]),
    along,
    across,
    finished.x,
    finished.y,
    finished.z,
  ]);
  return writeCsv([HOLE_HEAD, ...body], options);
}

const BEND_HEAD = ['bend', 'told', 'line at', 'tangent line from', 'tangent line to', 'turn', 'way', 'between legs', 'inside radius', 'K', 'allowance', 'deduction'];

/** Every bend in the order of bending. `told` says whether places count along the blank or across it. */
export function bendsCsv({ blank }: Shape, order: readonly number[] = [], options?: CsvOptions): string {
  const body = bendRows(blank, order).map((row) => [
    row.number,
    row.told,
    row.lineAt,
    row.startsAt,
    row.endsAt,
    degrees(row.turn),
    row.way,
    degrees(row.between),
    row.radius,
    row.k,
    row.allowance,
    row.deduction,
  ]);
  return writeCsv([BEND_HEAD, ...body], options);
}
