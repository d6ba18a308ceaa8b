import { addStock } from '../../job/edit/addStock';
import type { JobStock } from '../../job/schema';
import { apply, bench, useBench } from '../../store/bench';
import { screen, useScreen } from '../screen';
import { JobSettings } from './JobSettings';
import { Sizes } from './Sizes';
import { StockSheet } from './StockSheet';
import { StockTabs } from './StockTabs';
import './stock.css';

/** A stock to be typed over: common sheet by the standard's rule. Density from memory, a handbook value. */
const newStock = (metric: boolean): Omit<JobStock, 'id'> => ({
  name: metric ? 'Mild steel, 1.0 sheet' : 'Mild steel, 1/16 in sheet',
  metal: 'steel',
  thickness: metric ? '1' : '1/16',
  radius: 'thickness',
  density: '7850',
  rule: { kind: 'din6935' },
});

function begin(): void {
  const { job } = bench.getState();
  const edit = (held: typeof job): typeof job => addStock(held, newStock(job.units.plain === 'mm'));
  screen.setState({ stock: edit(job).stocks.at(-1)?.id ?? null });
  apply(edit, { label: 'new stock' });
}

/** Stocks as index tabs, the sizes that have names, and what holds for the whole job. */
export function StockRoom() {
  const job = useBench((state) => state.job);
  const partId = useBench((state) => state.part);
  const wanted = useScreen((state) => state.stock);
  const inForce = job.parts.find(({ id }) => id === partId)?.stock;
  const stock = job.stocks.find(({ id }) => id === wanted) ?? job.stocks.find(({ id }) => id === inForce) ?? job.stocks[0];
  if (!stock) return null;
  return (
    <>
      <StockTabs inView={stock.id} onNew={begin} />
      <main id="sheet" className="sheet two" tabIndex={-1}>
        <h1 className="unseen">Stock and sizes</h1>
        <div className="wide-side">
          <StockSheet key={stock.id} job={job} stock={stock} />
          <Sizes job={job} />
        </div>
        <JobSettings job={job} />
      </main>
    </>
  );
}
