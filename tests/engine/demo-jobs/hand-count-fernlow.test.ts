import { expect, it } from 'vitest';
import { boughtOf, describeAgainstCount } from './against-count.ts';
import { demoEstimate, schemeOf } from './demo-estimates.ts';
import { fusedUnitCount, ringThroughCount } from './hand-count-fernlow.ts';

const estimate = demoEstimate('fernlow-close');
const fusedUnit = schemeOf(estimate, 'fused-unit');
const ringThrough = schemeOf(estimate, 'ring-to-b3');

/*
 * The take-off's faults. Plates: a 35 mm box flush with the board, as the product's own check of thin walls has it, has its
 * lugs at the board. A screw of 75 mm would stand some 65 mm behind them, through the back of the box. One of 50 mm reaches even
 * lugs that lie 27 mm behind the board, and the one that comes with the plate those that do not. Floors: a trap cut in
 * chipboard lies on nothing but what is put under it, two battens a trap, and is screwed to them and to the joists. Four screws,
 * and a noggin to two of three, are what a lifted floorboard takes; the product gives them to every opening.
 */
const wrongPlateScrew = '75 mm is too long for a 35 mm box flush with the board';
const wrongTrap = 'a chipboard trap is given what a floorboard takes';

describeAgainstCount('scheme F of 18 Fernlow Close', fusedUnit, fusedUnitCount, {
  argued: {
    'Fuse BS 1362 13 A': {
      measured: 0,
      why: 'reading of the practice: the hand takes a spare 13 A along; the product says the one in the box does. Both have a spare of every other rating',
    },
  },
  wrong: {
    'Accessory screw M3.5 × 50': wrongPlateScrew,
    'Floor screw': wrongTrap,
    'Noggin 300 mm': wrongTrap,
  },
  uncounted: { 'screw-m3.5-75': wrongPlateScrew },
});

describeAgainstCount('scheme E of 18 Fernlow Close', ringThrough, ringThroughCount, {
  argued: {
    'Clip 2.5 mm²': {
      measured: 0,
      why: 'the count’s fault: its four clips hold the cables at the joints, which the clamps of the boxes do; the rest lies in joist holes',
    },
  },
  wrong: {
    'Accessory screw M3.5 × 50': wrongPlateScrew,
    // The hand cut five traps; the product's three, at 1.8 m, are what practice allows at most, and serve if each
    // spans two bays. Three traps ask for 24 screws and 6 battens: the product has 12 and 2.
    'Floor screw': wrongTrap,
    'Noggin 300 mm': wrongTrap,
  },
  uncounted: { 'screw-m3.5-75': wrongPlateScrew },
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
