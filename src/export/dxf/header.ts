import type { Bounds } from '../../core/geometry/types';
import { tag } from './tags';
import type { Tag } from './tags';

/** The form of 2007: the first that is UTF-8 throughout, so that any layer name can be written. */
const FORM = 'AC1021';

const corner = (x: number, y: number): readonly Tag[] => [tag(10, x), tag(20, y), tag(30, 0)];

/**
 * Header variables, `$ACADVER` first since readers choose their reading by it. Units: 4 is mm, 1 is inches.
 * Source: the published DXF reference, HEADER section.
 * @param extents of all shapes, in the file's unit
 * @param nextHandle first handle that no record uses, hexadecimal
 */
export function header(extents: Bounds, unit: 'mm' | 'in', nextHandle: string): readonly Tag[] {
  const { minX, minY, maxX, maxY } = extents;
  const variables: readonly (readonly [string, readonly Tag[]])[] = [
    ['$ACADVER', [tag(1, FORM)]],
    ['$DWGCODEPAGE', [tag(3, 'ANSI_1252')]],
    ['$INSBASE', corner(0, 0)],
    ['$EXTMIN', corner(minX, minY)],
    ['$EXTMAX', corner(maxX, maxY)],
    ['$LIMMIN', [tag(10, minX), tag(20, minY)]],
    ['$LIMMAX', [tag(10, maxX), tag(20, maxY)]],
    ['$LTSCALE', [tag(40, 1)]],
    ['$CLAYER', [tag(8, '0')]],
    ['$LUNITS', [tag(70, 2)]],
    ['$LUPREC', [tag(70, 4)]],
    ['$TILEMODE', [tag(70, 1)]],
    ['$INSUNITS', [tag(70, unit === 'mm' ? 4 : 1)]],
    ['$MEASUREMENT', [tag(70, unit === 'mm' ? 1 : 0)]],
    ['$HANDSEED', [tag(5, nextHandle)]],
  ];
  return variables.flatMap(([name, values]) => [tag(9, name), ...values]);
}
