import { lazy, Suspense } from 'react';
import { useBench } from '../../store/bench';
import { PartSheet } from './PartSheet';
import type { ThePart } from './useThePart';

/** The sheets of a leg, a bend and a hole are not in the first view: they load while the maker looks at it. */
const load = () => import('./ThingSheet');
const ThingSheet = lazy(async () => ({ default: (await load()).ThingSheet }));
setTimeout(() => void load().catch(() => undefined), 1500);

/** The sheet of what is chosen: a leg, a bend, a hole, or the part as a whole. */
export function ChosenSheet(held: ThePart) {
  const chosen = useBench((state) => state.chosen);
  const leg = held.part.legs.find(({ id }) => id === chosen?.leg);
  if (!chosen || !leg) return <PartSheet {...held} />;
  return (
    <Suspense fallback={<PartSheet {...held} />}>
      <ThingSheet {...held} chosen={chosen} leg={leg} />
    </Suspense>
  );
}
