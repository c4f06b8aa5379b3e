import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planPoint } from '#engine/plan/plane.ts';
import { joistsCrossed, liesAlongJoists } from '#engine/ways/joists.ts';
import { solidFloor, timberFloor } from '#tests/engine/plan/small-house.ts';

const millimetres = fc.integer({ min: -9000, max: 9000 });
const spacings = fc.constantFrom(350, 400, 450, 600);

describe('joistsCrossed', () => {
  it('counts what a tape laid across the joists would: every multiple of the spacing in between', () => {
    fc.assert(
      fc.property(millimetres, millimetres, spacings, (fromY, toY, joistSpacingMm) => {
        let count = 0;
        for (let y = Math.min(fromY, toY) + 1; y < Math.max(fromY, toY); y += 1)
          if (y % joistSpacingMm === 0) count += 1;
        const floor = { ...timberFloor, joistSpacingMm };
        expect(joistsCrossed(floor, planPoint(77, fromY), planPoint(77, toY))).toBe(count);
      }),
    );
  });

  it('adds up over the parts of a path, and is the same from either end', () => {
    fc.assert(
      fc.property(millimetres, millimetres, fc.integer({ min: 1, max: 99 }), (fromY, toY, percent) => {
        fc.pre(fromY !== toY);
        const middleY = Math.round(fromY + ((toY - fromY) * percent) / 100);
        fc.pre(middleY !== fromY && middleY !== toY);
        const [a, b, c] = [fromY, middleY, toY].map((y) => planPoint(0, y));
        if (a === undefined || b === undefined || c === undefined) throw new Error('three places');
        const whole = joistsCrossed(timberFloor, a, c);
        expect(joistsCrossed(timberFloor, a, b, true) + joistsCrossed(timberFloor, b, c)).toBe(whole);
        expect(joistsCrossed(timberFloor, c, a)).toBe(whole);
      }),
    );
  });

  it('turns with the joists', () => {
    const turned = { ...timberFloor, joistsRunDeg: 90 };
    expect(joistsCrossed(turned, planPoint(100, 0), planPoint(1300, 0))).toBe(3);
    expect(joistsCrossed(turned, planPoint(0, 100), planPoint(0, 1300))).toBe(0);
    expect(joistsCrossed({ ...turned, joistsRunDeg: -90 }, planPoint(100, 0), planPoint(1300, 0))).toBe(3);
  });

  it('takes the dear case, square across at 400, where nothing is known of the joists', () => {
    const { joistsRunDeg: _, joistSpacingMm: __, ...unknown } = timberFloor;
    expect(liesAlongJoists(unknown, planPoint(0, 0), planPoint(1000, 0))).toBe(false);
    expect(joistsCrossed(unknown, planPoint(0, 0), planPoint(1000, 0))).toBe(2);
    expect(joistsCrossed(unknown, planPoint(0, 0), planPoint(800, 0))).toBe(1);
  });

  it('counts none where there are no joists', () => {
    expect(joistsCrossed(solidFloor, planPoint(0, 0), planPoint(0, 5000))).toBe(0);
  });
});
