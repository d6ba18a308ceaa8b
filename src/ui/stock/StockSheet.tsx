import { copyStock } from '../../job/edit/copyStock';
import { deleteStock } from '../../job/edit/deleteStock';
import type { Job, JobStock } from '../../job/schema';
import { apply } from '../../store/bench';
import { Does } from '../card/Does';
import { FieldChoice } from '../form/FieldChoice';
import { Row } from '../form/Row';
import { TextField } from '../form/TextField';
import { stockReading } from './readings';
import { SettingField } from './SettingField';
import { RuleArea } from './RuleArea';

const METALS = ['steel', 'stainless', 'brass', 'copper', 'bronze', 'nickel silver', 'aluminium', 'other'] as const;

interface StockSheetProps {
  readonly job: Job;
  readonly stock: JobStock;
}

export function StockSheet({ job, stock }: StockSheetProps) {
  const path = `stocks.${stock.id}`;
  const name = stock.name.trim() || 'Stock';
  const parts = job.parts.filter((part) => part.stock === stock.id).map((part) => part.name.trim() || 'Part');
  const unused = parts.length === 0 || `${parts.join(', ')} ${parts.length === 1 ? 'is' : 'are'} cut from it. Give them another stock first.`;
  const number = (key: 'thickness' | 'radius' | 'density', wanted: 'length' | 'number') => (
    <SettingField field={`${path}.${key}`} wanted={wanted} label={`${name}, ${key === 'radius' ? 'inside radius' : key}`} reading={stockReading(stock.id, `${path}.${key}`)} />
  );
  return (
    <>
      <section className="room-area" aria-label="Stock">
        <div className="room-head">
          <h2 className="area-title">Stock</h2>
          <div className="links">
            <Does words="Copy" label="Copy the stock" run={() => apply((held) => copyStock(held, stock.id), { label: `copying ${name}` })} />
            <Does words="Delete" label="Delete the stock" can={unused} run={() => apply((held) => deleteStock(held, stock.id), { label: `deleting ${name}` })} />
          </div>
        </div>
        <div className="rows three">
          <Row name="Name" wide>
            <TextField field={`${path}.name`} label="Name of the stock" placeholder="no name" />
          </Row>
          <Row name="Metal">
            <FieldChoice field={`${path}.metal`} label={`${name}, metal`} options={METALS.map((metal) => [metal, metal] as const)} />
          </Row>
          <Row name="Thickness">{number('thickness', 'length')}</Row>
          <Row name="Inside radius">{number('radius', 'length')}</Row>
          <Row name="Density, kg/m³">{number('density', 'number')}</Row>
        </div>
        <p className="quiet">{unused === true ? 'No part is cut from it yet.' : `Cut from it: ${parts.join(', ')}.`} In their entries, thickness and radius stand for these two.</p>
      </section>
      <RuleArea stock={stock} />
    </>
  );
}
