import { useId, useState, type FormEvent } from 'react';
import { copyStockInThickness } from '../../job/edit/copyStockInThickness';
import { settingOf } from '../../job/stockSetting';
import { formatLength, unitWord } from '../../core/units/formatLength';
import { apply } from '../../store/bench';
import { say } from '../screen';
import { MOST_STOCKS, tick } from './comparing';
import { LINE_WORDS, LineSample } from './LineSample';
import type { Compared } from './useComparison';

const named = (name: string): string => name.trim() || 'Stock without a name';

/** The stocks of the job, ticked where they are compared. */
export function StocksToCompare({ job, part, stocks }: Compared) {
  const others = stocks.length - 1;
  const toggle = (id: string, on: boolean): void => {
    if (id === part.stock) say('The part is made of this stock now; the others are compared with it.');
    else if (!on && others <= 1) say('Two stocks are the least that can be compared. Tick another first.');
    else if (on && stocks.length >= MOST_STOCKS) say(`${MOST_STOCKS} stocks are the most that can be told apart in one drawing. Take one away first.`);
    else tick(stocks.map((stock) => stock.id), id, on);
  };
  return (
    <section className="room-area stocks-compared" aria-label="Stocks compared">
      <h2 className="area-title">Stocks compared</h2>
      <ul className="stock-ticks">
        {job.stocks.map(({ id, name }) => {
          const place = stocks.findIndex((stock) => stock.id === id);
          const thickness = settingOf(job, job.stocks.find((stock) => stock.id === id)).thickness;
          const thick = thickness === undefined ? '' : `${formatLength(thickness, { show: job.units.show, denominator: job.units.denominator })} ${unitWord(job.units)}`;
          const words = place < 0 ? thick : [thick, place === 0 ? 'made of it now' : '', LINE_WORDS[place]].filter(Boolean).join(', ');
          return (
            <li key={id}>
              <label>
                <input type="checkbox" checked={place >= 0} aria-disabled={id === part.stock} onChange={({ currentTarget }) => toggle(id, currentTarget.checked)} />
                <span>
                  {named(name)} <small>{words}</small>
                </span>
                {place >= 0 && <LineSample place={place} />}
              </label>
            </li>
          );
        })}
      </ul>
      {job.stocks.length === 1 && <p className="quiet">The job has this one stock. Type another thickness to compare it with.</p>}
      <OtherThickness job={job} part={part} stocks={stocks} />
    </section>
  );
}

/** The part's stock in a thickness that is not in the job yet: a copy of it, compared at once. */
function OtherThickness({ job, part, stocks }: Pick<Compared, 'job' | 'part' | 'stocks'>) {
  const [typed, setTyped] = useState('');
  const [says, setSays] = useState<string | undefined>();
  const id = useId();
  const own = stocks[0];
  if (!own) return null;
  const make = (event: FormEvent): void => {
    event.preventDefault();
    const copied = copyStockInThickness(job, part.stock, typed);
    if (!copied.ok) {
      setSays(copied.problem.says);
      return;
    }
    const { stock } = copied.value;
    const name = copied.value.job.stocks.find((each) => each.id === stock)?.name ?? '';
    if (stocks.length >= MOST_STOCKS) {
      setSays(`${MOST_STOCKS} stocks are the most that can be told apart in one drawing. Take one away first.`);
      return;
    }
    apply(() => copied.value.job, { label: `adding stock ${name}` });
    tick(stocks.map((each) => each.id), stock, true);
    setTyped('');
    setSays(own.rule.kind === 'measured' ? `The measured bends of ${named(own.name)} went with it. Bend a strip of the new thickness before you trust them.` : undefined);
    say(`${name} is in the job now and is compared.`);
  };
  return (
    <form className="other-thickness" onSubmit={make}>
      <label htmlFor={`${id}-field`}>Also compare with the thickness</label>
      <span className="text">
        <input
          id={`${id}-field`}
          type="text"
          value={typed}
          maxLength={200}
          autoComplete="off"
          spellCheck={false}
          placeholder={job.units.plain === 'mm' ? '1.0' : '1/16'}
          aria-invalid={says !== undefined}
          aria-describedby={says === undefined ? undefined : `${id}-says`}
          onChange={({ currentTarget }) => {
            setTyped(currentTarget.value);
            setSays(undefined);
          }}
        />
      </span>
      <button type="submit" className="link">
        Add it
      </button>
      {says !== undefined && (
        <p id={`${id}-says`} className="text-says">
          {says}
        </p>
      )}
    </form>
  );
}
