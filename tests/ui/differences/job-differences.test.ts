import { type Draft, produce } from 'immer';
import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { jobDifferences } from '../../../ui/differences/job-differences.ts';

const base = demoJob('saltglass-row');
const changed = (change: (job: Draft<Job>) => void): Job =>
  produce(base, (job) => {
    change(job);
  });
const differences = (here: (job: Draft<Job>) => void, there: (job: Draft<Job>) => void = () => {}) =>
  jobDifferences(changed(here), changed(there), base);
const point = (job: Draft<Job>, label: string) => {
  const found = job.points.find((one) => one.label === label);
  if (found === undefined) throw new Error(`no ${label}`);
  return found;
};

describe('what differs between two states of a job', () => {
  it('is nothing where they are the same, in whatever order their keys are', () => {
    const turned = Object.fromEntries(Object.entries(base).reverse()) as Job;
    expect(jobDifferences(base, turned, base)).toEqual([]);
  });

  it('is told by thing and field, with units, and whose change it is', () => {
    const found = differences(
      (job) => {
        job.terms.minimumPence = 22_200;
        job.title = 'Mine';
      },
      (job) => {
        job.terms.travelMin = 75;
        job.title = 'Theirs';
      },
    );
    expect(found).toContainEqual({
      thing: 'Terms',
      field: 'minimum charge',
      mine: '£222.00',
      theirs: 'nothing',
      by: 'me',
    });
    expect(found).toContainEqual({
      thing: 'Job',
      field: 'title',
      mine: 'Mine',
      theirs: 'Theirs',
      by: 'both',
    });
    const travel = found.find(({ field }) => field === 'travel');
    expect(travel).toMatchObject({ thing: 'Terms', theirs: '75 min', by: 'them' });
    expect(found).toHaveLength(3);
  });

  it('names a point by its label, and a move by where it is on either side', () => {
    const [moved, ...more] = differences((job) => {
      const { place } = point(job, 'W1');
      if (place !== undefined && 'wall' in place) place.alongMm += 200;
    });
    expect(more).toEqual([]);
    expect(moved).toMatchObject({ thing: 'W1', field: 'where', by: 'me' });
    expect(moved?.mine).toMatch(/^Living room, .*mm from the left corner/);
    expect(moved?.theirs).not.toBe(moved?.mine);
  });

  it('says what was added and what was removed, and by whom', () => {
    const found = differences(
      (job) => {
        job.points.push({
          ...structuredClone(base.points[0] as Job['points'][number]),
          id: 'new1',
          label: 'W9',
        });
      },
      (job) => {
        job.schemes.pop();
      },
    );
    const last = base.schemes.at(-1)?.name;
    expect(found).toEqual([
      { thing: 'W9', field: '', mine: 'added', theirs: 'not there', by: 'me' },
      { thing: last, field: '', mine: 'there', theirs: 'removed', by: 'them' },
    ]);
  });

  it('takes another order of the same things for a difference of its own', () => {
    const found = differences((job) => {
      job.schemes.reverse();
    });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ thing: 'Job', field: 'schemes', by: 'me' });
    expect(found[0]?.mine).not.toBe(found[0]?.theirs);
  });

  it('tells cables, kinds, ends and certainty in the words of the screen, and no id anywhere', () => {
    const found = differences((job) => {
      const [leg] = job.legs;
      if (leg === undefined) throw new Error('no leg');
      leg.cable = { type: 'flat-twin', lineMm2: 4, cpcMm2: 1.5 };
      leg.lengthMm = 4200;
      leg.certainty = { ...leg.certainty, length: 'assumed' };
      point(job, 'W2').kind = 'socket-single';
    });
    const by = (field: string) => found.find((one) => one.field === field);
    expect(by('cable')?.mine).toBe('4/1.5 mm² twin and earth');
    expect(by('cable')?.thing).toMatch(/^Leg /);
    expect(by('length')?.mine).toBe('4200 mm');
    expect(by('how sure: length')?.mine).toBe('assumed');
    expect(by('what it is')).toMatchObject({ thing: 'W2', mine: 'Single socket-outlet' });
    const ids = new Set([...base.points, ...base.legs, ...base.circuits].map(({ id }) => id));
    for (const { thing, mine, theirs } of found)
      for (const words of [thing, mine, theirs]) expect(ids.has(words)).toBe(false);
  });

  it('tells an answer by its question', () => {
    const [answer] = base.answers;
    const found = differences((job) => {
      job.answers = job.answers.slice(1);
    });
    expect(found).toHaveLength(1);
    expect(found[0]?.thing).not.toBe(answer?.question);
    expect(found[0]).toMatchObject({ field: '', mine: 'removed', theirs: 'there' });
  });
});
