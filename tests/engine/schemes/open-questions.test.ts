import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { demoJob, estimateOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';

const job = demoJob('saltglass-row');
const withoutPlaces = (ids: readonly string[]): Job => ({
  ...job,
  points: job.points.map((point) => {
    if (!ids.includes(point.id)) return point;
    const { place: _, ...rest } = point;
    return rest;
  }),
});
const placesAsked = (of: Job) =>
  schemeOf(estimateOf(of), 'spurs-rcbo').openQuestions.find(({ question }) => question === 'places');

describe('points without a place among the open questions', () => {
  it('are asked for by name, at what their typical lengths widen the price by', () => {
    const one = placesAsked(withoutPlaces(['w1-living1']));
    expect(one?.subjects).toEqual(['w1-living1']);
    expect(one?.worthPence).toBeGreaterThan(0);
    const two = placesAsked(withoutPlaces(['w1-living1', 'w2-bedroom']));
    expect(two?.subjects).toEqual(['w1-living1', 'w2-bedroom']);
    expect(two?.worthPence).toBeGreaterThan(one?.worthPence ?? 0);
  });

  it('are not asked for when all have one', () => {
    expect(placesAsked(job)).toBeUndefined();
  });
});

describe('circuits of which it is only assumed that they have no RCD', () => {
  const told = (rcds: 'assumed' | 'seen') => {
    const schemes = job.schemes.map((scheme) => ({
      ...scheme,
      remedies: scheme.remedies.filter(({ kind }) => kind !== 'rcbo'),
    }));
    const boards = job.boards.map((board) => ({
      ...board,
      rcboAvailable: true,
      certainty: { ...board.certainty, rcds },
    }));
    return schemeOf(estimateOf({ ...job, boards, schemes }), 'spurs-rcbo');
  };
  const rcdAsked = (rcds: 'assumed' | 'seen') =>
    told(rcds).openQuestions.find(({ question }) => question === 'rcd-found');

  it('are asked for, and the range holds the RCBO that they may need', () => {
    const [assumed, seen] = [told('assumed'), told('seen')];
    const offered = assumed.findings.find(({ rule }) => rule === 'RC1');
    expect(offered).toMatchObject({ outcome: 'not-proven', fix: { kind: 'rcbo' } });
    expect(offered?.consequencePence).toBeGreaterThan(0);
    expect(assumed.price.totals).toEqual(seen.price.totals);
    expect(assumed.range.highPence - seen.range.highPence).toBeGreaterThan(
      (offered?.consequencePence ?? 0) / 2,
    );
    expect(rcdAsked('assumed')?.worthPence).toBeGreaterThan(0);
  });

  it('are not asked for once somebody looked', () => {
    expect(rcdAsked('seen')).toBeUndefined();
  });
});
