import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { usualCounts } from '#engine/takeoff/kit-counts.ts';
import { makingGoodDemands } from '#engine/takeoff/making-good-lines.ts';
import { metreOfChase, plasterFor, roundBox } from '#engine/takeoff/plaster.ts';
import type { Cable } from '#model/cable.ts';
import {
  newEdge,
  onWall,
  placeOf,
  pointOf,
  runOf,
  segmentOf,
  spotAt,
  storey,
  twinAndEarth,
  wanted,
} from '#tests/engine/connections/wiring-builder.ts';
import { linesByItem, measuredByItem, workedOf } from './worked-builder.ts';

const chase = { medium: 'wall-chase', containment: 'oval' } as const;

describe('making good', () => {
  it('takes plaster in proportion to the chase, within the room only', () => {
    const kg = (heightMm: number) => {
      const run = runOf('n', 'a', 'w', [segmentOf(spotAt(0, 0, heightMm), spotAt(0, 0, -100), chase)]);
      return (
        measuredByItem(makingGoodDemands(workedOf({ runs: [run] }), usualCounts))['plaster-one-coat'] ?? 0
      );
    };
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2400 }), (heightMm) => {
        expect(kg(heightMm)).toBeCloseTo((heightMm / 1000) * kg(1000), 9);
      }),
      { seed: 3 },
    );
  });

  it('takes more plaster for more or thicker cables in one chase', () => {
    const thick: Cable = { type: 'flat-twin', lineMm2: 10, cpcMm2: 4 };
    const one = metreOfChase({ cables: [twinAndEarth], containment: 'none' }, usualCounts).litres;
    expect(
      metreOfChase({ cables: [twinAndEarth, twinAndEarth], containment: 'none' }, usualCounts).litres,
    ).toBeGreaterThan(one);
    expect(metreOfChase({ cables: [thick], containment: 'none' }, usualCounts).litres).toBeGreaterThan(one);
    expect(metreOfChase({ cables: [twinAndEarth], containment: 'oval' }, usualCounts).litres).toBeGreaterThan(
      one,
    );
  });

  it('fills round a twin box more than round a single, round a deep one more than a shallow', () => {
    expect(roundBox(2, 35, usualCounts).litres).toBeGreaterThan(roundBox(1, 35, usualCounts).litres);
    expect(roundBox(1, 47, usualCounts).litres).toBeGreaterThan(roundBox(1, 35, usualCounts).litres);
  });

  // Figures of practice for one 20 mm tube in a slot of 30 × 25: 0.53 litre, 0.44 kg of bonding and 0.13 kg of finish a metre.
  it('fills with one coat, or with bonding and finish over it and 10 mm past on either side', () => {
    const hole = metreOfChase({ cables: [twinAndEarth], containment: 'oval' }, usualCounts);
    expect(hole.litres).toBeCloseTo(0.53, 9);
    expect(
      plasterFor(hole, 'bonding-and-finish', usualCounts).map(([item, kg]) => [item, Number(kg.toFixed(2))]),
    ).toEqual([
      ['plaster-bonding', 0.44],
      ['plaster-finish', 0.13],
    ]);
    expect(
      plasterFor(hole, 'one-coat', usualCounts).map(([item, kg]) => [item, Number(kg.toFixed(2))]),
    ).toEqual([['plaster-one-coat', 0.54]]);
  });

  it('is nothing for a box on the surface and a cable in a void', () => {
    const points = [pointOf('a'), wanted('w', { mount: 'surface' })];
    const worked = workedOf({
      points,
      newEdges: [newEdge('n', 'a', 'w')],
      runs: [runOf('n', 'a', 'w', [segmentOf(spotAt(0, 0, -110), spotAt(900, 0, -110))])],
    });
    expect(measuredByItem(makingGoodDemands(worked, usualCounts))['plaster-one-coat']).toBeUndefined();
  });

  it('seals a cable through a party wall', () => {
    const through = segmentOf(spotAt(0, 5900, 300), spotAt(0, 6100, 300), { medium: 'through-wall' });
    const run = (wallId: string) => runOf('n', 'a', 'w', [{ ...through, wallId }]);
    const sealant = (wallId: string) =>
      measuredByItem(makingGoodDemands(workedOf({ runs: [run(wallId)] }), usualCounts))['fire-sealant'];
    expect(sealant('party')).toBe(1);
    expect(sealant('brick')).toBeUndefined();
  });

  it('seals one cartridge to four openings: flush boxes in party walls, holes to the outside with weather sealant', () => {
    const ids = ['w1', 'w2', 'w3', 'w4', 'w5'];
    const boxed = (count: number, mount: 'flush' | 'surface') =>
      measuredByItem(
        makingGoodDemands(
          workedOf({
            points: [
              pointOf('a'),
              ...ids.slice(0, count).map((id) => wanted(id, { mount, place: onWall('party') })),
            ],
            newEdges: ids.slice(0, count).map((id) => newEdge(`n${id}`, 'a', id)),
          }),
          usualCounts,
        ),
      )['fire-sealant'];
    expect([boxed(1, 'flush'), boxed(4, 'flush'), boxed(5, 'flush'), boxed(5, 'surface')]).toEqual([
      1,
      1,
      2,
      undefined,
    ]);
    const outside = {
      ...storey,
      walls: storey.walls.map((wall) => ({ ...wall, external: wall.id === 'brick' })),
    };
    const through = segmentOf(spotAt(0, -50, 300), spotAt(0, 50, 300), {
      medium: 'through-wall',
      wallId: 'brick',
    });
    const holes = (count: number, bundle: string | null) =>
      measuredByItem(
        makingGoodDemands(
          workedOf({
            job: { storeys: [outside] },
            runs: ids.slice(0, count).map((id) => runOf(`n${id}`, 'a', id, [{ ...through, bundle }])),
          }),
          usualCounts,
        ),
      );
    expect(holes(5, null)).toEqual({ 'weather-sealant': 2 });
    expect(holes(5, 'b')).toEqual({ 'weather-sealant': 1 });
  });

  it('may need sealant where a box in a party wall may have to be exchanged', () => {
    const points = [pointOf('a', { place: onWall('party'), asFound: {} }), wanted('w')];
    const worked = workedOf({
      points,
      newEdges: [newEdge('n', 'a', 'w')],
      places: [placeOf('a')],
      runs: [runOf('n', 'a', 'w', [segmentOf(spotAt(0, 0, 300), spotAt(900, 0, 300))])],
    });
    const unknown = worked.things.boxes.map((box) => ({
      ...box,
      action: 'unknown' as const,
      party: true,
      minimumDepthMm: 35,
    }));
    const lines = linesByItem({ ...worked, things: { ...worked.things, boxes: unknown } });
    expect(lines.get('fire-sealant')).toMatchObject({ measured: 0, quantity: 0, highQuantity: 1 });
  });

  it('may patch a stud wall in which a noggin turns up, not where the way was pinned', () => {
    const drop = segmentOf(spotAt(0, 0, 2400), spotAt(0, 0, 450), { medium: 'stud-cavity' });
    const patch = (certainty: 'derived' | 'pinned') =>
      linesByItem(workedOf({ runs: [runOf('n', 'a', 'w', [{ ...drop, certainty }])] })).get(
        'plasterboard-patch',
      );
    expect(patch('derived')).toMatchObject({ quantity: 0, highQuantity: 1 });
    expect(patch('pinned')).toBeUndefined();
  });

  it('patches the board over every stud that is drilled, once for cables that share their way', () => {
    const drop = segmentOf(spotAt(0, 0, 2400), spotAt(0, 0, 450), { medium: 'stud-cavity' });
    const level = segmentOf(spotAt(0, 0, 450), spotAt(1300, 0, 450), {
      medium: 'stud-cavity',
      studsCrossed: 2,
    });
    const patch = (bundle: string | null) =>
      linesByItem(
        workedOf({ runs: ['n', 'm'].map((id) => runOf(id, 'a', 'w', [drop, { ...level, bundle }])) }),
      ).get('plasterboard-patch');
    expect(patch('b')).toMatchObject({ quantity: 2, highQuantity: 4 });
    expect(patch(null)).toMatchObject({ quantity: 4, highQuantity: 6 });
  });

  it('needs filler and caulk round a dry-lining box, and no plaster', () => {
    const points = [pointOf('a'), wanted('w', { place: onWall('stud') })];
    const worked = workedOf({ points, newEdges: [newEdge('n', 'a', 'w')] });
    expect(measuredByItem(makingGoodDemands(worked, usualCounts))).toEqual({ filler: 1, caulk: 1 });
  });
});
