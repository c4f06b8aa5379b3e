import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import type { Place } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { demoJob, estimateOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { nearerSource } from '../../../ui/edits/nearer-source.ts';

const SCHEME = 'spurs-rcbo';
const job = demoJob('saltglass-row');
/** Beside R2, across the living room from R1, which W1 is joined on at. */
const besideR2: Place = { wall: 'gf-right-1', side: 'left', alongMm: 1500, heightMm: 450 };

const movedTo = (place: Place): Job =>
  produce(job, (draft) => {
    const point = draft.points.find(({ id }) => id === 'w1-living1');
    if (point !== undefined) point.place = place;
  });

function offerIn(one: Job) {
  const estimate = estimateOf(one);
  return nearerSource(estimate.asFound.worked, schemeOf(estimate, SCHEME), 'w1-living1');
}

const cableOf = (one: Job): number =>
  schemeOf(estimateOf(one), SCHEME)
    .runs.filter(({ connectionId }) => connectionId === 'c1-w1-spur')
    .reduce((sum, { lengthMm }) => sum + (lengthMm ?? 0), 0);

describe('a nearer source', () => {
  it('is none where a point stands beside its source', () => {
    expect(offerIn(job)).toBeNull();
  });

  it('is the one that a moved point stands beside, and saves as much cable as it says', () => {
    const moved = movedTo(besideR2);
    const offer = offerIn(moved);
    if (offer === null) throw new Error('nothing offered');
    expect(offer.sourceId).toBe('r2-living1');
    expect(offer.edit.label).toBe('Join W1 on at R2');
    const then = produce(moved, (draft) => offer.edit.change(draft));
    expect(cableOf(moved) - cableOf(then)).toBe(offer.savedMm);
    expect(offer.savedMm).toBeGreaterThan(500);
    expect(offerIn(then)).toBeNull();
  });

  it('is none for a connection that was locked', () => {
    const locked = produce(movedTo(besideR2), (draft) => {
      draft.schemes.find(({ id }) => id === SCHEME)?.locks.push('c1-w1-spur');
    });
    expect(offerIn(locked)).toBeNull();
  });
});
