import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Worked } from '#engine/connections/worked.ts';
import { referencesOf } from '#engine/work/references.ts';
import type { Job } from '#model/job.ts';
import { edited } from '../circuit/any-edited-job.ts';
import { demoJob } from '../demo-jobs/demo-estimates.ts';
import { demoSchemes, firstWorked } from './worked-schemes.ts';

const marks = ({ cables, joints, units }: ReturnType<typeof referencesOf>): readonly string[] =>
  [...cables, ...joints, ...units].map(({ mark }) => mark);

/** The job as another program might write it: every id another, nothing else. */
function renamed(job: Job): Job {
  const ids = new Set([...JSON.stringify(job).matchAll(/"id":"([^"]+)"/g)].map(([, id]) => id ?? ''));
  const text = [...ids]
    .toSorted((a, b) => b.length - a.length)
    .reduce((so, id, i) => so.replaceAll(`"${id}"`, `"x${String(9999 - i)}"`), JSON.stringify(job));
  return JSON.parse(text) as Job;
}

function holds(worked: Worked): void {
  const references = referencesOf(worked);
  expect(new Set(marks(references)).size).toBe(marks(references).length);
  const labels = new Set(worked.job.points.map(({ label }) => label));
  for (const { mark } of [...references.joints, ...references.units]) expect(labels).not.toContain(mark);
  for (const { id, kind } of [...worked.proposed.edges, ...worked.found.edges])
    if (kind === 'cable') expect(references.cables.map((each) => each.id)).toContain(id);
  for (const { id, kind, pointId } of worked.proposed.nodes)
    if (kind === 'joint' && pointId === null) expect(references.place(id)).toMatch(/^J\d+$/);
}

describe('the names that all papers share', () => {
  it.each(demoSchemes())('of $name are each one thing’s, and every cable has one', ({ worked }) => {
    holds(worked);
    expect(referencesOf(worked).cables[0]?.mark).toBe('K1');
  });

  it('of any scheme are each one thing’s, and every cable has one', () => {
    fc.assert(
      fc.property(edited, (job) => holds(firstWorked(job))),
      { numRuns: 100 },
    );
  });

  it.each(['saltglass-row', 'fernlow-close', 'quarrel-court'] as const)(
    'of %s do not hang on ids',
    (name) => {
      const job = demoJob(name);
      for (const scheme of job.schemes) {
        const one = { ...job, schemes: [scheme] };
        const [as, other] = [one, renamed(one)].map((each) => referencesOf(firstWorked(each)));
        expect(marks(other as NonNullable<typeof other>)).toEqual(marks(as as NonNullable<typeof as>));
      }
    },
  );

  it('follow the connections, and name cut cables by their joint', () => {
    const job = demoJob('saltglass-row');
    const worked = firstWorked(job);
    const { cable, joints } = referencesOf(worked);
    expect(joints).toEqual([{ id: 'c1-w2-spur/joint', mark: 'J1' }]);
    expect(['c1-w1-spur/cable-1', 'c1-w2-spur/cable-1', 'c1-w4-fuse/cable-1'].map(cable)).toEqual([
      'K1',
      'K2',
      'K4',
    ]);
    expect(['leg-r08r09/part-1', 'leg-r08r09/part-2', 'leg-cu-r01'].map(cable)).toEqual([
      'R8–J1',
      'J1–R9',
      'board A–R1',
    ]);
  });

  it('pass over what a label of the job says already', () => {
    const job = demoJob('saltglass-row');
    const points = job.points.map((point, i) => (i < 2 ? { ...point, label: ['K1', 'j1'][i] ?? '' } : point));
    const { cables, joints } = referencesOf(firstWorked({ ...job, points }));
    expect([cables[0]?.mark, joints[0]?.mark]).toEqual(['K2', 'J2']);
  });
});
