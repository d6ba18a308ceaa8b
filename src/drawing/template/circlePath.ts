import { arcAbout } from '../../core/geometry/segments';
import type { ClosedPath, Point } from '../../core/geometry/types';

/** A circle as four arcs, for what works on segments. */
export const circlePath = ({ centre, radius }: { readonly centre: Point; readonly radius: number }): ClosedPath =>
  [0, 1, 2, 3].map((quarter) => arcAbout(centre, radius, (quarter * Math.PI) / 2, Math.PI / 2));
