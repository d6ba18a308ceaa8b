import { describe, expect, it } from 'vitest';
import { exampleJob } from '../../src/job/exampleJob';
import { writeField } from '../../src/job/fields';
import { plainBend, plainLeg, roundHole } from '../../src/job/pieces';
import { resolvePart } from '../../src/job/resolve';
import type { Job } from '../../src/job/schema';

const FOOT = 'parts.strap.legs.foot';
const withField = (path: string, value: unknown, job: Job = exampleJob): Job => {
  const changed = writeField(job, path, value);
  expect(changed, `${path} leads nowhere, or holds this already`).not.toBe(job);
  return changed;
};
const strap = (path: string, value: unknown) => resolvePart(withField(path, value), 'strap');

describe('a part that is well', () => {
  const { part, quantity, density, problems, values } = resolvePart(exampleJob, 'strap');

  it('comes out in mm and rad', () => {
    expect(problems).toEqual([]);
    expect(quantity).toBe(12);
    expect(density).toBe(8470);
    expect(part?.thickness).toBe(1.6);
    expect(part?.rule).toEqual({ kind: 'fixedK', k: 0.414 });
    expect(part?.legs.map(({ length }) => length)).toEqual([26, 18, 112, 12]);
    expect(part?.legs.map(({ bend }) => bend)).toEqual([
      undefined,
      { parent: 0, edge: 'end', turn: Math.PI / 4, way: 'up', radius: 2 },
      { parent: 1, edge: 'end', turn: Math.PI / 4, way: 'down', radius: 2 },
      { parent: 2, edge: 'end', turn: Math.PI / 2, way: 'up', radius: 2 },
    ]);
    expect(part?.legs[2]?.cutouts).toEqual([
      {
        id: 'pegs',
        name: 'Peg hole',
        shape: { kind: 'round', diameter: 3.2 },
        along: { from: 'start', basis: 'outside', distance: 7.5 },
        across: { from: 'centre', distance: 0 },
        pattern: { kind: 'row', direction: 'along', count: 7, pitch: 15 },
      },
    ]);
    expect(part?.legs[3]?.endShape).toEqual({ kind: 'radius', radius: 2 });
  });

  it('gives the value of every entry, the stock’s and the scale too', () => {
    expect(values.get('parts.strap.legs.peg-leg.length')).toBe(112);
    expect(values.get('parts.strap.legs.crank.bend.angle')).toBe(Math.PI / 4);
    expect(values.get('stocks.brass.rule.k')).toBe(0.414);
    expect(values.get('scale')).toBe(4);
    // 4 of stock and rule, scale, quantity; 4 legs of 3 and 3 bends of 2; one corner; two holes of 3 and a row of 2.
    expect(values.size).toBe(6 + 12 + 6 + 1 + 6 + 2);
  });

  it('reads inch fractions, sizes after the word full, and a stock radius that uses the thickness', () => {
    const bracket = resolvePart(exampleJob, 'bracket');
    expect(bracket.part?.thickness).toBe(25.4 / 16);
    expect(bracket.part?.legs.map(({ length }) => length)).toEqual([34.925, 38.1]);
    expect(bracket.part?.legs[1]?.bend?.radius).toBe(25.4 / 16);
  });

  it('keeps a lug with its seat', () => {
    const lug = plainLeg('lug', 'Lug', '10', '8', {
      bend: { ...plainBend('foot', '90'), edge: 'left', seat: { along: { from: 'middle', basis: 'inside', distance: '1' }, basis: 'outside', relief: { kind: 'round', width: 'thickness', depth: '2' } } },
    });
    const job = withField('parts.strap.legs', [...(exampleJob.parts[1]?.legs ?? []), lug]);
    expect(resolvePart(job, 'strap').part?.legs[4]?.bend).toEqual({
      parent: 0,
      edge: 'left',
      turn: Math.PI / 2,
      way: 'up',
      radius: 2,
      seat: { along: { from: 'middle', basis: 'inside', distance: 1 }, basis: 'outside', relief: { kind: 'round', width: 1.6, depth: 2 } },
    });
  });
});

