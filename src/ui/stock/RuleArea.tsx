import { writeField } from '../../job/fields';
import { ruleSource } from '../../job/ruleWords';
import type { JobRule, JobStock } from '../../job/schema';
import { unreachable } from '../../core/result';
import { apply } from '../../store/bench';
import { Choice } from '../form/Choice';
import { FieldChoice } from '../form/FieldChoice';
import { Row } from '../form/Row';
import { MeasuredBends } from './MeasuredBends';
import { stockReading } from './readings';
import { SettingField } from './SettingField';
import { METALS_BY_HARDNESS, RULES } from './ruleWords';

/** A rule of another kind, with figures to begin from. */
function ruleOf(kind: JobRule['kind']): JobRule {
  switch (kind) {
    case 'fixedK':
      return { kind, k: '0.42' };
    case 'din6935':
    case 'aviation':
      return { kind };
    case 'handbook':
      return { kind, metal: 'half-hard' };
    case 'measured':
      return { kind, rows: [] };
    default:
      return unreachable(kind);
  }
}

/** How much of the strip a bend takes up, and who says so. */
export function RuleArea({ stock }: { readonly stock: JobStock }) {
  const path = `stocks.${stock.id}.rule`;
  const name = stock.name.trim() || 'Stock';
  const { rule } = stock;
  const words = RULES.find(([kind]) => kind === rule.kind)?.[1] ?? rule.kind;
  return (
    <section className="room-area" aria-label="What a bend takes up">
      <h2 className="area-title">What a bend takes up</h2>
      <div className="rows">
        <Row name="By">
          <Choice
            label={`${name}, rule`}
            value={rule.kind}
            options={RULES}
            field={path}
            onChoose={(kind) => apply((job) => writeField(job, path, ruleOf(kind)), { label: `${name}, rule from ${words}` })}
          />
        </Row>
        {rule.kind === 'fixedK' && (
          <Row name="K">
            <SettingField field={`${path}.k`} wanted="number" label={`${name}, K`} reading={stockReading(stock.id, `${path}.k`)} />
          </Row>
        )}
        {rule.kind === 'handbook' && (
          <Row name="Metal is">
            <FieldChoice field={`${path}.metal`} label={`${name}, hardness`} options={METALS_BY_HARDNESS} />
          </Row>
        )}
      </div>
      {rule.kind === 'measured' && <MeasuredBends stock={stock} rows={rule.rows} />}
      <p className="quiet">{ruleSource(rule)}</p>
    </section>
  );
}
