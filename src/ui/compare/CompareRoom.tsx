import { useState } from 'react';
import { choose } from '../../store/bench';
import { PartTabs } from '../tabs/PartTabs';
import { CompareTable } from './CompareTable';
import { KeepArea } from './KeepArea';
import { OnPaper } from './OnPaper';
import { OverlayFigures } from './OverlayFigures';
import { StocksToCompare } from './StocksToCompare';
import { tableLines, type Line } from './tableLines';
import { useComparison } from './useComparison';
import { Worse } from './Worse';
import '../card/card.css';
import '../checks/checks.css';
import '../stock/stock.css';
import './compare.css';

/** What another thickness does to the part in view. */
export function CompareRoom() {
  const compared = useComparison();
  const [lit, setLit] = useState<{ readonly line: string; readonly letter: string | undefined } | undefined>();
  if (!compared) return null;
  const { comparison, part } = compared;

  const onLine = (line: Line): void => {
    const [row] = line.rows;
    const again = lit?.line === line.key;
    setLit(again ? undefined : { line: line.key, letter: row.letter });
    if (again || !row.of) choose(null);
    else choose(row.of.kind === 'cutout' ? { kind: 'cutout', leg: row.of.leg, cutout: row.of.cutout } : row.of);
  };
  const onLetter = (letter: string | undefined): void => {
    const { differ } = tableLines(comparison.rows);
    const line = differ.flatMap(({ lines }) => lines).find(({ rows }) => letter !== undefined && rows[0].letter === letter);
    if (!line) {
      setLit(undefined);
      choose(null);
      return;
    }
    if (lit?.line !== line.key) onLine(line);
    document.querySelector(`[data-line="${CSS.escape(line.key)}"]`)?.scrollIntoView({ block: 'nearest' });
  };

  return (
    <>
      <PartTabs />
      <main id="sheet" className="sheet compare" tabIndex={-1}>
        <h1 className="unseen">Compare stock: {part.name.trim() || 'Part'}</h1>
        <div className="compare-figures">
          <OverlayFigures {...compared} lit={lit?.letter} onLetter={onLetter} />
        </div>
        <div className="compare-rows">
          <CompareTable {...compared} lit={lit?.line} onLine={onLine} />
        </div>
        <aside className="compare-card" aria-label="What is compared">
          <StocksToCompare {...compared} />
          <KeepArea {...compared} />
          <Worse {...compared} />
          <OnPaper {...compared} />
        </aside>
      </main>
    </>
  );
}
