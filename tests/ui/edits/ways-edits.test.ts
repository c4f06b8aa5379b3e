import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import type { Scheme } from '#model/scheme.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { fuseBefore, isFirstOfChain } from '../../../ui/edits/fuse-before.ts';
import { type JoinHow, joinPoint } from '../../../ui/edits/join-point.ts';
import { sourceLegs } from '../../../ui/edits/join-sources.ts';
import { connectionOf, joinedBy } from '../../../ui/edits/joined-by.ts';
import { addFirstTry, firstTries } from '../../../ui/edits/schemes.ts';
import type { JobEdit } from '../../../ui/job-events.ts';

const edited = (job: Job, { change }: JobEdit): Job => produce(job, (draft) => change(draft));
const asFound = (job: Job) =>
  estimate({ ...job, schemes: [] }, demoLibrary(), { date: '2026-03-02', revision: 1 }).asFound.worked;
const readable = (job: Job): boolean => readJob(JSON.parse(JSON.stringify(job))).ok;
const schemeIn = (job: Job, id: string): Scheme => {
  const scheme = job.schemes.find((one) => one.id === id);
  if (scheme === undefined) throw new Error(`no scheme ${id}`);
  return scheme;
};
const names = ['saltglass-row', 'saltglass-row-quoting', 'fernlow-close'] as const;
const houses = names.map((name) => ({ job: demoJob(name), worked: asFound(demoJob(name)) }));
const [saltglass, quoting, fernlow] = houses;
if (saltglass === undefined || quoting === undefined || fernlow === undefined)
  throw new Error('no demo jobs');

describe('joining a wanted point', () => {
  const scheme = schemeIn(saltglass.job, 'spurs-rcbo');
  const join = (pointId: string, how: JoinHow): Scheme =>
    schemeIn(
      edited(
        saltglass.job,
        joinPoint({ worked: saltglass.worked, scheme, makeId: () => 'made' }, pointId, how),
      ),
      'spurs-rcbo',
    );

  it('begins a spur at the nearest point of the ring that has none yet', () => {
    const made = connectionOf(join('w3-bedroom', { by: 'spur' }), 'w3-bedroom');
    expect(made).toMatchObject({ kind: 'spur', to: 'w3-bedroom', from: { point: 'r8-bedroom' } });
  });

  it('joins a wanted fused unit by a fused spur, since it is one', () => {
    expect(connectionOf(join('w4-boiler1', { by: 'spur' }), 'w4-boiler1')).toMatchObject({
      kind: 'fused-spur',
      unit: 'w4-boiler1',
      feeds: [],
    });
  });

  it('cuts the nearest leg of the ring for a joint and for carrying it out and back', () => {
    const [nearest] = sourceLegs(saltglass.worked, 'w2-bedroom').filter(({ onRing }) => onRing);
    expect(nearest?.awayMm).toBeLessThan(1500);
    const { legId: leg, alongMm } = nearest ?? { legId: '', alongMm: 0 };
    expect(connectionOf(join('w2-bedroom', { by: 'joint' }), 'w2-bedroom')).toMatchObject({
      kind: 'spur',
      from: { leg, alongMm },
    });
    const ring = connectionOf(join('w2-bedroom', { by: 'ring' }), 'w2-bedroom');
    expect(ring).toMatchObject({ kind: 'ring-extension', leg, through: ['w2-bedroom'] });
  });

  it('leaves it unjoined when told to, and every point is joined once otherwise', () => {
    expect(connectionOf(join('w1-living1', { by: 'none' }), 'w1-living1')).toBeNull();
    const again = join('w1-living1', { by: 'with', connectionId: 'c1-w4-fuse' });
    expect(again.connections.filter((one) => joinedBy(one).includes('w1-living1'))).toHaveLength(1);
  });

  it('carries the ring between the two nearest points when no leg is known', () => {
    const { job, worked } = quoting;
    const [first] = job.schemes;
    if (first === undefined) throw new Error('the quoting job has no scheme');
    const made = edited(job, joinPoint({ worked, scheme: first }, 'w2-bedroom', { by: 'ring' }));
    expect(connectionOf(schemeIn(made, first.id), 'w2-bedroom')).toMatchObject({
      kind: 'ring-extension',
      out: { how: 'terminals' },
      back: { how: 'terminals' },
    });
    expect(readable(made)).toBe(true);
  });
});

describe('putting a fused unit before a failing chain', () => {
  it('turns two outlets on one spur into a branch that no longer fails for it', () => {
    const bad = schemeIn(saltglass.job, 'two-on-one');
    const first = bad.connections.find((connection) => isFirstOfChain(bad, connection));
    if (first === undefined) throw new Error('the bad scheme has no chain');
    const fails = (job: Job): readonly string[] =>
      estimate(job, demoLibrary(), { date: '2026-03-02', revision: 1 })
        .schemes.find(({ id }) => id === bad.id)
        ?.findings.filter(({ outcome, gates }) => outcome === 'fails' && gates)
        .map(({ rule }) => rule) ?? [];
    expect(fails(saltglass.job)).toContain('SP1');
    const mended = edited(saltglass.job, fuseBefore(bad, first.id, 'the spur'));
    expect(fails(mended)).not.toContain('SP1');
    expect(connectionOf(schemeIn(mended, bad.id), 'w1-living1')).toMatchObject({
      kind: 'fused-spur',
      feeds: [
        { from: 'unit', to: 'w1-living1' },
        { from: 'w1-living1', to: 'w2-bedroom' },
      ],
    });
    expect(readable(mended)).toBe(true);
  });

  it('does the same for three in turn', () => {
    const bad = schemeIn(fernlow.job, 'no-fuse-b3');
    const mended = edited(fernlow.job, fuseBefore(bad, 'c3-b1-spur', 'the spur'));
    const scheme = schemeIn(mended, bad.id);
    expect(scheme.connections).toHaveLength(1);
    expect(
      joinedBy(
        scheme.connections[0] ?? {
          kind: 'close-spur',
          id: '',
          point: '',
          leg: '',
          back: { how: 'terminals' },
        },
      ),
    ).toEqual(['b1-kitchen', 'b2-kitchen', 'b3-kitchen']);
  });
});

describe('a first try', () => {
  it.each(firstTries)('joins every wanted point of every demo job: %s', (which) => {
    for (const { job, worked } of houses) {
      const { edit, schemeId } = addFirstTry(worked, which);
      const made = edited(job, edit);
      expect(readable(made)).toBe(true);
      const scheme = schemeIn(made, schemeId);
      const wanted = job.points.filter(({ status }) => status === 'wanted').map(({ id }) => id);
      expect(wanted.filter((id) => connectionOf(scheme, id) === null)).toEqual([]);
      const result = estimate(made, demoLibrary(), { date: '2026-03-02', revision: 1 });
      expect(result.schemes.find(({ id }) => id === schemeId)?.totals.grossPence).toBeGreaterThan(0);
    }
  });
});
