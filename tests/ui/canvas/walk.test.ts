import { describe, expect, it } from 'vitest';
import { exampleJob } from '../../../src/job/exampleJob';
import type { JobPart } from '../../../src/job/schema';
import { workOut } from '../../../src/job/workOut';
import { legByLetter, mainField, spoken, stepped, type Step } from '../../../src/ui/canvas/walk';
import type { Pick } from '../../../src/drawing/entities';
import { fieldName } from '../../../src/ui/fields/fieldName';

const strap = exampleJob.parts.find(({ id }) => id === 'strap') as JobPart;
const { values } = workOut(exampleJob, 'strap').resolved;
const go = (from: Pick | null, ...steps: readonly Step[]): Pick | null => steps.reduce<Pick | null>((at, step) => stepped(strap, at, step), from);

describe('going about a part by keys', () => {
  it('begins with the first leg', () => expect(go(null, 'right')).toEqual({ kind: 'leg', leg: 'foot' }));
  it('goes leg to bend to leg, and stops at the ends', () => {
    expect(go({ kind: 'leg', leg: 'foot' }, 'right')).toEqual({ kind: 'bend', leg: 'crank' });
    expect(go({ kind: 'leg', leg: 'foot' }, 'right', 'right')).toEqual({ kind: 'leg', leg: 'crank' });
    expect(go({ kind: 'leg', leg: 'foot' }, 'left')).toEqual({ kind: 'leg', leg: 'foot' });
    expect(go({ kind: 'leg', leg: 'lip' }, 'right')).toEqual({ kind: 'leg', leg: 'lip' });
    expect(go({ kind: 'leg', leg: 'lip' }, 'left', 'left')).toEqual({ kind: 'leg', leg: 'peg-leg' });
  });
  it('goes down to the holes of a leg and back up', () => {
    expect(go({ kind: 'leg', leg: 'peg-leg' }, 'down')).toEqual({ kind: 'cutout', leg: 'peg-leg', cutout: 'pegs' });
    expect(go({ kind: 'leg', leg: 'peg-leg' }, 'down', 'up')).toEqual({ kind: 'leg', leg: 'peg-leg' });
    expect(go({ kind: 'leg', leg: 'crank' }, 'down')).toEqual({ kind: 'leg', leg: 'crank' });
    expect(go({ kind: 'bend', leg: 'crank' }, 'down')).toEqual({ kind: 'bend', leg: 'crank' });
  });
  it('goes from hole to hole', () => {
    const plate = exampleJob.parts.find(({ id }) => id === 'back-plate') as JobPart;
    const second = plate.legs[0]?.cutouts[1]?.id;
    expect(stepped(plate, stepped(plate, { kind: 'leg', leg: 'plate' }, 'down'), 'right')).toEqual({ kind: 'cutout', leg: 'plate', cutout: second });
  });
  it('picks a leg by its letter', () => {
    expect(legByLetter(strap, 'C')).toEqual({ kind: 'leg', leg: 'peg-leg' });
    expect([legByLetter(strap, 'e'), legByLetter(strap, 'z'), legByLetter(strap, 'Enter')]).toEqual([undefined, undefined, undefined]);
  });
});

describe('what is said', () => {
  it('names what is chosen with its main figure', () => {
    expect(spoken(exampleJob, strap, { kind: 'leg', leg: 'peg-leg' }, values)).toBe('Leg C, peg leg, 112.00 outside');
    expect(spoken(exampleJob, strap, { kind: 'leg', leg: 'crank' }, values)).toBe('Leg B, crank, 18.00 centre line');
    expect(spoken(exampleJob, strap, { kind: 'bend', leg: 'peg-leg' }, values)).toBe('Bend 2, 45°, down');
    expect(spoken(exampleJob, strap, { kind: 'cutout', leg: 'peg-leg', cutout: 'pegs' }, values)).toBe('Peg hole, leg C, 7.50 from the start');
    expect(spoken(exampleJob, strap, { kind: 'leg', leg: 'foot' }, new Map())).toBe('Leg A, foot, not worked out');
  });
  it.each([
    ['legs.foot.length', { label: 'Foot length', wanted: 'length', after: 'outside' }],
    ['legs.lip.length', { label: 'Lip length', wanted: 'length', after: 'inside' }],
    ['legs.peg-leg.bend.angle', { label: 'Bend 2 angle', wanted: 'angle' }],
    ['legs.peg-leg.cutouts.pegs.pattern.count', { label: 'Peg hole number in the row', wanted: 'count' }],
    ['legs.peg-leg.cutouts.pegs.along.distance', { label: 'Peg hole distance along', wanted: 'length' }],
  ])('calls %s by its name', (path, name) => expect(fieldName(exampleJob, `parts.strap.${path}`)).toEqual(name));
  it('has no name for what is not there', () => expect([fieldName(exampleJob, 'parts.strap.legs.no.length'), fieldName(exampleJob, 'stocks.brass.rule.k')]).toEqual([undefined, undefined]));
  it('opens the main field', () => expect(mainField('strap', { kind: 'cutout', leg: 'peg-leg', cutout: 'pegs' })).toBe('parts.strap.legs.peg-leg.cutouts.pegs.along.distance'));
});
