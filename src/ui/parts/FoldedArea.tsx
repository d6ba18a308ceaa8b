import { lazy, Suspense } from 'react';
import { choose, useBench } from '../../store/bench';
import { shapeOf } from '../../store/derived';
import { isDim, useScreen } from '../screen';
import { Otherwise } from '../trouble/Otherwise';

/** three.js comes with it, so it loads after the sheet can be used. */
const FoldedView = lazy(() => import('../folded/FoldedView'));

export function FoldedArea() {
  const job = useBench((state) => state.job);
  const id = useBench((state) => state.part);
  const chosen = useBench((state) => state.chosen);
  const dim = useScreen(isDim);
  const part = job.parts.find((each) => each.id === id);
  const metal = job.stocks.find((stock) => stock.id === part?.stock)?.metal ?? 'other';
  const { shape, stale } = shapeOf(job, id);
  return (
    <div className="area-folded">
      <Otherwise show={<Sentence says="The picture of the bent part did not load. Section and blank show the same part." />}>
        <Suspense fallback={<Sentence says="The bent part is being drawn." />}>
          <FoldedView part={id} name={part?.name.trim() || 'Part'} layout={shape?.layout} stale={stale} metal={metal} dim={dim} chosen={chosen} onPick={choose} />
        </Suspense>
      </Otherwise>
    </div>
  );
}

const Sentence = ({ says }: { readonly says: string }) => (
  <section aria-label="Folded">
    <div className="cap">
      <h2>Folded</h2>
      <p>{says}</p>
    </div>
  </section>
);
