import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkName, resolveSizes, type NamedSize } from '../../../src/core/units/namedSizes';

const STOCK = { thickness: 1.6, radius: 2 };
const resolve = (sizes: readonly NamedSize[]) => resolveSizes(sizes, STOCK, 'mm', 12);
const says = (sizes: readonly NamedSize[]): readonly string[] => resolve(sizes).problems.map(({ name, problem }) => `${name} ${problem.field}: ${problem.says}`);

describe('named sizes', () => {
  it('has thickness and radius without being told', () => {
    expect(resolve([])).toEqual({
      values: new Map([
        ['thickness', { value: 1.6, dimension: 'length' }],
        ['radius', { value: 2, dimension: 'length' }],
      ]),
      problems: [],
    });
  });

  it('works out a size that stands before what it needs', () => {
    const { values, problems } = resolve([
      { name: 'strap', text: 'pegs*pitch + 2*gap' },
      { name: 'pitch', text: '2*gap' },
      { name: 'gap', text: '3 + thickness' },
      { name: 'pegs', text: '6' },
      { name: 'rake', text: '30°' },
      { name: 'post', text: 'full 3\' 6"' },
    ]);
    expect(problems).toEqual([]);
    expect(values.get('gap')).toEqual({ value: 4.6, dimension: 'length' });
    expect(values.get('pitch')?.value).toBeCloseTo(9.2, 12);
    expect(values.get('strap')?.value).toBeCloseTo(64.4, 12);
    expect(values.get('pegs')).toEqual({ value: 6, dimension: 'number' });
    expect(values.get('rake')).toEqual({ value: Math.PI / 6, dimension: 'angle' });
    expect(values.get('post')?.value).toBeCloseTo(88.9, 12);
  });

  it('tells the round trip of a circle, and who waits for it', () => {
    expect(says([{ name: 'pitch', text: 'gap + 1' }, { name: 'gap', text: 'pitch/2' }, { name: 'strap', text: '4*pitch' }, { name: 'own', text: 'own + 1' }, { name: 'free', text: '5' }])).toEqual([
      'pitch text: These sizes go round in a circle: pitch needs gap, gap needs pitch. Give one of them a text of its own.',
      'gap text: These sizes go round in a circle: gap needs pitch, pitch needs gap. Give one of them a text of its own.',
      'strap text: "4*pitch": strap needs pitch, which has no value. Put pitch right first.',
      'own text: own needs itself. Give it a text without own in it.',
    ]);
  });

  it('a size between two circles is in neither', () => {
    const all = says([{ name: 'a1', text: 'b1' }, { name: 'b1', text: 'a1 + c1' }, { name: 'c1', text: 'd1' }, { name: 'd1', text: 'e1' }, { name: 'e1', text: 'd1' }]);
    expect(all[1]).toBe('b1 text: These sizes go round in a circle: b1 needs a1, a1 needs b1. Give one of them a text of its own.');
    expect(all[2]).toBe('c1 text: "d1": c1 needs d1, which has no value. Put d1 right first.');
  });

  it('tells the ends of a long circle only', () => {
    const ring = Array.from({ length: 9 }, (_, i) => ({ name: `s${i}`, text: `s${(i + 1) % 9}` }));
    expect(says(ring)[0]).toBe('s0 text: These sizes go round in a circle: s0 needs s1, s1 needs s2, s2 needs s3, s3 needs s4, s4 needs s5, …, s8 needs s0. Give one of them a text of its own.');
  });

  it('says which size is at fault, and works out the rest', () => {
    const sizes = [{ name: 'gap', text: '3 +' }, { name: 'pitch', text: '2*gap' }, { name: 'strap', text: '3*pitch' }, { name: 'lip', text: 'gpa + 1' }, { name: 'web', text: 'thickness*2' }, { name: 'patch', text: 'web*web' }, { name: 'bare', text: ' ' }];
    expect(says(sizes)).toEqual([
      'gap text: "3 +": there is nothing after +. Add a number or a size, or take + out.',
      'pitch text: "2*gap": pitch needs gap, which has no value. Put gap right first.',
      'strap text: "3*pitch": strap needs pitch, which has no value. Put pitch right first.',
      'lip text: "gpa + 1": there is no size called gpa. Did you mean gap?',
      'patch text: "web*web": this comes out as an area. A size is a length, an angle or a plain number.',
      'bare text: Type a size, such as 12.5, 3/8in or 2*thickness.',
    ]);
    expect([...resolve(sizes).values.keys()].toSorted()).toEqual(['radius', 'thickness', 'web']);
  });

  it('refuses a name that stands twice, wherever its twin stands, however its accent was typed', () => {
    expect(says([{ name: 'gap', text: '3' }, { name: 'lip', text: 'gap' }, { name: 'gap', text: '4' }])).toEqual([
      'gap name: There are two sizes called gap. Give one of them another name.',
      'lip text: "gap": lip needs gap, which has no value. Put gap right first.',
      'gap name: There are two sizes called gap. Give one of them another name.',
    ]);
    expect(resolve([{ name: 'é', text: '1' }, { name: 'e\u0301', text: '2' }]).problems).toHaveLength(2);
  });

  it('a stock without a thickness stops only what needs it', () => {
    const { values, problems } = resolveSizes([{ name: 'web', text: '2*thickness' }, { name: 'gap', text: 'radius' }], { thickness: Number.NaN, radius: 2 }, 'mm', 1);
    expect(problems.map(({ problem }) => problem.says)).toEqual(['"2*thickness": web needs thickness, which has no value. Put thickness right first.']);
    expect(values.get('gap')).toEqual({ value: 2, dimension: 'length' });
  });

  it('works through a chain of 2000 sizes', () => {
    const chain = Array.from({ length: 2000 }, (_, i) => ({ name: `s${i}`, text: i === 0 ? '1 mm' : `s${i - 1} + 1` }));
    expect(resolve(chain.toReversed()).values.get('s1999')?.value).toBe(2000);
  });

  it('any order gives the same values and the same problems', () => {
    const list: readonly NamedSize[] = [
      { name: 'gap', text: '3 + thickness' }, { name: 'pitch', text: '2*gap' }, { name: 'strap', text: '6*pitch - lip' }, { name: 'lip', text: '1/4in' }, { name: 'up', text: 'down' }, { name: 'down', text: 'up + gap' },
      { name: 'late', text: 'up' }, { name: 'lip2', text: 'lpi' }, { name: 'twin', text: '1' }, { name: 'twin', text: '2' }, { name: 'in', text: '4' },
    ];
    const sorted = (sizes: readonly NamedSize[]) => {
      const { values, problems } = resolve(sizes);
      return { values: [...values].toSorted(([a], [b]) => (a < b ? -1 : 1)), problems: problems.map(({ name, problem }) => `${name} ${problem.says}`).toSorted() };
    };
    const first = sorted(list);
    expect(first.values).toHaveLength(6);
    expect(first.problems).toHaveLength(7);
    fc.assert(fc.property(fc.shuffledSubarray([...list], { minLength: list.length }), (other) => {
      expect(sorted(other)).toEqual(first);
    }));
  });
});

