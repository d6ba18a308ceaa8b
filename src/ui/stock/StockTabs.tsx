import { useBench } from '../../store/bench';
import { screen } from '../screen';
import '../tabs/tabs.css';

const cutFrom = (count: number): string => (count === 0 ? 'no part is cut from it' : count === 1 ? '1 part is cut from it' : `${count} parts are cut from it`);

export function StockTabs({ inView, onNew }: { readonly inView: string; readonly onNew: () => void }) {
  const job = useBench((state) => state.job);
  return (
    <nav className="tabs" aria-label="Stocks of the job">
      {job.stocks.map(({ id, name }) => {
        const called = name.trim() || 'Stock without a name';
        const used = cutFrom(job.parts.filter(({ stock }) => stock === id).length);
        return (
          <button key={id} type="button" className="tab" aria-label={`${called}, ${used}`} aria-current={id === inView ? 'true' : undefined} onClick={() => screen.setState({ stock: id })}>
            <span>
              <b>{called}</b> <small>{used}</small>
            </span>
          </button>
        );
      })}
      <button type="button" className="tab new" onClick={onNew}>
        <b>New stock</b>
      </button>
    </nav>
  );
}
