import { Component, lazy, Suspense, type ReactNode } from 'react';
import { choose, useBench } from '../../store/bench';
import { shapeOf } from '../../store/derived';
import { isDim, useScreen } from '../screen';

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
      <WithoutFolded>
        <Suspense fallback={<Sentence says="The bent part is being drawn." />}>
          <FoldedView part={id} name={part?.name.trim() || 'Part'} layout={shape?.layout} stale={stale} metal={metal} dim={dim} chosen={chosen} onPick={choose} />
        </Suspense>
      </WithoutFolded>
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

/** A picture that does not load or fails takes nothing else with it. */
class WithoutFolded extends Component<{ readonly children: ReactNode }, { readonly failed: boolean }> {
  override state = { failed: false };

  static getDerivedStateFromError(): { failed: boolean } {
    return { failed: true };
  }

  override render(): ReactNode {
    return this.state.failed ? <Sentence says="The picture of the bent part did not load. Section and blank show the same part." /> : this.props.children;
  }
}
