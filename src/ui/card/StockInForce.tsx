import { formatAngle, formatLength } from '../../core/units/formatLength';
import type { BendFigures } from '../../core/bending/types';
import { goTo } from '../../store/bench';
import { FieldChoice } from '../form/FieldChoice';
import { screen } from '../screen';
import { ruleStandsOn } from '../../job/ruleWords';
import { Does } from './Does';
import type { ThePart } from './useThePart';

/** Allowances shown; a part with more kinds of bend has the rest on the sheets of its bends. */
const MOST_SHOWN = 3;

/** Bends of the same angle and radius take up the same: each kind once, in the order met. */
function kinds(figures: readonly BendFigures[]): readonly BendFigures[] {
  const met = new Map(figures.map((f) => [`${f.turn.toFixed(9)} ${f.radius.toFixed(9)}`, f]));
  return [...met.values()].toSorted((a, b) => a.turn - b.turn);
}

function kWords(figures: readonly BendFigures[]): string {
  const least = Math.min(...figures.map(({ k }) => k)).toFixed(3);
  const most = Math.max(...figures.map(({ k }) => k)).toFixed(3);
  return least === most ? least : `${least} to ${most}`;
}

export function StockInForce({ job, part, worked }: ThePart) {
  const stock = job.stocks.find(({ id }) => id === part.stock);
  const bends = kinds(worked.shape?.blank.bends.map(({ figures }) => figures) ?? []);
  const shown = bends.slice(0, MOST_SHOWN);
  const length = (mm: number): string => formatLength(mm, { show: job.units.show, denominator: job.units.denominator, places: 3 });
  return (
    <section className="stock-card" aria-label="Stock in force">
      <div className="stock-top">
        <h2 className="area-title">Stock in force</h2>
        <Does words="What would another thickness do?" run={() => goTo('compare')} />
      </div>
      <div className="stock-row">
        <FieldChoice
          field={`parts.${part.id}.stock`}
          label={`${part.name.trim() || 'Part'}, stock`}
          className="stock-name"
          options={job.stocks.map(({ id, name }) => [id, name.trim() || 'Stock without a name'] as const)}
        />
        <Does
          words="Sizes and rule"
          run={() => {
            screen.setState({ stock: part.stock });
            goTo('stock');
          }}
        />
      </div>
      {bends.length > 0 && (
        <p className="stock-figures">
          <span>
            K<b>{kWords(bends)}</b>
          </span>
          {shown.map((f) => (
            <span key={`${f.turn} ${f.radius}`}>
              {formatAngle(f.turn)}
              <b>{length(f.allowance)}</b>
            </span>
          ))}
          <small>{bends.length > shown.length ? `allowance, and ${bends.length - shown.length} more` : 'allowance'}</small>
        </p>
      )}
      {stock && <p className="stands-on">{bends.length > 0 || !worked.shape ? ruleStandsOn(stock.rule) : 'This part has no bends; the blank is the part.'}</p>}
    </section>
  );
}
