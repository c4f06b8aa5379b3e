import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import type { Connection } from '#model/scheme.ts';
import { demoEstimate, demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { joinPoint } from '../../../ui/edits/join-point.ts';
import { freeName, plainSchemeName, withTrueNames } from '../../../ui/edits/scheme-names.ts';
import { addFirstTry, copyScheme } from '../../../ui/edits/schemes.ts';
import type { JobEdit } from '../../../ui/job-events.ts';

const spur = (to: string): Connection => ({ id: `c-${to}`, kind: 'spur', from: { point: 'p' }, to });
const branch: Connection = {
  id: 'c-branch',
  kind: 'fused-spur',
  from: { point: 'p' },
  unit: { fuseA: 13 },
  feeds: [
    { from: 'unit', to: 'a' },
    { from: 'a', to: 'b' },
  ],
};

describe('the plain name of a scheme', () => {
  it('tells what it is made of, in one order', () => {
    expect(plainSchemeName([])).toBe('Nothing joined yet');
    expect(plainSchemeName([spur('a')])).toBe('A spur');
    expect(plainSchemeName([branch, spur('c'), spur('d')])).toBe('2 spurs and a fused branch');
  });

  it('is told apart from one that is there', () => {
    expect(freeName('A spur', ['Mine'])).toBe('A spur');
    expect(freeName('A spur', ['A spur', 'A spur 2'])).toBe('A spur 3');
  });
});

describe('names under edits', () => {
  const { worked } = demoEstimate('fernlow-close').asFound;
  const done = (job: Job, { change }: JobEdit): Job => produce(job, withTrueNames(job, change));
  const made = addFirstTry(worked, 'fused-branch');
  const begun = done(demoJob('fernlow-close'), made.edit);
  const schemeIn = (job: Job, id: string) => {
    const scheme = job.schemes.find((one) => one.id === id);
    if (scheme === undefined) throw new Error(`no scheme ${id}`);
    return scheme;
  };
  const nameIn = (job: Job, id: string): string => schemeIn(job, id).name;
  const asSpur = (job: Job, id: string): JobEdit =>
    joinPoint({ worked: { ...worked, job }, scheme: schemeIn(job, id) }, 'b3-kitchen', { by: 'spur' });

  it('follow what a first try has become', () => {
    expect(nameIn(begun, made.schemeId)).toBe('A fused branch');
    const changed = done(begun, asSpur(begun, made.schemeId));
    expect(nameIn(changed, made.schemeId)).toBe('A spur and a fused branch');
  });

  it('follow in a copy too', () => {
    const copy = copyScheme(schemeIn(begun, made.schemeId));
    const copied = done(begun, copy.edit);
    expect(nameIn(copied, copy.schemeId)).toBe('A fused branch (copy)');
    const changed = done(copied, asSpur(copied, copy.schemeId));
    expect(nameIn(changed, copy.schemeId)).toBe('A spur and a fused branch (copy)');
    expect(nameIn(changed, made.schemeId)).toBe('A fused branch');
  });

  it('stay where somebody has chosen them', () => {
    const own = 'A fused branch for the lounge';
    const named = produce(begun, (draft) => {
      for (const scheme of draft.schemes) if (scheme.id === made.schemeId) scheme.name = own;
    });
    const changed = done(named, asSpur(named, made.schemeId));
    expect(schemeIn(changed, made.schemeId).connections.map(({ kind }) => kind)).toContain('spur');
    expect(nameIn(changed, made.schemeId)).toBe(own);
  });
});
