import { expect, it } from 'vitest';
import { boughtOf, describeAgainstCount } from './against-count.ts';
import { demoEstimate, schemeOf } from './demo-estimates.ts';
import { fusedUnitCount, ringThroughCount } from './hand-count-fernlow.ts';

const estimate = demoEstimate('fernlow-close');
const fusedUnit = schemeOf(estimate, 'fused-unit');
const ringThrough = schemeOf(estimate, 'ring-to-b3');

describeAgainstCount('scheme F of 18 Fernlow Close', fusedUnit, fusedUnitCount, {
  argued: {
    'Fuse BS 1362 13 A': {
      measured: 0,
      why: 'reading of the practice: the hand takes a spare 13 A along; the product says the one in the box does. Both have a spare of every other rating',
    },
  },
  wrong: {},
  uncounted: {},
});

describeAgainstCount('scheme E of 18 Fernlow Close', ringThrough, ringThroughCount, {
  argued: {
    'Clip 2.5 mm²': {
      measured: 0,
      why: 'the count’s fault: its four clips hold the cables at the joints, which the clamps of the boxes do; the rest lies in joist holes',
    },
  },
  wrong: {},
  uncounted: {},
});

it('buys what the hand buys: cable cut, lengths of tube, a hank of sleeving and a bag of plaster', () => {
  const items = ['cable-flat-2.5-1.5', 'oval-20', 'sleeving-earth-3', 'plaster-one-coat'];
  expect(items.map((item) => boughtOf(fusedUnit, item))).toEqual([12, 9, 10, 5]);
  expect(items.map((item) => boughtOf(ringThrough, item))).toEqual([14, 6, 10, 5]);
});

it('lays each cable as long as the hand, to the centimetre', () => {
  expect(fusedUnit.runs.map(({ lengthMm }) => lengthMm)).toEqual([5930, 1600, 1600, 1600]);
  expect(ringThrough.runs.map(({ lengthMm }) => lengthMm)).toEqual([3940, 1600, 1600, 5740]);
});
