import { describe, expect, it } from 'vitest';
import { allowsLater } from '#engine/proof/allows-later.ts';
import { roomLeft } from '#engine/proof/room-left.ts';
import { demoEstimate, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';

const demos = ['saltglass-row', 'fernlow-close', 'quarrel-court'] as const;
const laterOf = (demo: (typeof demos)[number], scheme: string) =>
  allowsLater(schemeOf(demoEstimate(demo), scheme).worked);

describe('what a scheme allows to be joined on later', () => {
  it('is told once of every wired new point that is behind no fuse', () => {
    for (const demo of demos)
      for (const { id, worked } of demoEstimate(demo).schemes) {
        const told = Object.values(allowsLater(worked)).flat();
        const open = roomLeft(worked)
          .filter(({ limitedBy }) => limitedBy === 'device')
          .flatMap(({ pointIds }) => pointIds);
        expect(told.toSorted(), `${demo} ${id}`).toEqual(open.toSorted());
      }
  });

  // One unfused spur at a point of a ring, one outlet on it: the trade's reading of BS 7671 appendix 15.
  it('is a spur at a new point of the ring, nothing at the end of a spur, and more along a radial', () => {
    expect(laterOf('saltglass-row', 'ring-to-w2')).toEqual({
      takesSpur: ['w2-bedroom'],
      hasSpur: [],
      endsSpur: ['w1-living1', 'w3-bedroom'],
      carriesOn: [],
    });
    expect(laterOf('fernlow-close', 'ring-to-b3').takesSpur).toEqual([
      'b1-kitchen',
      'b2-kitchen',
      'b3-kitchen',
    ]);
    expect(laterOf('fernlow-close', 'new-radial').carriesOn).toHaveLength(3);
    expect(Object.values(laterOf('fernlow-close', 'fused-unit')).flat()).toEqual([]);
  });

  it('is no second spur where one begins', () => {
    const { worked } = schemeOf(demoEstimate('saltglass-row'), 'ring-to-w2');
    const shapes = new Map(
      [...worked.shapes].map(([id, shape]) => [
        id,
        { ...shape, spurs: shape.spurs.map((spur) => ({ ...spur, rootNode: 'w2-bedroom' })) },
      ]),
    );
    expect(allowsLater({ ...worked, shapes })).toMatchObject({ takesSpur: [], hasSpur: ['w2-bedroom'] });
  });
});

describe('the room that new points leave', () => {
  it('is less by what is named elsewhere on the circuit, behind fuses too', () => {
    // 32 A less the heater of 1,500 W at 230 V.
    const [onRing, behind] = roomLeft(schemeOf(demoEstimate('quarrel-court'), 'spurs-rcbo').worked);
    expect(onRing).toMatchObject({ limitA: 32, namedA: 0, restA: 1500 / 230 });
    expect(onRing?.leftA).toBeCloseTo(32 - 1500 / 230, 9);
    expect(behind).toMatchObject({ limitA: 13, restA: 0 });
    expect(behind?.leftA).toBeCloseTo(13 - 1500 / 230, 9);
  });
});