describe('an entry that will not do', () => {
  const hole = `${FOOT}.cutouts.rivet`;
  it.each<[string, string, unknown, string]>([
    [`${FOOT}.length`, '', '3/8in + gp', 'Leg A (Foot), length: "3/8in + gp":'],
    [`${FOOT}.length`, '', '', 'Leg A (Foot), length: Type a length'],
    [`${FOOT}.length`, '', '0', 'Leg A (Foot), length: 0 mm will not do; it must be above 0.'],
    [`${FOOT}.length`, '', '-4', 'Leg A (Foot), length: -4 mm will not do'],
    [`${FOOT}.startWidth`, '', '0', 'Leg A (Foot), width at the start: 0 mm will not do'],
    [`${FOOT}.endWidth`, '', '1 - 2', 'Leg A (Foot), width at the end: -1 mm will not do'],
    ['parts.strap.legs.lip.endShape.radius', '', '-1', 'Leg D (Lip), end, corner radius: -1 mm will not do; it cannot be below 0.'],
    ['parts.strap.legs.lip.endShape', '.size', { kind: 'chamfer', size: '-1' }, 'Leg D (Lip), end, chamfer: -1 mm will not do'],
    ['parts.strap.legs.lip.bend.angle', '', '0', 'A bend of 0° is no bend. Join the two legs, or turn bend 3 by more than 0.'],
    ['parts.strap.legs.lip.bend.angle', '', '-45', 'Bend 3: -45° will not do. Give the angle above 0 and say which way: up or down.'],
    ['parts.strap.legs.lip.bend.angle', '', '181', 'Bend 3: 181° is more than a full fold. 180° is the most.'],
    ['parts.strap.legs.lip.bend.radius', '', '-0.1', 'Bend 3: a radius cannot be below 0, and this is -0.1 mm.'],
    [`${hole}.shape.diameter`, '', '0', 'Foot hole (leg A), diameter: 0 mm will not do; it must be above 0.'],
    [`${hole}.along.distance`, '', '2 +', 'Foot hole (leg A), place along: "2 +"'],
    [`${hole}.across.distance`, '', '5 deg', 'Foot hole (leg A), place across: "5 deg"'],
    [`${hole}.shape`, '.length', { kind: 'slot', length: '3', width: '4', turn: '0' }, 'Foot hole (leg A) is 3 mm long and 4 mm wide. A slot is measured overall, so it is at least as long as it is wide.'],
    [`${hole}.shape`, '.width', { kind: 'slot', length: '3', width: '0', turn: '0' }, 'Foot hole (leg A), width: 0 mm will not do'],
    [`${hole}.shape`, '.turn', { kind: 'slot', length: '3', width: '3', turn: '3 mm' }, 'Foot hole (leg A), turn: "3 mm"'],
    [`${hole}.shape`, '.corner', { kind: 'rectangle', length: '8', width: '4', corner: '2.1', turn: '0' }, 'Foot hole (leg A) has a corner radius of 2.1 mm. 2 mm, half its smaller side, is the most.'],
    [`${hole}.shape`, '.corner', { kind: 'rectangle', length: '8', width: '4', corner: '-1', turn: '0' }, 'Foot hole (leg A), corner radius: -1 mm will not do'],
    [`${hole}.shape`, '.length', { kind: 'rectangle', length: '0', width: '4', corner: '0', turn: '0' }, 'Foot hole (leg A), length: 0 mm will not do'],
    [`${hole}.pattern`, '.count', { kind: 'row', direction: 'along', count: '0', pitch: '1' }, 'Foot hole (leg A): there must be at least 1 of it.'],
    [`${hole}.pattern`, '.count', { kind: 'row', direction: 'along', count: '2.5', pitch: '1' }, 'Foot hole (leg A), how many: "2.5"'],
    [`${hole}.pattern`, '.pitch', { kind: 'row', direction: 'along', count: '2', pitch: '0' }, 'Foot hole (leg A), pitch: 0 mm will not do'],
    [`${hole}.pattern`, '', { kind: 'grid', alongCount: '200', alongPitch: '1', acrossCount: '101', acrossPitch: '1' }, 'Foot hole (leg A) brings the part to 20200 cut-outs. 20000 is the most in one part.'],
  ])('%s%s %s', (path, deeper, value, sentence) => {
    const { part, problems } = strap(path, value);
    expect(part).toBeUndefined();
    expect(problems).toHaveLength(1);
    expect(problems[0]?.field).toBe(path + deeper);
    expect(problems[0]?.says).toContain(sentence);
  });

  it('lets the ends of each range through', () => {
    expect(strap('parts.strap.legs.lip.bend.angle', '180').part?.legs[3]?.bend?.turn).toBe(Math.PI);
    expect(strap('parts.strap.legs.lip.bend.angle', '540/3').part?.legs[3]?.bend?.turn).toBe(Math.PI);
    expect(strap('parts.strap.legs.lip.bend.radius', '0').part?.legs[3]?.bend?.radius).toBe(0);
    const row = { kind: 'row', direction: 'along', count: '1', pitch: '0' };
    expect(strap(`${hole}.pattern`, row).part?.legs[0]?.cutouts[0]?.pattern).toEqual({ ...row, count: 1, pitch: 0 });
    for (const shape of [
      { kind: 'slot', length: '3', width: '3', turn: '0' },
      { kind: 'rectangle', length: '8', width: '4', corner: '2', turn: '0' },
    ]) expect(strap(`${hole}.shape`, shape).problems).toEqual([]);
    expect(strap(`${hole}.pattern`, { kind: 'grid', alongCount: '199', alongPitch: '1', acrossCount: '100', acrossPitch: '1' }).problems).toEqual([]);
  });

  it('is collected with all the others', () => {
    const job = [`${FOOT}.length`, `${FOOT}.startWidth`, 'parts.strap.legs.crank.bend.angle', 'parts.strap.legs.peg-leg.cutouts.pegs.pattern.pitch', 'parts.strap.quantity', 'stocks.brass.density'].reduce(
      (before, path) => withField(path, '0', before),
      exampleJob,
    );
    expect(resolvePart(job, 'strap').problems).toHaveLength(6);
  });

  it('names a leg and a hole without a name by letter and number', () => {
    const job = withField(`${hole}.name`, '', withField(`${FOOT}.name`, ' ', withField(`${hole}.shape.diameter`, '0', withField(`${FOOT}.length`, '0'))));
    expect(resolvePart(job, 'strap').problems.map(({ says }) => says)).toEqual([
      'Leg A, length: 0 mm will not do; it must be above 0.',
      'Hole 1 (leg A), diameter: 0 mm will not do; it must be above 0.',
    ]);
  });
});

