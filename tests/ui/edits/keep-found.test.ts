import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { findSchemes } from '#engine/find-schemes.ts';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import type { Scheme } from '#model/scheme.ts';
import { demoJob, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { joinedBy } from '../../../ui/edits/joined-by.ts';
import { keepFound, lockedOf, lockFound } from '../../../ui/edits/keep-found.ts';
import { isSameConnection, isSameScheme, keptAs } from '../../../ui/found-ways/same-ways.ts';
import type { JobEdit } from '../../../ui/job-events.ts';

const edited = (job: Job, { change }: JobEdit): Job => produce(job, (draft) => change(draft));

/** A found scheme: one of the job's own that is taken out of it, under the search's names. */
function found(schemeId: string): { readonly job: Job; readonly scheme: Scheme } {
  const whole = demoJob('saltglass-row');
  const own = whole.schemes.find(({ id }) => id === schemeId);
  if (own === undefined) throw new Error(`no scheme ${schemeId}`);
  const connections = own.connections.map((one, i) => ({ ...one, id: `f${i}` }));
  return {
    job: { ...whole, schemes: whole.schemes.filter(({ id }) => id !== schemeId) },
    scheme: { ...own, id: 'found/1', name: 'W1, W2', connections, locks: [] },
  };
}

describe('a found scheme that is kept', () => {
  it('is in the job with ids of its own and a name that says what it does', () => {
    const { job, scheme } = found('ring-to-w2');
    const kept = edited(job, keepFound(job, scheme, []));
    const own = kept.schemes.at(-1);
    expect(kept.schemes).toHaveLength(job.schemes.length + 1);
    expect(own?.id).not.toContain('/');
    expect(own?.name).toBe('2 spurs, a fused spur, a leg opened and an RCBO');
    expect(own?.connections.map(({ id }) => id)).not.toContain('f0');
    expect(own !== undefined && isSameScheme(own, scheme)).toBe(true);
    expect(readJob(kept)).toMatchObject({ ok: true });
    expect(keptAs(kept.schemes, scheme)).toBe(own);
  });

  it('is not put there twice, and again where it was changed since', () => {
    const { job, scheme } = found('ring-to-w2');
    const kept = edited(job, keepFound(job, scheme, []));
    expect(edited(kept, keepFound(kept, scheme, []))).toBe(kept);
    const changed = produce(kept, (draft) => {
      draft.schemes.at(-1)?.remedies.pop();
    });
    expect(keptAs(changed.schemes, scheme)).toBeNull();
    expect(edited(changed, keepFound(changed, scheme, [])).schemes).toHaveLength(kept.schemes.length + 1);
  });

  it('comes to the same in the job as it was found to, with the ways that it has pinned', () => {
    const job = demoJob('saltglass-row');
    const { schemes } = findSchemes(job, demoLibrary(), { aim: 'mess', kinds: false });
    const pinned = schemes.find(({ scheme }) => scheme.connections.some(({ runs }) => runs !== undefined));
    if (pinned === undefined) throw new Error('a pinned way is wanted');
    const kept = edited(job, keepFound(job, pinned.scheme, []));
    const read = readJob(JSON.parse(JSON.stringify(kept)));
    if (!read.ok) throw new Error('the job is not read');
    const own = estimateOf(read.job).schemes.at(-1);
    expect([own?.totals, own?.messPoints, own?.complies]).toEqual([
      pinned.estimate.totals,
      pinned.estimate.messPoints,
      pinned.estimate.complies,
    ]);
  });

  it('keeps what was held fast while it was searched for', () => {
    const { job, scheme } = found('spurs-rcbo');
    const [first] = scheme.connections;
    if (first === undefined) throw new Error('a connection is wanted');
    const own = edited(job, keepFound(job, scheme, [{ ...first, id: 'elsewhere' }])).schemes.at(-1) ?? null;
    expect(lockedOf(own).map((one) => isSameConnection(one, first))).toEqual([true]);
  });
});

describe('a connection that is kept while the rest is searched', () => {
  const { job, scheme } = found('spurs-rcbo');
  const connection = scheme.connections.find((one) => joinedBy(one).includes('w2-bedroom'));
  if (connection === undefined) throw new Error('W2 is not joined');
  const what = { connection, name: 'W2 spur' };

  it('takes the place of what joined its points in the scheme worked on, locked', () => {
    const kept = edited(job, lockFound(job, 'fused-beds', what));
    const own = kept.schemes.find(({ id }) => id === 'fused-beds');
    const joining = own?.connections.filter((one) => joinedBy(one).includes('w2-bedroom')) ?? [];
    expect(joining).toHaveLength(1);
    expect(joining[0] !== undefined && isSameConnection(joining[0], connection)).toBe(true);
    expect(lockedOf(own ?? null)).toEqual(joining);
    expect(readJob(kept)).toMatchObject({ ok: true });
  });

  it('that is in the scheme already is only locked', () => {
    const whole = demoJob('saltglass-row');
    const kept = edited(whole, lockFound(whole, 'spurs-rcbo', what));
    const [before, own] = [whole, kept].map(({ schemes }) => schemes.find(({ id }) => id === 'spurs-rcbo'));
    expect(own?.connections).toEqual(before?.connections);
    expect(lockedOf(own ?? null)).toHaveLength(1);
    expect(edited(kept, lockFound(kept, 'spurs-rcbo', what))).toBe(kept);
  });

  it('begins a scheme where there is none', () => {
    const none = { ...job, schemes: [] };
    const kept = edited(none, lockFound(none, null, what));
    expect(kept.schemes).toHaveLength(1);
    expect(lockedOf(kept.schemes[0] ?? null)).toHaveLength(1);
    expect(readJob(kept)).toMatchObject({ ok: true });
  });
});
