import { describe, expect, it } from 'vitest';
import { setPlainUnit } from '../../../src/job/edit/setPlainUnit';
import { exampleJob } from '../../../src/job/exampleJob';
import { readField, writeField } from '../../../src/job/fields';
import { workOut } from '../../../src/job/workOut';

const textOf = (job: typeof exampleJob, name: string): string | undefined => job.sizes.find((size) => size.name === name)?.text;

describe('plain numbers become inches', () => {
  const inches = setPlainUnit(exampleJob, 'in');
  it('changes the size of nothing', () => {
    for (const { id } of exampleJob.parts) {
      expect(workOut(inches, id).shape?.blank.developedLength).toBeCloseTo(workOut(exampleJob, id).shape?.blank.developedLength ?? Number.NaN, 9);
      expect(workOut(inches, id).problems).toEqual([]);
    }
  });
  it('gives a named length its unit, so that it means the same when it is used next', () => {
    expect(textOf(inches, 'pitch')).toBe('15 mm');
    const lip = workOut(writeField(inches, 'parts.strap.legs.lip.length', 'pitch'), 'strap').resolved.values.get('parts.strap.legs.lip.length');
    expect(lip).toBeCloseTo(15, 12);
    expect(readField(inches, 'parts.strap.legs.peg-leg.length')).toBe('6*pitch + 22 mm');
  });
  it('leaves a count a number', () => {
    const counted = { ...exampleJob, sizes: [...exampleJob.sizes, { id: 'many', name: 'many', text: '7', note: '' }] };
    const path = exampleJob.parts.find((p) => p.id === 'strap')?.legs.flatMap((l) => l.cutouts.filter((c) => c.pattern.kind === 'row').map((c) => `parts.strap.legs.${l.id}.cutouts.${c.id}.pattern.count`))[0] ?? '';
    const used = writeField(counted, path, 'many');
    expect(textOf(setPlainUnit(used, 'in'), 'many')).toBe('7');
  });
});