describe('what does not stop the part', () => {
  it.each(['0', '100001', '2.5', 'many', '-1', ''])('quantity %s', (text) => {
    const { part, quantity, problems } = strap('parts.strap.quantity', text);
    expect(part).toBeDefined();
    expect(quantity).toBeUndefined();
    expect(problems.map(({ field }) => field)).toEqual(['parts.strap.quantity']);
  });

  it('quantity up to 100000', () => expect(strap('parts.strap.quantity', '100000').quantity).toBe(100000));

  it.each(['0', '-3', 'heavy', '8 mm'])('density %s', (text) => {
    const { part, density, problems } = strap('stocks.brass.density', text);
    expect(part).toBeDefined();
    expect(density).toBeUndefined();
    expect(problems.map(({ field }) => field)).toEqual(['stocks.brass.density']);
  });

  it('a size that it does not use', () => {
    const { part, problems } = strap('sizes.plate-length.text', '190 +');
    expect(part).toBeDefined();
    expect(problems.map(({ field }) => field)).toEqual(['sizes.plate-length.text']);
  });

  it('a scale, where no entry says full', () => {
    const job = withField('scale', '0');
    expect(resolvePart(job, 'strap').part).toEqual(resolvePart(exampleJob, 'strap').part);
    expect(resolvePart(job, 'strap').problems.map(({ field }) => field)).toEqual(['scale']);
    const bracket = resolvePart(job, 'bracket');
    expect(bracket.part).toBeUndefined();
    expect(bracket.problems).toEqual([{ field: 'scale', says: 'Scale: this must be above 0. 1 is full size, 12 is one inch to the foot.' }]);
    expect(bracket.values.has('parts.bracket.legs.arm.length')).toBe(false);
    expect(bracket.values.get('parts.bracket.legs.wall.length')).toBe(34.925);
  });
});

