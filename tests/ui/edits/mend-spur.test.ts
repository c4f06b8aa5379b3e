import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import {
  demoEstimate,
  demoJob,
  estimateOf,
  gatingFailures,
  schemeOf,
} from '#tests/engine/demo-jobs/demo-estimates.ts';
import { fuseOffer } from '../../../ui/edits/fuse-offer.ts';
import { connectionOf } from '../../../ui/edits/joined-by.ts';
import { type FoundSpur, foundSpurs, mendingOf, mendSpur, whyNotMend } from '../../../ui/edits/mend-spur.ts';
import { edited, faultsOf } from './random-edits.ts';

const job = demoJob('saltglass-row');
const { worked } = demoEstimate('saltglass-row').asFound;
const spurs = foundSpurs(worked);
const [s1] = spurs;
if (s1 === undefined) throw new Error('the terrace has no spur');
const schemeIn = (of: Job, id: string): Scheme => {
  const scheme = of.schemes.find((one) => one.id === id);
  if (scheme === undefined) throw new Error(`no scheme ${id}`);
  return scheme;
};
/** The scheme that hangs W2 on the outlet of the old spur. */
const onOldSpur = job.schemes.find(({ connections }) =>
  connections.some(
    (one) => one.kind === 'spur' && 'point' in one.from && s1.pointIds.includes(one.from.point),
  ),
);
if (onOldSpur === undefined) throw new Error('no scheme hangs on the old spur');
const labelOf = (id: string): string => id;

const traced = (found: readonly FoundSpur[]): readonly (readonly [string | null, readonly string[]])[] =>
  found.map(({ sourceId, pointIds }) => [sourceId, pointIds] as const);

describe('the spurs that are there', () => {
  it('are told by their legs: where each starts, its points, and the legs of the ring beside its source', () => {
    expect(traced(spurs)).toEqual([['r9-bedroom', ['s1-bedroom']]]);
    const leg = job.legs.find(({ id }) => id === s1.legId);
    expect([leg?.from, leg?.to]).toEqual(
      expect.arrayContaining([{ point: 'r9-bedroom' }, { point: 's1-bedroom' }]),
    );
    const atSource = s1.closingLegs.map(({ legId }) => job.legs.find(({ id }) => id === legId));
    expect(atSource).toHaveLength(2);
    for (const ring of atSource)
      expect([ring?.from, ring?.to]).toEqual(expect.arrayContaining([{ point: 'r9-bedroom' }]));
    expect(whyNotMend(s1, 'fuse')).toBeNull();
    expect(whyNotMend(s1, 'close')).toBeNull();
  });

  it('cannot be mended where only a plate tells of them', () => {
    const quoting = foundSpurs(demoEstimate('saltglass-row-quoting').asFound.worked);
    for (const spur of quoting) expect(whyNotMend(spur, 'fuse')).not.toBeNull();
    const claimed: FoundSpur = { ...s1, legId: null, closingLegs: [] };
    expect([whyNotMend(claimed, 'fuse'), whyNotMend(claimed, 'close')]).not.toContain(null);
    expect(whyNotMend({ ...s1, isFused: true }, 'fuse')).not.toBeNull();
    expect(whyNotMend({ ...s1, closingLegs: [] }, 'close')).not.toBeNull();
  });
});

describe('an outlet hung on an old spur', () => {
  const failures = (of: Job): readonly string[] => gatingFailures(schemeOf(estimateOf(of), onOldSpur.id));
  const tooMuch = (of: Job): readonly string[] => failures(of).filter((failure) => /^SP[13] /.test(failure));

  it('fails, and passes once the old spur has a fused unit before it', () => {
    expect(tooMuch(job)).not.toEqual([]);
    const mended = edited(job, mendSpur(onOldSpur, s1, 'fuse', 'S1'));
    expect(tooMuch(mended)).toEqual([]);
    expect(faultsOf(mended)).toEqual([]);
    const branch = connectionOf(schemeIn(mended, onOldSpur.id), 'w2-bedroom');
    expect(branch).toMatchObject({
      kind: 'fuse-down',
      leg: s1.legId,
      unit: { fuseA: 13 },
      feeds: [{ from: 's1-bedroom', to: 'w2-bedroom' }],
    });
  });

  it('passes as well once the old spur is closed into the ring, and stays a spur from it', () => {
    const mended = edited(job, mendSpur(onOldSpur, s1, 'close', 'S1'));
    expect(tooMuch(mended)).toEqual([]);
    expect(failures(mended).filter((failure) => failure.startsWith('CN1'))).toEqual([]);
    const scheme = schemeIn(mended, onOldSpur.id);
    expect(mendingOf(scheme, s1)).toMatchObject({
      kind: 'close-spur',
      point: 's1-bedroom',
      back: { how: 'joint' },
    });
    expect(connectionOf(scheme, 'w2-bedroom')).toEqual(connectionOf(onOldSpur, 'w2-bedroom'));
  });

  it('is offered the fused unit where it fails, by the same edit', () => {
    const spur = connectionOf(onOldSpur, 'w2-bedroom');
    if (spur === null) throw new Error('W2 is not joined');
    const offer = fuseOffer(onOldSpur, spur, { spurs, labelOf });
    expect(offer?.pointIds).toEqual(['s1-bedroom', 'w2-bedroom']);
    const mended = edited(job, ...(offer === null ? [] : [offer.edit]));
    expect(tooMuch(mended)).toEqual([]);
    expect(fuseOffer(onOldSpur, spur, { spurs: [{ ...s1, legId: null }], labelOf })).toBeNull();
  });

  it('hangs there as a spur again when the old spur is left as it is after all', () => {
    const fused = edited(job, mendSpur(onOldSpur, s1, 'fuse', 'S1'));
    const back = edited(fused, mendSpur(schemeIn(fused, onOldSpur.id), s1, 'none', 'S1'));
    const scheme = schemeIn(back, onOldSpur.id);
    expect(mendingOf(scheme, s1)).toBeNull();
    expect(connectionOf(scheme, 'w2-bedroom')).toMatchObject({
      kind: 'spur',
      from: { point: 's1-bedroom' },
    });
    expect(tooMuch(back)).toEqual(tooMuch(job));
  });
});

describe('a fused unit before new spurs in turn', () => {
  const fernlow = demoJob('fernlow-close');
  const bad = schemeIn(fernlow, 'no-fuse-b3');
  const found = foundSpurs(demoEstimate('fernlow-close').asFound.worked);

  it('is offered at each of them, for all of them', () => {
    for (const connection of bad.connections) {
      const offer = fuseOffer(bad, connection, { spurs: found, labelOf });
      expect(offer?.pointIds).toEqual(['b1-kitchen', 'b2-kitchen', 'b3-kitchen']);
    }
  });

  it('is not offered before a single spur of the ring, nor before anything else', () => {
    const good = schemeIn(job, 'spurs-rcbo');
    const offers = good.connections.map((one) => fuseOffer(good, one, { spurs, labelOf }));
    expect(offers.filter((offer) => offer !== null)).toEqual([]);
    const radial: Connection = {
      id: 'r',
      kind: 'radial',
      board: job.boards[0]?.id ?? '',
      device: { standard: 'BS-EN-60898', curve: 'B', ratingA: 20 },
      feeds: [],
    };
    expect(fuseOffer(good, radial, { spurs, labelOf })).toBeNull();
  });
});
