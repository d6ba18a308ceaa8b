import type { Pick } from '../../drawing/entities';
import type { JobLeg } from '../../job/schema';
import { BendSheet } from './BendSheet';
import { CutoutSheet } from './CutoutSheet';
import { LegSheet } from './LegSheet';
import type { ThePart } from './useThePart';

/** The sheet of one thing of the part; of its leg where the thing itself is gone. */
export function ThingSheet({ chosen, leg, ...held }: ThePart & { readonly chosen: Pick; readonly leg: JobLeg }) {
  if (chosen.kind === 'bend' && leg.bend) return <BendSheet key={leg.id} {...held} leg={leg} bend={leg.bend} />;
  const cutout = chosen.kind === 'cutout' ? leg.cutouts.find(({ id }) => id === chosen.cutout) : undefined;
  if (cutout) return <CutoutSheet key={`${leg.id} ${cutout.id}`} {...held} leg={leg} cutout={cutout} />;
  return <LegSheet key={leg.id} {...held} leg={leg} />;
}
