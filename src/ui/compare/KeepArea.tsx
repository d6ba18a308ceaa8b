import { legLetter } from '../../core/part/names';
import type { Keep } from '../../job/compare/keepSizes';
import { Choice } from '../form/Choice';
import { Row } from '../form/Row';
import { legTitle } from '../card/words';
import { holdLegs } from './comparing';
import type { Compared } from './useComparison';

const KEEPS: readonly (readonly [Keep, string])[] = [
  ['as typed', 'as typed'],
  ['outside', 'outside sizes'],
  ['inside', 'inside sizes'],
  ['holes', 'hole positions'],
];

const MIXED = [['mixed', 'leg by leg'], ...KEEPS] as const;

/** What stays the same in the other stocks, for all legs or leg by leg. */
export function KeepArea({ part, keep }: Compared) {
  const [first] = keep;
  const one = first !== undefined && keep.every((each) => each === first) ? first : 'mixed';
  return (
    <section className="room-area kept" aria-label="What is kept">
      <h2 className="area-title">What is kept</h2>
      <div className="rows keeps">
        {part.legs.length > 1 && (
          <Row name="All legs" wide>
            <Choice
              label="All legs, keep"
              value={one}
              options={one === 'mixed' ? MIXED : KEEPS}
              onChoose={(to) => to !== 'mixed' && holdLegs(part, part.legs.map(({ id }) => id), to)}
            />
          </Row>
        )}
        {part.legs.map((leg, i) => (
          <Row key={leg.id} name={leg.name.trim() ? `${legLetter(i)} ${legTitle(part, leg)}` : legTitle(part, leg)}>
            <Choice label={`Leg ${legLetter(i)}, keep`} value={keep[i] ?? 'as typed'} options={KEEPS} onChoose={(to) => holdLegs(part, [leg.id], to)} />
          </Row>
        ))}
      </div>
      <p className="quiet">As typed, each entry is worked out anew with the other thickness and radius, on the basis it has. Hole positions are kept along the leg, where they stand now in the bent part.</p>
    </section>
  );
}
