import { expect, it } from 'vitest';
import { boughtOf, describeAgainstCount } from './against-count.ts';
import { demoEstimate, schemeOf } from './demo-estimates.ts';
import { ringByW2Count } from './hand-count-quarrel.ts';

const scheme = schemeOf(demoEstimate('quarrel-court'), 'ring-by-w2');

/*
 * W2's channel. The hand draws the old cable between C2 and W2 out of the channel that was seen there and lays the new
 * one into it: new are only two risers, one for each leg of the ring. The product lays a channel for the new cable from
 * C2 to W2, 0.22 + 2.00 + 0.22, on the line of the old one, and none for the old cable's end that comes up into W2. Whether
 * an old channel opens and closes again nobody knows before trying, so a new one in the price may stand.
 */
const ownChannel =
  'reading of the practice: the product lays a new channel of 2.44 m from C2 to W2 where the hand uses the one that is there and adds two risers of 0.22';

describeAgainstCount('flat 5, Quarrel Court, the ring carried through W2,', scheme, ringByW2Count, {
  argued: {
    'Fuse BS 1362 13 A': {
      measured: 0,
      why: 'reading of the practice: the hand takes a spare 13 A along; the product says the one in the box does',
    },
    'Mini-channel 16 × 16': { measured: 6.72, why: ownChannel },
    'Flat bend 16 × 16': { measured: 6, why: `${ownChannel}; the two bends are that channel’s` },
    'Screw with plug': {
      measured: 30,
      why: `${ownChannel}: five; four to a twin box on the surface where the hand drives two (two to four are usual): four`,
    },
    'Metal clip': {
      measured: 12,
      why: 'the count’s fault: BS 7671 521.10.202 knows no height below which plastic channel may be the only support; four of the twelve are those of W2’s channel',
    },
    'Rubble sack': {
      measured: 0,
      why: 'the count’s fault: nothing is cut out, and offcuts go home in the box the plates came in',
    },
  },
  wrong: {},
  uncounted: {},
});

it('buys what the hand buys of cable and sleeving, and a length of channel more', () => {
  expect(boughtOf(scheme, 'cable-flat-2.5-1.5')).toBe(10);
  expect(boughtOf(scheme, 'sleeving-earth-3')).toBe(10);
  // Two by hand: the third holds what lies between C2 and W2.
  expect(boughtOf(scheme, 'channel-16x16')).toBe(9);
});

it('lays each cable as long as the hand, W3’s 4 cm longer for lying lower', () => {
  expect(scheme.runs.map(({ lengthMm }) => lengthMm)).toEqual([3140, 3140, 2540]);
});
