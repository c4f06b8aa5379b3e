import { expect, it } from 'vitest';
import { usualCounts } from '#engine/takeoff/kit-counts.ts';
import { makingGoodDemands } from '#engine/takeoff/making-good-lines.ts';
import { sundryDemands } from '#engine/takeoff/sundry-lines.ts';
import {
  newEdge,
  pointOf,
  runOf,
  segmentOf,
  spotAt,
  wanted,
} from '#tests/engine/connections/wiring-builder.ts';
import { measuredByItem, workedOf } from './worked-builder.ts';

/** So many flush twin outlets in brick, each with 1 m of chase for its tube. */
const outlets = (count: number) => {
  const ids = Array.from({ length: count }, (_, index) => `w${index}`);
  const drop = segmentOf(spotAt(0, 0, 1000), spotAt(0, 0, 0), { medium: 'wall-chase', containment: 'oval' });
  return workedOf({
    points: [pointOf('a'), ...ids.map((id) => wanted(id))],
    newEdges: ids.map((id) => newEdge(`n-${id}`, 'a', id)),
    runs: ids.map((id) => runOf(`n-${id}`, 'a', id, [drop])),
  });
};

it.each([
  // By hand: 0.53 litre a metre of chase, 0.19 a twin box of 35 mm; loose half as much again, 15 litres a sack, and one for packaging.
  [1, { 'dust-mask': 2, 'rubble-sack': 2 }],
  [10, { 'dust-mask': 4, 'rubble-sack': 2 }],
  [20, { 'dust-mask': 8, 'rubble-sack': 3 }],
])('%i points use up what they cut', (count, used) => {
  expect(measuredByItem(sundryDemands(outlets(count), usualCounts))).toMatchObject(used);
});

it.each([
  [8, { filler: 1, caulk: 1, pva: 1 }],
  [9, { filler: 2, caulk: 2, pva: 1 }],
  [40, { filler: 5, caulk: 5, pva: 2 }],
])('%i points are made good with so many packs', (count, used) => {
  expect(measuredByItem(makingGoodDemands(outlets(count), usualCounts))).toMatchObject(used);
});
