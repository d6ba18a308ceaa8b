import { lazy, Suspense } from 'react';
import { BlankFigure, SectionFigure } from '../canvas/Figures';
import { JobCard } from '../card/JobCard';
import { Checks } from '../checks/Checks';
import { useScreen } from '../screen';
import { PartTabs } from '../tabs/PartTabs';
import { FoldedArea } from './FoldedArea';
import { FootBar } from './FootBar';

/** Loads when a new part is asked for. */
const NewPart = lazy(async () => ({ default: (await import('../tabs/NewPart')).NewPart }));

/** The part in view: section over blank, folded and checks at the foot, the job card on the right. */
export function PartsRoom() {
  const newPartOpen = useScreen((state) => state.newPartOpen);
  return (
    <>
      <PartTabs />
      <main id="sheet" className="sheet parts" tabIndex={-1}>
        {newPartOpen && (
          <Suspense fallback={null}>
            <NewPart />
          </Suspense>
        )}
        <div className="area-section" id="drawings">
          <SectionFigure />
        </div>
        <div className="area-blank">
          <BlankFigure />
        </div>
        <div className="area-low">
          <FoldedArea />
          <Checks />
        </div>
        <JobCard />
      </main>
      <FootBar />
    </>
  );
}
