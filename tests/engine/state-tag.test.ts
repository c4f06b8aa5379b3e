import fc from 'fast-check';
import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { fnv1a, stateTag } from '#engine/state-tag.ts';
import { demoEstimate, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';

const jobs = demoNames.map((name) => demoEstimate(name).asFound.worked.job);
const [job] = jobs;
if (job === undefined) throw new Error('There is no demo job.');

/** The same value with the keys of every group in another order. */
function turned(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(turned);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, inside]) => [key, turned(inside)]),
  );
}

describe('the name of a job’s state', () => {
  it('rests on the published hash', () => {
    // Source: test vectors of FNV-1a, 64 bits, as published with the algorithm (from memory).
    expect(fnv1a('')).toBe(0xcbf29ce484222325n);
    expect(fnv1a('a')).toBe(0xaf63dc4c8601ec8cn);
    expect(fnv1a('foobar')).toBe(0x85944171f73967e8n);
  });

  it('is two groups of four, without letters that are read one for another', () => {
    for (const one of jobs) expect(stateTag(one)).toMatch(/^[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}$/);
  });

  it('is the same however the file orders its keys', () => {
    for (const one of jobs) expect(stateTag(turned(one) as typeof one)).toBe(stateTag(one));
  });

  it('is the same again once a change is undone, and another before', () => {
    const changed = produce(job, (draft) => {
      draft.title = `${draft.title}, changed`;
    });
    expect(stateTag(changed)).not.toBe(stateTag(job));
    expect(stateTag({ ...changed, title: job.title })).toBe(stateTag(job));
  });

  it('takes a key that is absent and one that is undefined for the same', () => {
    expect(stateTag({ ...job, terms: { ...job.terms, ...{ validDays: undefined } } } as typeof job)).toBe(
      stateTag({ ...job, terms: (({ validDays: _, ...rest }) => rest)(job.terms) }),
    );
  });

  it('tells texts from each other', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.string({ unit: 'binary' }), (a, b) => {
        expect(stateTag({ ...job, title: a }) === stateTag({ ...job, title: b })).toBe(a === b);
      }),
      { numRuns: 20 },
    );
  });
});
