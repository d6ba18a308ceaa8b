import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Laid } from '../../../src/drawing/sheet/block';
import { tableBlock, type TableSpec } from '../../../src/drawing/sheet/table';

const spec = (rows: TableSpec['rows'], more: Partial<TableSpec> = {}): TableSpec => ({
  key: 't',
  title: 'Table',
  note: '',
  columns: [{ head: ['Name'], align: 'start', least: 5, mostLines: 2 }, { head: ['Along'], align: 'end', least: 5 }],
  rows,
  ...more,
});

const lines = (laid: Laid, column: number): readonly string[] =>
  laid.draw({ x: 0, y: 0 }).flatMap((e) => (e.kind === 'text' && new RegExp(`^t \\d+ ${column} \\d+$`).test(e.key) ? [e.text] : []));

describe('a table', () => {
  it('never breaks a figure, however narrow it is made, and cuts no more than names', () => {
    const table = tableBlock(spec([['Drain of the long gutter on the north side', '123456.78 to 2345678.90']]));
    expect(table.least).toBeLessThan(table.natural);
    expect(lines(table.at(table.least), 1)).toEqual(['123456.78', 'to', '2345678.90']);
    expect(lines(table.at(table.natural), 1)).toEqual(['123456.78 to 2345678.90']);
    expect(lines(table.at(table.least), 0)).toHaveLength(2);
    expect(lines(table.at(table.least), 0)[1]).toMatch(/…$/);
    expect(lines(table.at(table.natural), 0)).toEqual(['Drain of the long gutter on the north side']);
  });

  it('goes over the page with every row once, each part within its room, the head again on each', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 40, max: 90 }), (count, room) => {
        const table = tableBlock(spec(Array.from({ length: count }, (_, i) => [`hole ${i}`, `${i}.00`]), { below: 'counted from the datum' }));
        const parts: Laid[] = [];
        for (let rest: Laid | undefined = table.at(80); rest; ) {
          const halves: readonly [Laid, Laid] | undefined = rest.height > room ? rest.split(room) : undefined;
          parts.push(halves ? halves[0] : rest);
          rest = halves?.[1];
        }
        for (const part of parts) {
          expect(part.height).toBeLessThanOrEqual(room);
          expect(part.draw({ x: 0, y: 0 }).filter((e) => e.kind === 'text' && e.text === 'Along')).toHaveLength(1);
        }
        expect(parts.flatMap((part) => lines(part, 0))).toEqual(Array.from({ length: count }, (_, i) => `hole ${i}`));
      }),
    );
  });
});