describe('a stock', () => {
  it.each(['0', '-1', 'thin', 'thickness', 'radius'])('of thickness %s is told once, and no entry that uses it is blamed', (text) => {
    const { part, problems } = resolvePart(withField('stocks.stainless.thickness', text), 'lever');
    expect(part).toBeUndefined();
    expect(problems.map(({ field }) => field)).toEqual(['stocks.stainless.thickness']);
    expect(problems[0]?.says).toContain('Stock "Stainless, 1.0 sheet", thickness: ');
  });

  it.each(['-1', 'round', 'radius', '2*radius'])('of radius %s stops only what is bent by it', (text) => {
    const job = withField('stocks.brass.radius', text);
    const { part, problems, values } = resolvePart(job, 'strap');
    expect(part).toBeUndefined();
    expect(problems.map(({ field }) => field)).toEqual(['stocks.brass.radius']);
    expect(values.has('parts.strap.legs.lip.bend.radius')).toBe(false);
    expect(values.get(`${FOOT}.length`)).toBe(26);
    const own = ['crank', 'peg-leg', 'lip'].reduce((before, leg) => withField(`parts.strap.legs.${leg}.bend.radius`, '2', before), job);
    expect(resolvePart(own, 'strap').part).toEqual(resolvePart(exampleJob, 'strap').part);
  });

  it('still has the other entries of its part checked', () => {
    const job = withField(`${FOOT}.length`, '0', withField('stocks.brass.thickness', 'x'));
    expect(resolvePart(job, 'strap').problems.map(({ field }) => field)).toEqual(['stocks.brass.thickness', `${FOOT}.length`]);
  });

  it('may use sizes that do not use it', () => {
    const job = withField('stocks.brass.thickness', 'pitch/10');
    expect(resolvePart(job, 'strap').part?.thickness).toBe(1.5);
  });

  it.each([
    ['k', { kind: 'fixedK', k: '1.2' }, 'K: K lies between 0, the inside face, and 1, the outside face.'],
    ['k', { kind: 'fixedK', k: 'x' }, 'Stock "Brass, half hard, 1.6 sheet", K: "x"'],
    ['rows', { kind: 'measured', rows: [] }, 'the table of measured bends is empty.'],
    ['rows.1.angle', { kind: 'measured', rows: [{ angle: '90', radius: '2', deduction: '3' }, { angle: '181', radius: '2', deduction: '3' }] }, 'measured bend 2, angle: the angle must be above 0° and at most 180°.'],
    ['rows.0.radius', { kind: 'measured', rows: [{ angle: '90', radius: '-2', deduction: '3' }] }, 'measured bend 1, radius: a radius cannot be below 0.'],
    ['rows.0.deduction', { kind: 'measured', rows: [{ angle: '90', radius: '2', deduction: '' }] }, 'measured bend 1, deduction: Type a length'],
  ])('with a rule wrong at %s', (field, rule, sentence) => {
    const { part, problems } = strap('stocks.brass.rule', rule);
    expect(part).toBeUndefined();
    expect(problems.map((problem) => problem.field)).toEqual([`stocks.brass.rule.${field}`]);
    expect(problems[0]?.says).toContain(sentence);
  });

  it.each([
    [{ kind: 'aviation' }, { kind: 'aviation' }],
    [{ kind: 'din6935' }, { kind: 'din6935' }],
    [{ kind: 'handbook', metal: 'soft' }, { kind: 'handbook', metal: 'soft' }],
    [{ kind: 'measured', rows: [{ angle: '90', radius: '2', deduction: '1/8in' }] }, { kind: 'measured', rows: [{ turn: Math.PI / 2, radius: 2, deduction: 3.175 }] }],
  ])('with any rule', (rule, worked) => expect(strap('stocks.brass.rule', rule).part?.rule).toEqual(worked));
});

describe('a job that does not hang together', () => {
  it.each<[string, unknown, string, string]>([
    ['parts.strap.stock', 'gold', 'parts.strap.stock', 'There is no stock "gold" in this job.'],
    ['parts.strap.legs.crank.bend.parent', 'knee', 'parts.strap.legs.crank.bend.parent', 'Bend 1 hangs on no leg that stands before leg B.'],
    ['parts.strap.legs.crank.bend.edge', 'left', 'parts.strap.legs.crank.bend', 'Bend 1 hangs on a long edge and does not say where along it.'],
    ['parts.strap.legs.crank.bend', undefined, 'parts.strap.legs.crank', 'Leg B (Crank) has no bend.'],
  ])('%s', (path, value, field, sentence) => {
    const { part, problems } = strap(path, value);
    expect(part).toBeUndefined();
    expect(problems).toHaveLength(1);
    expect(problems[0]?.field).toBe(field);
    expect(problems[0]?.says).toContain(sentence);
  });

  it('has no such part', () => {
    const { part, problems } = resolvePart(exampleJob, 'knob');
    expect(part).toBeUndefined();
    expect(problems).toEqual([{ field: 'parts.knob', says: 'There is no part "knob" in this job.' }]);
  });

  it('has a bend on its first leg', () => {
    const legs = exampleJob.parts[1]?.legs.slice(1);
    expect(strap('parts.strap.legs', legs).problems.map(({ field }) => field)).toEqual(['parts.strap.legs.crank.bend']);
  });
});

