import { CutIt } from './CutIt';
import { ChosenSheet } from './ChosenSheet';
import { LegTable } from './LegTable';
import { StockInForce } from './StockInForce';
import { TitleBlock } from './TitleBlock';
import { useThePart } from './useThePart';
import './card.css';

/** The job card, ruled on to the right of the sheet. */
export function JobCard() {
  const held = useThePart();
  if (!held) return null;
  return (
    <aside className="card" aria-label="Job card">
      <TitleBlock {...held} />
      <div className="card-middle">
        <LegTable {...held} />
        <ChosenSheet {...held} />
        <StockInForce {...held} />
      </div>
      <CutIt {...held} />
    </aside>
  );
}
