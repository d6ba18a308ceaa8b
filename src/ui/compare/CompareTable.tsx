import { useState, type MouseEvent, type ReactNode } from 'react';
import { unitWord } from '../../core/units/formatLength';
import { chooseStock } from '../../job/compare/chooseStock';
import type { Job, JobStock } from '../../job/schema';
import { apply } from '../../store/bench';
import { Does } from '../card/Does';
import { say } from '../screen';
import { tick } from './comparing';
import { LineSample } from './LineSample';
import { differenceText, eachOf, tableLines, valueText, type Line } from './tableLines';
import type { Compared } from './useComparison';

interface Props extends Compared {
  /** Key of the line that is lit. */
  readonly lit: string | undefined;
  readonly onLine: (line: Line) => void;
}

const named = (stock: JobStock): string => stock.name.trim() || 'Stock without a name';

/** Makes a stock the part's own; the one it had, and all others shown, stay in the comparison. */
function make({ part, stocks, keep }: Compared, stock: JobStock): void {
  apply((held) => chooseStock(held, part.id, stock.id, keep), { label: `stock of ${part.name.trim() || 'part'} to ${named(stock)}` });
  tick(stocks.map(({ id }) => id), part.stock, true);
  say(`${part.name.trim() || 'The part'} is made of ${named(stock)} now. Undo takes it back.`);
}

/** Side by side: each quantity in each stock, and how far it is from the present one. */
export function CompareTable(props: Props) {
  const { job, part, comparison, stocks, lit, onLine } = props;
  const [opened, setOpened] = useState<ReadonlySet<string>>(new Set());
  const { differ, same } = tableLines(comparison.rows);
  const toggle = (key: string): void => {
    const next = new Set(opened);
    if (!next.delete(key)) next.add(key);
    setOpened(next);
  };
  const columns = 2 * stocks.length + 1;
  const line = (each: Line) => <Rows key={each.key} line={each} job={job} count={stocks.length} lit={lit} open={opened.has(each.key)} onOpen={() => toggle(each.key)} onLine={onLine} />;
  const sameOpen = opened.has('same');
  return (
    // A region that slides on its own must be in reach of the keys.
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex
    <section className="compare-slide" tabIndex={0} aria-label="What differs, side by side">
      <table className="plain-table compare-table">
        <thead>
          <tr>
            <th scope="col" rowSpan={2} className="letter-head">
              <span className="unseen">Letter in the drawing</span>
            </th>
            <th scope="col" rowSpan={2}>
              {unitWord(job.units) === 'mm' ? 'Lengths in mm' : 'Lengths in inches, differences in mm'}
            </th>
            {stocks.map((stock, i) => {
              const { worked } = comparison.stocks[i] ?? {};
              const cannot = worked && !worked.shape;
              return (
                <th key={stock.id} scope="colgroup" colSpan={i === 0 ? 1 : 2} className="of-stock">
                  <b>
                    <LineSample place={i} />
                    {named(stock)}
                  </b>
                  {i === 0 ? (
                    <small>made of it now</small>
                  ) : (
                    <Does
                      words="Make it this stock"
                      label={`Make ${part.name.trim() || 'it'} of ${named(stock)}`}
                      can={cannot ? `${part.name.trim() || 'The part'} cannot be laid out in ${named(stock)}.` : true}
                      run={() => make(props, stock)}
                    />
                  )}
                  {cannot && (
                    <ul className="cannot">
                      {worked.problems.map(({ field, says }) => (
                        <li key={`${field} ${says}`}>{says}</li>
                      ))}
                    </ul>
                  )}
                </th>
              );
            })}
          </tr>
          <tr>
            {stocks.map((stock, i) => [
              <th key={`${stock.id} value`} scope="col" className="num">
                <span className="unseen">{named(stock)}, </span>value
              </th>,
              i > 0 && (
                <th key={`${stock.id} difference`} scope="col" className="num">
                  <span className="unseen">{named(stock)}, </span>difference
                </th>
              ),
            ])}
          </tr>
        </thead>
        {differ.map(({ title, lines }) => (
          <tbody key={title}>
            <tr className="block-head">
              <th scope="rowgroup" colSpan={columns}>
                {title}
              </th>
            </tr>
            {lines.map(line)}
          </tbody>
        ))}
        {same.length > 0 && (
          <tbody>
            <tr className="block-head">
              <th scope="rowgroup" colSpan={columns}>
                <button type="button" className="link" aria-expanded={sameOpen} onClick={() => toggle('same')}>
                  {sameOpen ? 'Leave out what is the same in all' : `The same in all: ${same.length}`}
                </button>
              </th>
            </tr>
            {sameOpen && same.map(line)}
          </tbody>
        )}
      </table>
    </section>
  );
}

interface RowsProps {
  readonly line: Line;
  readonly job: Job;
  readonly count: number;
  readonly lit: string | undefined;
  readonly open: boolean;
  readonly onOpen: () => void;
  readonly onLine: (line: Line) => void;
}

/** A line, and under it, once opened, one for each hole of its pattern. */
function Rows({ line, job, count, lit, open, onOpen, onLine }: RowsProps) {
  const pattern = line.rows.length > 1;
  return (
    <>
      <TableLine line={line} job={job} count={count} lit={line.key === lit} onLine={onLine}>
        {pattern && (
          <button type="button" className="link each" aria-expanded={open} aria-label={`${line.called}: each hole`} onClick={onOpen}>
            {open ? 'together' : 'each'}
          </button>
        )}
      </TableLine>
      {pattern && open && eachOf(line).map((each) => <TableLine key={each.key} line={each} job={job} count={count} lit={each.key === lit} onLine={onLine} inner />)}
    </>
  );
}

interface TableLineProps {
  readonly line: Line;
  readonly job: Job;
  readonly count: number;
  readonly lit: boolean;
  readonly inner?: boolean;
  readonly onLine: (line: Line) => void;
  readonly children?: ReactNode;
}

function TableLine({ line, job, count, lit, inner = false, onLine, children }: TableLineProps) {
  const [row] = line.rows;
  /** The whole row is for the pointer; its button is for keys and readers. */
  const press = (event: MouseEvent): void => {
    if (event.target instanceof Element && !event.target.closest('.each')) onLine(line);
  };
  return (
    // oxlint-disable-next-line jsx-a11y/click-events-have-key-events, jsx-a11y/no-noninteractive-element-interactions
    <tr className={[lit ? 'lit' : '', inner ? 'inner' : ''].filter(Boolean).join(' ') || undefined} data-line={line.key} onClick={press}>
      <td className="letter">{inner ? '' : row.letter}</td>
      <th scope="row">
        <button type="button" className="line-pick" aria-label={inner ? line.called : undefined} aria-pressed={lit}>
          {inner && row.run ? line.called.slice(0, -`, ${row.run.says}`.length) : line.called}
        </button>
        {children}
      </th>
      {Array.from({ length: count }, (_, i) => [
        <td key={`${i} value`} className="num">
          {valueText(line, i, job)}
        </td>,
        i > 0 && (
          <td key={`${i} difference`} className="num difference">
            {differenceText(line, i)}
          </td>
        ),
      ])}
    </tr>
  );
}