describe('what is remembered', () => {
  it('never outlives what it stands on', () => {
    const length = (job: Job) => resolvePart(job, 'strap').part?.legs[2]?.length;
    const widths = (job: Job) => resolvePart(job, 'strap').part?.legs[0]?.startWidth;
    expect(length(exampleJob)).toBe(112);
    expect(length(withField('sizes.pitch.text', '20'))).toBe(142);
    expect(length(exampleJob)).toBe(112);
    const inches = { ...exampleJob, units: { ...exampleJob.units, plain: 'in' as const } };
    expect(widths(inches)).toBe(16 * 25.4);
    expect(widths(exampleJob)).toBe(16);
    const full = withField('parts.strap.legs.foot.startWidth', 'full 64');
    expect(widths(full)).toBe(16);
    expect(widths(withField('scale', '8', full))).toBe(8);
    const thick = withField('parts.strap.legs.foot.startWidth', '10*thickness');
    expect(widths(thick)).toBe(16);
    expect(widths(withField('stocks.brass.thickness', '2', thick))).toBe(20);
  });

  it('follows a leg that changes its place, its part or its parent', () => {
    const [plate, strapPart, ...rest] = exampleJob.parts;
    if (!plate || !strapPart) throw new Error('The example has changed.');
    const [foot, crank, ...others] = strapPart.legs;
    if (!foot || !crank) throw new Error('The example has changed.');
    const broken = { ...crank, length: '0' };
    const says = (legs: Job['parts'][number]['legs'], id = 'strap') =>
      resolvePart({ ...exampleJob, parts: [plate, { ...strapPart, id, legs }, ...rest] }, id).problems.map(({ field, says: sentence }) => `${field} ${sentence}`);
    expect(says([foot, broken, ...others])[0]).toContain('parts.strap.legs.crank.length Leg B (Crank)');
    expect(says([foot, plainLeg('new', '', '9', '9', { bend: { ...plainBend('foot', '90'), parent: 'foot' } }), { ...broken, bend: plainBend('new', '45') }])[0]).toContain('Leg C (Crank)');
    const lug = plainLeg('lug', '', '9', '9', {
      bend: { ...plainBend('foot', '90'), edge: 'left', seat: { along: { from: 'middle', basis: 'straight', distance: '0' }, basis: 'straight', relief: { kind: 'none' } } },
    });
    expect(says([foot, broken])[0]).toContain('Leg B (Crank)');
    expect(says([foot, lug, broken])[0]).toContain('Leg C (Crank)');
    expect(says([foot, broken, ...others], 'other')[0]).toContain('parts.other.legs.crank.length');
    expect(says([plainLeg('knee', '', '9', '9'), { ...foot, bend: plainBend('knee', '9') }, broken])[0]).toContain('Leg C (Crank)');
  });
});

it('works out 12 legs and 300 holes in well under 1 ms once warm', () => {
  const holes = Array.from({ length: 25 }, (_, i) => roundHole(`h${i}`, '', '3.2', `${i} + pitch`));
  const legs = Array.from({ length: 12 }, (_, i) => plainLeg(`l${i}`, '', '400', '20', { cutouts: holes, ...(i > 0 ? { bend: plainBend(`l${i - 1}`, '90') } : {}) }));
  const job = withField('parts.strap.legs', legs);
  expect(resolvePart(job, 'strap').part?.legs).toHaveLength(12);
  const times: number[] = [];
  for (let i = 0; i < 400; i += 1) {
    // One entry is typed each time.
    const typed = withField('parts.strap.legs.l3.length', `${500 + i}`, job);
    const began = performance.now();
    resolvePart(typed, 'strap');
    times.push(performance.now() - began);
  }
  // The best of the last hundred: others may be using the machine.
  const best = Math.min(...times.slice(-100));
  console.log(`12 legs, 300 holes, one entry typed: ${best.toFixed(3)} ms`);
  expect(best).toBeLessThan(1);
});