describe('names', () => {
  it.each(['gap', 'hole_2', 'größe', 'зазор', 'α', 'Ł1', 'A', 'e\u0301tau'])('%s is a name', (name) => {
    expect(checkName(name)).toEqual({ ok: true, value: name.normalize('NFC') });
  });

  it.each([
    ['', 'Type a name, such as gap or hole_2.'],
    ['2gap', '"2gap": a name is made of letters, digits and underscores and starts with a letter, such as gap or hole_2.'],
    ['_gap', '"_gap": a name is made of letters, digits and underscores and starts with a letter, such as gap or hole_2.'],
    ['my gap', '"my gap": a name is made of letters, digits and underscores and starts with a letter, such as gap or hole_2.'],
    ['gap-2', '"gap-2": a name is made of letters, digits and underscores and starts with a letter, such as gap or hole_2.'],
    ['gap\u0000', '"gap": a name is made of letters, digits and underscores and starts with a letter, such as gap or hole_2.'],
    ['ºa', '"ºa": a name is made of letters, digits and underscores and starts with a letter, such as gap or hole_2.'],
    ['mm', '"mm" is a unit. Choose another name.'],
    ['In', '"In" is a unit. Choose another name.'],
    ['mil', '"mil" is a unit. Choose another name.'],
    ['sqrt', '"sqrt" has a meaning of its own in an entry. Choose another name.'],
    ['Full', '"Full" has a meaning of its own in an entry. Choose another name.'],
    ['thickness', '"thickness" comes from the stock. Choose another name.'],
    ['Radius', '"Radius" comes from the stock. Choose another name.'],
    ['g'.repeat(41), `"${'g'.repeat(40)}…": a name has at most 40 characters and this has 41.`],
  ])('%s is refused', (name, sentence) => {
    expect(checkName(name)).toEqual({ ok: false, problem: { field: 'name', says: sentence } });
  });

  it('a size with a refused name keeps the given one', () => {
    const { values, problems } = resolve([{ name: 'thickness', text: '9' }]);
    expect(problems).toHaveLength(1);
    expect(values.get('thickness')?.value).toBe(1.6);
  });
});
