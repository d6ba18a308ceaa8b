import { useBench } from '../../store/bench';
import { BendSheet } from './BendSheet';
import { CutoutSheet } from './CutoutSheet';
import { LegSheet } from './LegSheet';
import { PartSheet } from './PartSheet';
import type { ThePart } from './useThePart';

/** The sheet of what is chosen: a leg, a bend, a hole, or the part as a whole. */
export function ChosenSheet(held: ThePart) {
  const chosen = useBench((state) => state.chosen);
  const leg = held.part.legs.find(({ id }) => id === chosen?.leg);
  if (!chosen || !leg) return <PartSheet {...held} />;
  if (chosen.kind === 'bend' && leg.bend) return <BendSheet key={leg.id} {...held} leg={leg} bend={leg.bend} />;
  const cutout = chosen.kind === 'cutout' ? leg.cutouts.find(({ id }) => id === chosen.cutout) : undefined;
  if (cutout) return <CutoutSheet key={`${leg.id} ${cutout.id}`} {...held} leg={leg} cutout={cutout} />;
  return <LegSheet key={leg.id} {...held} leg={leg} />;
}
