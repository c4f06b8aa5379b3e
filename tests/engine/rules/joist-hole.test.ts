import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Facts } from '#engine/rules/facts.ts';
import { joistHole } from '#engine/rules/joist-hole.ts';
import { runRules } from '#engine/rules/run-rules.ts';
import { drillableMm, joistHoleMm, largestJoistHoleMm } from '#engine/ways/joist-window.ts';
import type { Cable } from '#model/cable.ts';
import { runOf, saidBy, twin25, twinOf } from './facts-builder.ts';
import { acrossAt, type HouseLiteral, houseOf } from './house-builder.ts';

/** Joists along x that span 4000 mm over a cellar, crossed in the first window for holes. */
const across = (more: HouseLiteral = {}, xMm = 1300): Facts =>
  houseOf({ below: true, ...more, runs: more.runs ?? [runOf('r', [acrossAt(xMm, -110)])] });

const said = (joistDepthMm: number, cable: Cable = twin25) =>
  saidBy(
    joistHole,
    across({ floor: { joistDepthMm }, runs: [runOf('r', [acrossAt(1300, -110)], { cable })] }),
  );

const messageOf = (facts: Facts): string | undefined => runRules(facts, [joistHole])[0]?.message;

describe('holes in joists', () => {
  it('[RT3] leaves a hole of more than a quarter of the depth to be decided', () => {
    expect(said(63)).toMatchObject([{ outcome: 'decide', messageId: 'tooLarge', actual: 16 }]);
    expect(said(64)).toMatchObject([{ outcome: 'decide', messageId: 'shallow', actual: 16, limit: 16 }]);
  });

  it('[RT3] lets a joist be drilled that keeps 50 mm over and under the hole, exactly, and none shallower', () => {
    expect(said(116)).toMatchObject([{ outcome: 'advice', messageId: 'zone' }]);
    expect(said(115)).toMatchObject([{ outcome: 'decide', messageId: 'shallow' }]);
    expect(messageOf(across({ floor: { joistDepthMm: 100 } }))).toBe(
      'The run goes through 5 joists in Room that are too shallow for a hole with 50 mm over and under it, where no notch is allowed either: 1.30 m from the wall of Room, of a span of 4000 mm; notches are allowed 280 to 1000 mm from either support (0.07 to 0.25 of it).',
    );
  });

  it('[RT3] lets shallow joists be notched where the windows for notches are', () => {
    expect(saidBy(joistHole, across({ floor: { joistDepthMm: 100 } }, 500))).toMatchObject([
      { outcome: 'advice', messageId: 'notch' },
    ]);
    expect(messageOf(across({ floor: { joistDepthMm: 60 } }, 500))).toContain('7 mm deep at most');
  });

  it('[RT3] sends joists deeper than 250 mm to an engineer, and not one of 250', () => {
    expect(said(250)).toMatchObject([{ messageId: 'zone' }]);
    expect(said(251)).toMatchObject([{ outcome: 'decide', messageId: 'engineer', limit: 250 }]);
  });

  it('[RT3] says where by the joists’ own span, and advises where nothing is drawn that they bear on', () => {
    expect(said(200)).toMatchObject([{ outcome: 'advice', messageId: 'zone' }]);
    const facts = across({ storey: { walls: [], rooms: [] } });
    expect(saidBy(joistHole, facts)).toMatchObject([{ outcome: 'advice', messageId: 'spanUnknown' }]);
  });

  it('[RT3] names the zone of a 4000 mm span and the place of the holes in its words', () => {
    expect(joistHole.check(across())[0]?.values).toMatchObject({ span: 4000, from: 1000, to: 1600 });
    expect(messageOf(across())).toBe(
      'Drill 5 joists in Room 16 mm on the centre line, 1.30 m from the wall of Room: 1000 to 1600 mm from either support is allowed (0.25 to 0.40 of a span of 4000 mm), 3 diameters apart, 100 mm from any notch.',
    );
  });

  it.each([
    [279, 'decide', 'misplaced'],
    [280, 'advice', 'notch'],
    [999, 'advice', 'notch'],
    [1000, 'advice', 'zone'],
    [1600, 'advice', 'zone'],
    [1601, 'decide', 'misplaced'],
    [2399, 'decide', 'misplaced'],
    [2400, 'advice', 'zone'],
  ] as const)('[RT3] judges holes %d mm along a span of 4000 mm: %s, %s', (xMm, outcome, messageId) => {
    expect(saidBy(joistHole, across({}, xMm))).toMatchObject([{ outcome, messageId }]);
  });

  it('[RT3] says of notches how deep, where, and that a plate goes over each', () => {
    expect(messageOf(across({}, 500))).toBe(
      'Notch 5 joists in Room 25 mm deep at most, 500 mm from the wall of Room, with a steel plate over each: 280 to 1000 mm from either support is allowed (0.07 to 0.25 of a span of 4000 mm), 100 mm from any hole.',
    );
  });

  it('[RT3] leaves what is not allowed to be decided, and not proven where the bearings are only assumed', () => {
    expect(messageOf(across({}, 2000))).toBe(
      'The run goes through 5 joists in Room where neither hole nor notch is allowed: 2.00 m from the wall of Room, of a span of 4000 mm; holes are allowed 1000 to 1600 mm from either support (0.25 to 0.40 of it), notches 280 to 1000 mm (0.07 to 0.25).',
    );
    // On the lowest floor nobody sees the sleeper walls.
    expect(saidBy(joistHole, across({ below: false }, 2000))).toMatchObject([
      { outcome: 'not-proven', messageId: 'spanAssumed' },
    ]);
  });

  it('[RT3] asks a larger hole for thicker cable, never a smaller one', () => {
    fc.assert(
      fc.property(fc.constantFrom(1, 1.5, 2.5, 4, 6), fc.constantFrom(1.5, 2.5, 4, 6, 10), (a, b) => {
        if (a <= b) expect(joistHoleMm(a)).toBeLessThanOrEqual(joistHoleMm(b));
        else expect(joistHoleMm(a)).toBeGreaterThanOrEqual(joistHoleMm(b));
      }),
      { seed: 11 },
    );
    expect(said(200, twinOf(10, 4))).toMatchObject([{ actual: 25 }]);
  });

  it('[RT3] scales hole and zone with the joist', () => {
    fc.assert(
      fc.property(fc.integer({ min: 75, max: 300 }), fc.integer({ min: 1000, max: 6000 }), (depth, span) => {
        expect(largestJoistHoleMm(2 * depth)).toBeCloseTo(2 * largestJoistHoleMm(depth), 9);
        const [[fromMm, toMm]] = drillableMm({ fromMm: 0, toMm: span });
        expect(fromMm).toBeLessThan(toMm);
        expect(toMm).toBeLessThan(span / 2);
      }),
      { seed: 12 },
    );
  });
});
