/** Every opening of a part: on the blank, as it is marked out, and in the finished part, as it is checked. mm and rad. */
import type { Vector3 } from '../../core/geometry/types';
import { cutoutCalled } from '../../core/part/names';
import type { CutoutShape } from '../../core/part/types';
import type { Shape } from '../workOut';
import { datumOf } from './bendRows';

export interface HoleRow {
  readonly called: string;
  /** Index of its leg and of its cut-out there, and which repeat it is, from 0. */
  readonly leg: number;
  readonly cutout: number;
  readonly item: number;
  readonly shape: CutoutShape;
  /** rad: turn of a slot or rectangle on the blank, from the datum's direction. */
  readonly turn: number;
  /** Centre on the blank: from the datum, and from the lower edge. */
  readonly along: number;
  readonly across: number;
  /** Centre on the marked face of the finished part: along the first leg from its start, across from its centre line, out of its marked face. */
  readonly finished: Vector3;
}

export function holeRows({ layout, blank, folded }: Shape): readonly HoleRow[] {
  const datum = datumOf(blank);
  return blank.cutouts.flatMap((opening, i) => {
    const bent = folded.cutouts[i];
    if (!bent) return [];
    const { leg, cutout, item, shape, heading, centre } = opening;
    return [{
      called: cutoutCalled(layout.part, leg, cutout, item),
      leg,
      cutout,
      item,
      shape,
      turn: shape.kind === 'round' ? 0 : shape.turn + heading,
      along: centre.x - datum,
      across: centre.y,
      finished: bent.centre,
    }];
  });
}
