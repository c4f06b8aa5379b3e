import { describe, expect, it } from 'vitest';
import { flexAreaMm2 } from '#engine/connections/appliance-flex.ts';
import { cableDemands, cableItem } from '#engine/takeoff/cable-lines.ts';
import { usualCounts } from '#engine/takeoff/kit-counts.ts';
import { cableLengthM, lengthRatios } from '#engine/takeoff/run-length.ts';
import {
  fuseOf,
  newEdge,
  nodeOf,
  pointOf,
  runOf,
  segmentOf,
  spotAt,
  twinAndEarth,
  wanted,
} from '#tests/engine/connections/wiring-builder.ts';
import { linesByItem, measuredByItem, workedOf } from './worked-builder.ts';

const run = runOf('n', 'a', 'w', [segmentOf(spotAt(0, 0, -110), spotAt(1300, 0, -110))]);

describe('cable', () => {
  it('is measured by run, ends and slack included', () => {
    const worked = workedOf({ runs: [run, { ...run, id: 'm' }] });
    expect(measuredByItem(cableDemands(worked, usualCounts))).toEqual({ 'cable-flat-2.5-1.5': 4 });
  });

  it('ranges as the run does', () => {
    const worked = workedOf({ runs: [{ ...run, lowMm: 1500, highMm: 2600 }] });
    expect(linesByItem(worked).get('cable-flat-2.5-1.5')).toMatchObject({
      quantity: 2,
      lowQuantity: 1.5,
      highQuantity: 2.6,
    });
    expect(linesByItem(worked).get('cable-flat-2.5-1.5')?.pieces).toEqual([
      { cause: 'n', lengthMm: 2000, lowMm: 1500, highMm: 2600, unbroken: true },
    ]);
    expect(lengthRatios({ ...run, lowMm: 1500, highMm: 2600 })).toEqual({ lowRatio: 0.75, highRatio: 1.3 });
  });

  it('is allowed for, widely, where a run has an end that nobody placed', () => {
    const { measuredM, lowM, highM } = cableLengthM({ ...run, lengthMm: null, lowMm: null, highMm: null });
    expect(lowM).toBeGreaterThan(0);
    expect(measuredM / lowM).toBeGreaterThanOrEqual(2);
    expect(highM / measuredM).toBeGreaterThanOrEqual(2);
  });

  it.each([
    [twinAndEarth, 'cable-flat-2.5-1.5'],
    [{ type: 'flex', lineMm2: 1.5, cpcMm2: 1.5 }, 'flex-1.5'],
    [{ type: 'steel-wire-armoured', lineMm2: 4, cpcMm2: 4 }, 'cable-steel-wire-armoured-4-4'],
  ] as const)('is named by type and size: %o', (cable, item) => {
    expect(cableItem(cable)).toBe(item);
  });

  it.each([
    [3, 0.75],
    [5, 0.75],
    [7, 1],
    [10, 1],
    [13, 1.5],
    [null, 1.5],
  ])('puts a flex behind a fuse of %s A that it protects: %f mm²', (fuseA, areaMm2) => {
    expect(flexAreaMm2(fuseA)).toBe(areaMm2);
  });

  it('leads 2 m of flex to the appliance at a flex outlet plate, by the fuse before it', () => {
    const worked = workedOf({
      points: [pointOf('a'), wanted('u', { kind: 'fused-unit' }), wanted('w', { kind: 'flex-outlet' })],
      nodes: [
        nodeOf('a'),
        nodeOf('u', { state: 'new' }),
        nodeOf('u/load', { kind: 'load-terminals', pointId: 'u', state: 'new' }),
        nodeOf('w', { state: 'new' }),
      ],
      newEdges: [newEdge('n', 'a', 'u'), fuseOf('u', { fuseA: 3 }), newEdge('m', 'u/load', 'w')],
    });
    expect(measuredByItem(cableDemands(worked, usualCounts))).toEqual({ 'flex-0.75': 2 });
    expect(linesByItem(worked).get('flex-0.75')?.pieces).toMatchObject([{ cause: 'w', lengthMm: 2000 }]);
    expect(linesByItem(worked).get('flex-outlet-plate')?.causes).toEqual(['w']);
  });
});
