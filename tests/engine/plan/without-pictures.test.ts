import { describe, expect, it } from 'vitest';
import { withoutPictures } from '#engine/plan/without-pictures.ts';
import { withoutCustomer } from '#engine/quotation/erasure.ts';
import { jobSteps } from '#engine/quotation/moved/job-steps.ts';
import { stateTag } from '#engine/state-tag.ts';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';

const plain = demoJob('fernlow-close');
const ids = ['point', 'board', 'supply', 'room', 'plan'].map((word) => `picture-of-${word}`);

/** The same job with a picture wherever one may be. */
const pictured: Job = {
  ...plain,
  points: plain.points.map((point) => ({ ...point, photos: ['picture-of-point'] })),
  boards: plain.boards.map((board) => ({ ...board, photos: ['picture-of-board'] })),
  supply: { ...plain.supply, photos: ['picture-of-supply'] },
  storeys: plain.storeys.map((storey) => ({
    ...storey,
    rooms: storey.rooms.map((room) => ({ ...room, photos: ['picture-of-room'] })),
    underlay: {
      asset: 'picture-of-plan',
      at: [0, 0],
      widthPx: 100,
      heightPx: 80,
      scaleMmPerPx: 10,
      angleDeg: 0,
      opacity: 0.5,
    },
  })),
  assets: ids.map((id) => ({ id, name: id, mediaType: 'image/jpeg', bytes: 1 })),
};

describe('a job without its pictures', () => {
  it('can be read with all of them, and names none without', () => {
    expect(readJob(pictured)).toMatchObject({ ok: true });
    const text = JSON.stringify(withoutPictures(pictured));
    expect(ids.filter((id) => text.includes(id))).toEqual([]);
    expect(readJob(withoutPictures(pictured))).toMatchObject({ ok: true });
  });

  it('is what it was before pictures were added to it', () => {
    expect(JSON.parse(JSON.stringify(withoutPictures(pictured)))).toEqual(JSON.parse(JSON.stringify(plain)));
  });

  it('has the same state on its papers', () => {
    expect(stateTag(pictured)).toBe(stateTag(plain));
    expect(stateTag({ ...pictured, title: 'Another' })).not.toBe(stateTag(plain));
  });

  it('is no change of what was agreed', () => {
    expect(jobSteps(plain, pictured)).toEqual([]);
    expect(jobSteps(pictured, { ...plain, points: plain.points.slice(1) }).length).toBeGreaterThan(0);
  });

  it('is what is left of a customer who is erased', () => {
    const text = JSON.stringify(withoutCustomer(pictured));
    expect(ids.filter((id) => text.includes(id))).toEqual([]);
  });
});
