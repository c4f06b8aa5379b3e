import { describe, expect, it } from 'vitest';
import { floorCover } from '#engine/rules/floor-cover.ts';
import { runOf, saidBy } from './facts-builder.ts';
import { acrossOf, houseOf } from './house-builder.ts';

// 22 mm of boards lie over the joists, so 72 mm below the finished floor is 50 mm below the joists' top.
const said = (...args: Parameters<typeof acrossOf>) =>
  saidBy(floorCover, houseOf({ runs: [runOf('r', [acrossOf(...args)])] }));

describe('cover of cable under floors', () => {
  it('[RT1] passes at exactly 50 mm below the top of the joists', () => {
    expect(said(-72)).toMatchObject([{ outcome: 'passes', messageId: 'covered', actual: 50, limit: 50 }]);
  });

  it('[RT1] fails just past it, as the scheme’s doing', () => {
    expect(said(-71)).toMatchObject([
      { outcome: 'fails', messageId: 'shallow', actual: 49, origin: 'scheme' },
    ]);
  });

  it('[RT1] fails within 50 mm of the underside of joists that carry a ceiling, across them and along', () => {
    for (const medium of ['void-across', 'void-along'] as const) {
      const over = (heightMm: number) =>
        saidBy(floorCover, houseOf({ below: true, runs: [runOf('r', [acrossOf(heightMm, { medium })])] }));
      expect(over(-172)).toMatchObject([{ outcome: 'passes', actual: 50 }]);
      expect(over(-173)).toMatchObject([{ outcome: 'fails', messageId: 'nearCeiling', actual: 49 }]);
    }
  });

  // A run that nobody set lies 110 mm below the floor: 88 mm below the top of the joists.
  it.each([
    ['passes', 138],
    ['advice', 137],
    ['advice', 114],
    ['not-proven', 113],
    ['not-proven', 100],
  ] as const)(
    '[RT1] gives %s for a run between joists of %d mm that nobody pinned',
    (outcome, joistDepthMm) => {
      const run = runOf('r', [
        acrossOf(-110, { medium: 'void-along', joistsCrossed: 0, certainty: 'derived' }),
      ]);
      expect(
        saidBy(floorCover, houseOf({ below: true, floor: { joistDepthMm }, runs: [run] })),
      ).toMatchObject([{ outcome }]);
    },
  );

  it('[RT1] asks nothing of the underside where no ceiling is fixed to it', () => {
    const facts = houseOf({
      below: true,
      floor: { joistDepthMm: 100 },
      runs: [runOf('r', [acrossOf(-110)])],
    });
    expect(saidBy(floorCover, facts)).toMatchObject([{ outcome: 'fails', messageId: 'nearCeiling' }]);
    const bare = [...facts.plan.storeyById].map(
      ([id, each]) =>
        [
          id,
          { ...each, storey: { ...each.storey, ceiling: { lining: 'none' as const, loft: false } } },
        ] as const,
    );
    const open = { ...facts, plan: { ...facts.plan, storeyById: new Map(bare) } };
    expect(saidBy(floorCover, open)).toMatchObject([{ outcome: 'passes', actual: 88 }]);
    const ground = houseOf({ floor: { joistDepthMm: 100 }, runs: [runOf('r', [acrossOf(-110)])] });
    expect(saidBy(floorCover, ground)).toMatchObject([{ outcome: 'passes', actual: 88 }]);
  });

  it('[RT1] is not proven over a ceiling where the depth of the joists is not known, but for armoured cable', () => {
    const floor = { build: 'suspended-timber', voidMm: 300, covering: 'boards' } as const;
    const facts = houseOf({ below: true, storey: { floor }, runs: [runOf('r', [acrossOf(-110)])] });
    expect(saidBy(floorCover, facts)).toMatchObject([
      { outcome: 'not-proven', messageId: 'depthUnknown', limit: 50 },
    ]);
    const armoured = runOf('r', [acrossOf(-110)], {
      cable: { type: 'steel-wire-armoured', lineMm2: 2.5, cpcMm2: 2.5 },
    });
    expect(saidBy(floorCover, { ...facts, runs: [armoured] })).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[RT1] is not proven on a path that nobody pinned', () => {
    expect(said(-40, { medium: 'void-along', joistsCrossed: 0, certainty: 'assumed' })).toMatchObject([
      { outcome: 'not-proven', messageId: 'pathAssumed' },
    ]);
  });

  it('[RT1] leaves an unpinned way through the middle of the joists to the rule for joists', () => {
    expect(said(-40, { certainty: 'derived' })).toEqual([]);
  });

  it('[RT1] passes armoured cable and asks about conduit', () => {
    const armoured = { type: 'steel-wire-armoured', lineMm2: 2.5, cpcMm2: 2.5 } as const;
    const run = runOf('r', [acrossOf(-40)], { cable: armoured });
    expect(saidBy(floorCover, houseOf({ runs: [run] }))).toMatchObject([{ messageId: 'armoured' }]);
    expect(said(-40, { containment: 'conduit' })).toMatchObject([{ outcome: 'decide' }]);
  });

  it('[RT1] has nothing to say of solid floors', () => {
    expect(
      saidBy(floorCover, houseOf({ floor: { build: 'solid' }, runs: [runOf('r', [acrossOf(-40)])] })),
    ).toEqual([]);
  });
});
