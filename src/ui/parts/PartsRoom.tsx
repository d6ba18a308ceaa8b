import { BlankFigure, SectionFigure } from '../canvas/Figures';
import { JobCard } from '../card/JobCard';
import { Checks } from '../checks/Checks';
import { useScreen } from '../screen';
import { NewPart } from '../tabs/NewPart';
import { PartTabs } from '../tabs/PartTabs';
import { FoldedArea } from './FoldedArea';
import { FootBar } from './FootBar';

/** The part in view: section over blank, folded and checks at the foot, the job card on the right. */
export function PartsRoom() {
  const newPartOpen = useScreen((state) => state.newPartOpen);
  return (
    <>
      <PartTabs />
      <main id="sheet" className="sheet parts" tabIndex={-1}>
        {newPartOpen && <NewPart />}
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
