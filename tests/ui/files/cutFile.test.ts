import { describe, expect, it } from 'vitest';
import { exampleJob } from '../../../src/job/exampleJob';
import { writeField } from '../../../src/job/fields';
import { cutFile, cutFileNames } from '../../../src/ui/files/cutFile';

describe('cutFile', () => {
  it.each(exampleJob.parts.map(({ id }) => id))('writes both forms of %s', async (id) => {
    const dxf = await cutFile(exampleJob, id, 'dxf');
    const svg = await cutFile(exampleJob, id, 'svg');
    expect(dxf.ok && dxf.text.includes('$ACADVER')).toBe(true);
    expect(svg.ok && svg.text.includes('<svg')).toBe(true);
  });

  it('refuses a part with a field at fault, with the sentence of that field', async () => {
    const job = writeField(exampleJob, 'parts.strap.legs.lip.length', '3/8in + gp');
    const file = await cutFile(job, 'strap', 'dxf');
    expect(file.ok).toBe(false);
    expect(!file.ok && file.says.join(' ')).toContain('no size called gp');
  });

  it('refuses a part that a check stops', async () => {
    const job = writeField(exampleJob, 'parts.strap.legs.peg-leg.length', '60');
    const file = await cutFile(job, 'strap', 'dxf');
    expect(file.ok).toBe(false);
  });

  it('refuses a layer name that DXF does not allow', async () => {
    const file = await cutFile(writeField(exampleJob, 'dxf.layers.outline', 'a/b'), 'lever', 'dxf');
    expect(!file.ok && file.says[0]).toContain('layer name');
  });

  it('gives parts of the same name files of different names', () => {
    const job = { ...exampleJob, parts: exampleJob.parts.flatMap((part) => [part, { ...part, id: `${part.id}-2` }]) };
    const names = cutFileNames(job, 'dxf');
    expect(new Set(names).size).toBe(job.parts.length);
  });
});
