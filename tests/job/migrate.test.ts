import { describe, expect, it } from 'vitest';
import { exampleJob } from '../../src/job/exampleJob';
import { openJob } from '../../src/job/openJob';
import { VERSION } from '../../src/job/schema';
import { migrate, MIGRATIONS, type Migration } from '../../src/job/versions/migrate';

// A made-up past: version −1 called the name a title, version 0 had no step.
const chain: Migration[] = [
  {
    from: -1,
    to: 0,
    describe: 'the title is now the name.',
    migrate: ({ title, ...rest }) => ({ ...rest, name: (title as string).trim() }),
  },
  { from: 0, to: 1, describe: 'drags snap to a step.', migrate: (job) => ({ ...job, step: { length: '0.5', angle: '5' } }) },
];

describe('the machinery of migrations', () => {
  it('walks up one step at a time and tells each', () => {
    const before = Object.freeze({ version: -1, title: ' Stay ' });
    expect(migrate(before, 1, chain)).toEqual({
      ok: true,
      value: {
        document: { version: 1, name: 'Stay', step: { length: '0.5', angle: '5' } },
        notes: ['Brought up from version -1 to 0: the title is now the name.', 'Brought up from version 0 to 1: drags snap to a step.'],
      },
    });
  });

  it('begins in the middle, and does nothing at the end', () => {
    const middle = migrate({ version: 0, name: 'Stay' }, 1, chain);
    expect(middle.ok && middle.value.notes).toHaveLength(1);
    const now = { version: 1, name: 'Stay' };
    const done = migrate(now, 1, chain);
    expect(done.ok && done.value.document).toBe(now);
  });

  it('does not walk past its target', () => expect(migrate({ version: -1, title: 'x' }, 0, chain)).toMatchObject({ ok: true, value: { document: { version: 0 } } }));

  it('refuses where a step is missing, leads back, or cannot read the document', () => {
    const says = (result: ReturnType<typeof migrate>) => (result.ok ? '' : result.problem.says);
    expect(says(migrate({ version: -2 }, 1, chain))).toContain('There is no way from version -2 of the job to version 1.');
    expect(says(migrate({ version: 0 }, 1, [{ ...chain[1], to: 0 } as Migration]))).toContain('There is no way from version 0');
    expect(says(migrate({ version: -1 }, 1, chain))).toContain('This job says it is version -1, but it does not look like one.');
  });

  it('is used when a job is opened', () => {
    const { step: _, ...old } = exampleJob;
    const opened = openJob(JSON.stringify({ ...old, version: 0 }), chain);
    expect(opened).toEqual({ ok: true, job: exampleJob, notes: ['Brought up from version 0 to 1: drags snap to a step.'] });
  });

  it('has a list in order, without gaps, that ends at the version of today', () => {
    MIGRATIONS.forEach((step, i) => {
      expect(step.to).toBeGreaterThan(step.from);
      expect(step.to).toBe(MIGRATIONS[i + 1]?.from ?? VERSION);
    });
    // Version 1 was the first: every later one must be reachable from it.
    expect(MIGRATIONS[0]?.from ?? VERSION).toBe(1);
  });
});
