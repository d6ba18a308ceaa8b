import { useEffect, useMemo, useState } from 'react';
import { useBench } from '../../store/bench';
import '../card/card.css';
import '../stock/stock.css';
import { setOutcome } from '../screen';
import { PaperCard } from './PaperCard';
import { paperSetting, usePaperSetting } from './paperSetting';
import './papers.css';
import { lettersLoaded, PrintOut } from './printOut';
import { partsRefused, takeIntoForce } from './prints';
import { PageView } from './PageView';
import { usePapers } from './usePapers';
import { dayOf, wishOf } from './wish';

const NO_PAGES: readonly never[] = [];
const NOT_LAID = 'The part of Bendwright that lays the pages did not load. Look at the connection and load the page once more.';

/** The pages as they come from the printer, and the card with what is printed on what. */
export function PapersRoom() {
  const job = useBench((state) => state.job);
  const partInView = useBench((state) => state.part);
  const setting = usePaperSetting((state) => state);
  // The day does not change under a maker's hands; a page left open over night prints the day it was opened.
  const [today] = useState(() => dayOf(new Date()));
  const { wish, bars } = useWished(setting, job, partInView, today);
  const { laid, current, failed } = usePapers(job, wish);
  const pages = laid?.pages ?? NO_PAGES;

  useEffect(() => {
    void lettersLoaded(pages);
  }, [pages]);

  const { printWanted } = setting;
  useEffect(() => {
    if (!printWanted || (!current && !failed)) return undefined;
    paperSetting.setState({ printWanted: false });
    const refused = laid ? partsRefused(job, laid) : [NOT_LAID];
    if (pages.length === 0) {
      setOutcome({ good: false, lines: ['Nothing was printed.', ...refused] });
      return undefined;
    }
    void lettersLoaded(pages).then(() => {
      window.print();
      takeIntoForce(wish);
      if (refused.length > 0) setOutcome({ good: false, lines: refused });
    });
    return undefined;
  }, [printWanted, current, failed, laid, pages, job, wish]);

  return (
    <main id="sheet" className="sheet papers" tabIndex={-1}>
      <h1 className="unseen">Papers</h1>
      <PageView pages={pages} wish={wish} laid={laid} current={current} failed={failed ? NOT_LAID : undefined} />
      <PaperCard job={job} setting={setting} wish={wish} bars={bars} laid={laid} current={current} />
      <PrintOut pages={pages} />
    </main>
  );
}

/** The same wish while nothing that it is made of has changed, so that nothing is laid twice. */
function useWished(...[setting, job, partInView, today]: Parameters<typeof wishOf>): ReturnType<typeof wishOf> {
  const wished = wishOf(setting, job, partInView, today);
  const key = JSON.stringify(wished, (_, value: unknown) => (typeof value === 'number' && !Number.isFinite(value) ? String(value) : value));
  // oxlint-disable-next-line react-hooks/exhaustive-deps
  return useMemo(() => wished, [key]);
}
