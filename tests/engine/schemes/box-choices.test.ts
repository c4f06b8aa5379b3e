import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { boxChoices } from '#engine/box-choices.ts';
import { findSchemes } from '#engine/find-schemes.ts';
import type { Job } from '#model/job.ts';
import { demoJob, estimateOf, schemeOf } from '../demo-jobs/demo-estimates.ts';

const library = demoLibrary();
const job = demoJob('saltglass-row');
const framedAt = (pointId: string, of: Job = job): Job => ({
  ...of,
  points: of.points.map((point) => (point.id === pointId ? { ...point, shallowBox: 'frame' } : point)),
});
const [box, ...more] = boxChoices(job, library, 'ring-to-w2');
const pointId = box?.pointId ?? expect.fail('no box of the demo is too shallow');

describe('a box found too shallow', () => {
  it('stands with both its remedies, each what the whole scheme comes to with it', () => {
    expect(more).toEqual([]);
    expect(box).toMatchObject({ foundMm: 25, wantedMm: 35, frameMm: 10, isFramed: false });
    const gross = (of: Job) => schemeOf(estimateOf(of), 'ring-to-w2').totals.grossPence;
    expect(box?.otherPence).toBe(gross(framedAt(pointId)) - gross(job));
    expect(box?.otherPence).toBeLessThan(0);
    const [back] = boxChoices(framedAt(pointId), library, 'ring-to-w2');
    expect(back).toMatchObject({ isFramed: true, frameMm: 10, otherPence: -(box?.otherPence ?? 0) });
  });

  it('is none where no frame is deep enough, or more than depth is wrong, and for an unknown scheme', () => {
    const found = (asFound: object): Job => ({
      ...job,
      points: job.points.map((point) =>
        point.id === pointId ? { ...point, asFound: { ...point.asFound, ...asFound } } : point,
      ),
    });
    expect(boxChoices(found({ boxDepthMm: 9 }), library, 'ring-to-w2')).toEqual([]);
    expect(boxChoices(found({ boxDepthMm: 10 }), library, 'ring-to-w2')).toHaveLength(1);
    expect(boxChoices(found({ lugs: false }), library, 'ring-to-w2')).toEqual([]);
    expect(boxChoices(job, library, 'no-such')).toEqual([]);
  });

  it('makes joining on there cheaper for the search once a frame is decided on', () => {
    const cheapest = (of: Job) => findSchemes(of, library, { aim: 'pence', kinds: false, most: 1 });
    const everywhere = job.points.reduce((of, point) => framedAt(point.id, of), job);
    const [exchanging, framing] = [cheapest(job), cheapest(everywhere)];
    expect([framing.optimal, framing.boundPence]).toEqual([true, framing.schemes[0]?.worksPence]);
    expect(framing.boundPence).toBeLessThanOrEqual(exchanging.boundPence ?? Number.NaN);
    const schemes = framing.schemes.map(({ scheme }) => scheme);
    const boxes = estimateOf({ ...everywhere, schemes }).schemes.flatMap((scheme) => scheme.boxes);
    expect(boxes.filter(({ action }) => action === 're-box')).toEqual([]);
  });
});
