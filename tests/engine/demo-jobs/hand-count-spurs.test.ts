import { expect, it } from 'vitest';
import { describeAgainstCount } from './against-count.ts';
import { demoEstimate, schemeOf } from './demo-estimates.ts';
import { spursCount } from './hand-count-spurs.ts';

const estimate = demoEstimate('quarrel-court');
const scheme = schemeOf(estimate, 'spurs-rcbo');

describeAgainstCount('flat 5, Quarrel Court, all as spurs,', scheme, spursCount, {
  argued: {
    'Metal clip': {
      measured: 12,
      why: 'BS 7671 521.10.202 knows no height below which plastic channel may be the only support; the count allows six to a firm that holds cable so',
    },
    'Brown sleeving': {
      measured: 0,
      why: 'red and black are line and neutral of one pair and are told by the notice, as the first count has it; it is taken along in case',
    },
    'RCD notice': { measured: 1, why: 'the survey saw no notice; the count takes one to be there' },
  },
  wrong: {},
  uncounted: {},
});

/*
 * The same hand, on the same day and as blind, counted the other schemes that are counted in this folder: cable to the centimetre as far as
 * each cable of its own goes. W2's new channel at Quarrel Court it took the old one for, as the first count did.
 */
it('measures the cables of the other counted schemes as the second hand did, m', () => {
  const metresOf = (job: 'fernlow-close' | 'quarrel-court', id: string): readonly number[] =>
    schemeOf(demoEstimate(job), id).runs.map(({ lengthMm }) => (lengthMm ?? Number.NaN) / 1000);
  expect(metresOf('fernlow-close', 'fused-unit')).toEqual([5.93, 1.6, 1.6, 1.6]);
  expect(metresOf('fernlow-close', 'ring-to-b3')).toEqual([3.94, 1.6, 1.6, 5.74]);
  const [w1, w2, w3] = metresOf('quarrel-court', 'ring-by-w2');
  expect([w1, w2]).toEqual([3.14, 3.14]);
  expect(Math.abs((w3 ?? Number.NaN) - 2.5)).toBeLessThanOrEqual(0.04 + 1e-9);
});
